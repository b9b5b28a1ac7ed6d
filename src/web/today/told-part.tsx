// What was told and done so far, newest first; each can be taken back, what asks for a second look can be looked at.
import { Button } from 'react-aria-components';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { useSaying } from '../animal/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useAnswerWords } from './answer-words.ts';
import { useConcernWords } from './concern-words.ts';
import { type AftercareSheet, type Step, sendStep, type Told } from './today-api.ts';

export function ToldPart({ sheet, again }: { readonly sheet: AftercareSheet; readonly again: () => void }) {
  const { t } = useSheet();
  const step = async (what: Step) => {
    await sendStep(sheet.placementId, crypto.randomUUID(), what);
    again();
  };
  return (
    <section className="today-part">
      <h2>{t('aftercare.told')}</h2>
      {sheet.told.length === 0 && <p className="field-hint">{t('aftercare.toldNone')}</p>}
      <ol className="aftercare-tasks">
        {sheet.told.map((told) => (
          <ToldItem key={told.id} told={told} step={step} />
        ))}
      </ol>
    </section>
  );
}

function ToldItem({ told, step }: { readonly told: Told; readonly step: (what: Step) => Promise<void> }) {
  const { t, settings } = useSheet();
  const say = useSaying();
  const concernOf = useConcernWords();
  const answerOf = useAnswerWords();
  const { body } = told;
  const who = body.what === 'answer' && body.via === 'keeper' ? t('aftercare.byKeeper') : told.by;
  const concerns = body.what === 'answer' ? body.concerns : [];
  return (
    <li className={`aftercare-task ${concerns.length > 0 && !told.lookedAt ? 'today-overdue' : 'today-done'}`}>
      <div className="aftercare-when">
        <span className="today-word">
          <span className="today-mark" aria-hidden="true" />
          {t(`told.${body.what}`)}
        </span>
        <span className="today-when">
          {say.day(body.on)}, {who}
        </span>
      </div>
      <div className="aftercare-what">
        <h3>{sayTask(body.task, settings.language).title}</h3>
        {body.what === 'answer' && <p>{answerOf(body.answers).join(' · ')}</p>}
        {body.what === 'answer' && !body.settles && <p className="field-hint">{t('told.notSettled')}</p>}
        {body.what === 'set-aside' && <p>{body.why}</p>}
        {concerns.length > 0 && (
          <p>
            <strong>{t('told.look')}</strong> {concerns.map(concernOf).join('; ')}
          </p>
        )}
        <div className="answer-buttons">
          {concerns.length > 0 && !told.lookedAt && (
            <Button className="button button-quiet" onPress={() => void step({ what: 'looked-at', of: told.id })}>
              {t('today.looked')}
            </Button>
          )}
          <Button className="button button-quiet" onPress={() => void step({ what: 'undone', of: told.id })}>
            {t('today.undo')}
          </Button>
        </div>
      </div>
    </li>
  );
}
