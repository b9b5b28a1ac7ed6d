// The decision: release, shut until every requirement stands; refuse in one tap; take up again; take the animal back.
import { Button } from 'react-aria-components';
import { sayRequirement } from '../../proving/release/words/say.ts';
import { useSaying } from '../animal/say.ts';
import { Choice } from '../controls/choice.tsx';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { DoorDrawing } from './door-drawing.tsx';
import { goToRequirement } from './next-line.tsx';
import type { PartProps } from './placement-page.tsx';
import { TakeBackForm } from './take-back-form.tsx';
import { useDraft, useHadDraft } from './use-draft.ts';
import { WordsField } from './words-field.tsx';

const refusals = ['home', 'animal', 'law', 'keeper', 'changed-mind'] as const;

export function DecisionPart(props: PartProps) {
  const { sheet, on } = props;
  const { t } = useSheet();
  return (
    <section className="sheet-part decision" aria-labelledby="decision-title">
      <h2 id="decision-title">{t('decision.title')}</h2>
      {sheet.state === 'open' && (
        <>
          <ReleasePart {...props} />
          {sheet.mayAct && <RefusePart {...props} />}
        </>
      )}
      {sheet.state === 'released' && <ReleasedPart {...props} />}
      {sheet.state === 'refused' && <RefusedPart {...props} />}
      <Faults answer={on.refused} />
    </section>
  );
}

function ReleasePart({ sheet, on }: PartProps) {
  const { t, settings } = useSheet();
  const [chosen, setChosen] = useDraft(sheet.id, 'outcome');
  const outcome = chosen === 'rehomed' ? 'rehomed' : 'sold';
  const shut = sheet.release.findings.filter((finding) => !finding.stands);
  const overridden = sheet.release.findings.filter((finding) => finding.stands && finding.answer !== 'met');
  const busy = on.waiting.includes('release');
  return (
    <div className="door">
      <DoorDrawing bars={shut.length} open={sheet.release.open} />
      <div>
        <p className="door-say">{sheet.release.open ? t('decision.open') : t('decision.shut', { n: shut.length })}</p>
        {overridden.length > 0 && (
          <p className="field-hint">
            {t('decision.overridden', {
              what: overridden.map((one) => sayRequirement(one.id, settings.language).title).join(', '),
            })}
          </p>
        )}
        {shut.length > 0 && (
          <details>
            <summary>{t('decision.which')}</summary>
            <ul className="door-list">
              {shut.map((finding) => (
                <li key={finding.id}>
                  <button type="button" className="quiet-button" onClick={() => goToRequirement(finding.id)}>
                    {sayRequirement(finding.id, settings.language).title}
                  </button>
                </li>
              ))}
            </ul>
          </details>
        )}
        <Choice
          label={t('decision.outcome')}
          value={outcome}
          options={[
            { value: 'sold', text: t('decision.sold') },
            { value: 'rehomed', text: t('decision.rehomed') },
          ]}
          onChange={setChosen}
        />
        <Button
          className="button button-large"
          isDisabled={!sheet.release.open || busy || !sheet.mayAct}
          onPress={() => {
            on.act('release', { outcome });
            setChosen('');
          }}
        >
          {t(busy ? 'decision.releasing' : 'decision.release', { name: sheet.animal.callName })}
        </Button>
      </div>
    </div>
  );
}

function RefusePart({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const [text, setText] = useDraft(sheet.id, 'refusal');
  const refuse = (reason: string) => {
    on.act('refusal', { reason, text: text.trim() });
    setText('');
  };
  return (
    <div className="refuse">
      <h3 className="requirement-title">{t('refuse.title')}</h3>
      <div className="refuse-row">
        {refusals.map((reason) => (
          <Button key={reason} className="button button-quiet" onPress={() => refuse(reason)}>
            {t(`refuse.${reason}`)}
          </Button>
        ))}
      </div>
      <details open={useHadDraft(sheet.id, 'refusal')}>
        <summary>{t('refuse.more')}</summary>
        <WordsField label={t('refuse.text')} value={text} onChange={setText} />
        <Button className="button button-quiet" isDisabled={text.trim() === ''} onPress={() => refuse('other')}>
          {t('refuse.other')}
        </Button>
      </details>
    </div>
  );
}

function ReleasedPart({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const say = useSaying();
  const released = sheet.events.findLast((event) => event.kind === 'released');
  if (released === undefined) return null;
  return (
    <>
      <p className="door-say">
        {t(released.body.outcome === 'rehomed' ? 'decision.wasRehomed' : 'decision.wasSold', {
          on: say.day(released.at.slice(0, 10)),
          by: released.by,
        })}
      </p>
      {sheet.mayAct && <TakeBackForm sheet={sheet} on={on} />}
    </>
  );
}

function RefusedPart({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const say = useSaying();
  const refused = sheet.events.findLast((event) => event.kind === 'refused');
  if (refused === undefined) return null;
  const { reason, text } = refused.body as { reason: (typeof refusals)[number] | 'other'; text: string };
  return (
    <>
      <p className="door-say">
        {reason === 'other'
          ? t('refuse.wasOther', { on: say.day(refused.at.slice(0, 10)), by: refused.by })
          : t('refuse.was', { why: t(`refuse.${reason}`), on: say.day(refused.at.slice(0, 10)), by: refused.by })}
      </p>
      {text !== '' && <p>{text}</p>}
      <Button className="button" isDisabled={!sheet.mayAct} onPress={() => on.act('reopening', {})}>
        {t('refuse.reopen')}
      </Button>
    </>
  );
}
