// A call after a sale: red flags on top, then what it is, readings and questions; the answer stands beside as one goes.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { TriageAnswer, TriageFacts } from '../../animal/triage.ts';
import { Choice } from '../controls/choice.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { readTriage, takeCall } from './animal-api.ts';
import { NotReached } from './not-reached.tsx';
import { useSaying } from './say.ts';
import { useAsked } from './use-asked.ts';
import { useSpecies } from './use-species.ts';

interface Asked {
  readonly speciesId: string;
  readonly complaintId: string;
  readonly flags: readonly string[];
  readonly readings: Readonly<Record<string, number>>;
  readonly answers: Readonly<Record<string, 'yes' | 'no'>>;
  readonly days: number;
}

const fresh: Asked = { speciesId: '', complaintId: '', flags: [], readings: {}, answers: {}, days: 0 };

export function CallPage() {
  const { value, failed, again } = useAsked('triage', readTriage);
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Call facts={value} />;
}

function Call({ facts }: { readonly facts: TriageFacts }) {
  const { t } = useSheet();
  const say = useSaying();
  const { all } = useSpecies();
  const { now: asked, change, forget } = useBegun('call', fresh);
  const [answer, setAnswer] = useState<TriageAnswer | null>(null);
  /** Red flags hold for any snake; readings are judged only once it is said which one. */
  const speciesId = asked.speciesId || all[0]?.id || '';
  useEffect(() => {
    if (speciesId === '') return;
    let wanted = true;
    const { complaintId, flags, readings, answers, days } = asked;
    const known = asked.speciesId === '' ? {} : readings;
    const call = { complaintId, flags, readings: known, answers, days, lossPct: null };
    void takeCall({ animalId: null, speciesId, stage: null, call, note: '', keep: false }).then((found) => {
      if (wanted && found.ok) setAnswer(found.value);
    });
    return () => {
      wanted = false;
    };
  }, [asked, speciesId]);
  return (
    <main className="animal-sheet call-sheet">
      <div className="sheet-head">
        <h1>{t('call.title')}</h1>
        <p className="lead">{t('call.lead')}</p>
      </div>
      {answer && <CallAnswer answer={answer} facts={facts} />}
      <fieldset className="sign-list">
        <legend>{t('call.flags')}</legend>
        {facts.redFlags.map((flag) => (
          <label key={flag.id} className={`sign sign-${flag.urgency}`}>
            <input
              type="checkbox"
              checked={asked.flags.includes(flag.id)}
              onChange={(event) =>
                change({
                  flags: event.target.checked ? [...asked.flags, flag.id] : asked.flags.filter((id) => id !== flag.id),
                })
              }
            />
            <span className="sign-say">{say.spoken(flag.say)}</span>
          </label>
        ))}
      </fieldset>
      <label className="field-label" htmlFor="call-species">
        {t('call.species')}
      </label>
      <select
        id="call-species"
        className="select-plain"
        value={asked.speciesId}
        onChange={(event) => change({ speciesId: event.target.value })}
      >
        <option value="">{t('animal.choose')}</option>
        {all.map((one) => (
          <option key={one.id} value={one.id}>
            {one.commonName}
          </option>
        ))}
      </select>
      <Choice
        label={t('call.complaint')}
        layout="list"
        value={asked.complaintId || null}
        onChange={(complaintId) => change({ complaintId })}
        options={facts.complaints.map((one) => ({ value: one.id, text: say.spoken(one.title) }))}
      />
      {asked.complaintId !== '' && <Looking facts={facts} asked={asked} onChange={change} />}
      <Button className="button button-quiet" onPress={forget}>
        {t('call.afresh')}
      </Button>
    </main>
  );
}

interface LookingProps {
  readonly facts: TriageFacts;
  readonly asked: Asked;
  readonly onChange: (part: Partial<Asked>) => void;
}

function Looking({ facts, asked, onChange }: LookingProps) {
  const { t } = useSheet();
  const say = useSaying();
  const look = facts.complaints.find((one) => one.id === asked.complaintId)?.look ?? [];
  const reading = (key: string, value: number | null) => {
    const { [key]: _old, ...rest } = asked.readings;
    onChange({ readings: value === null ? rest : { ...rest, [key]: value } });
  };
  return (
    <section className="sheet-part">
      <h2>{t('call.readings')}</h2>
      <div className="field-row">
        <label className="field-label">
          {t('call.days')}
          <input
            className="text-input"
            type="number"
            min="0"
            max="3650"
            value={asked.days}
            onChange={(event) => onChange({ days: Math.max(0, Number(event.target.value)) })}
          />
        </label>
        {look.map((key) =>
          asked.speciesId !== '' && isMessageKey(`reading.${key}`) ? (
            <QuantityField
              key={key}
              label={t(`reading.${key}` as 'reading.rhPct')}
              kind={key === 'rhPct' ? 'percent' : 'temperature'}
              value={asked.readings[key] ?? null}
              min={key === 'rhPct' ? 0 : -5}
              max={key === 'rhPct' ? 100 : 60}
              onChange={(value) => reading(key, value)}
            />
          ) : null,
        )}
      </div>
      {asked.speciesId === '' && look.some((key) => isMessageKey(`reading.${key}`)) && (
        <p className="field-hint">{t('call.speciesFirst')}</p>
      )}
      {facts.questions
        .filter((question) => look.includes(question.id))
        .map((question) => (
          <Choice<'yes' | 'no'>
            key={question.id}
            label={say.spoken(question.say)}
            value={asked.answers[question.id] ?? null}
            onChange={(word) => onChange({ answers: { ...asked.answers, [question.id]: word } })}
            options={[
              { value: 'yes', text: t('word.yes') },
              { value: 'no', text: t('word.no') },
            ]}
          />
        ))}
    </section>
  );
}

function CallAnswer({ answer, facts }: { readonly answer: TriageAnswer; readonly facts: TriageFacts }) {
  const { t } = useSheet();
  const say = useSaying();
  const named = answer.wrong.map((key) => {
    const question = facts.questions.find((one) => one.id === key);
    if (question) return say.spoken(question.say);
    return isMessageKey(`reading.${key}`) ? t(`reading.${key}` as 'reading.rhPct') : key;
  });
  const vet = answer.next === 'vet-now' || answer.next === 'vet-24h' || answer.next === 'vet-soon';
  return (
    <section className={vet ? 'call-answer call-vet' : 'call-answer'} aria-live="polite">
      <h2>{t(`call.next.${answer.next}`)}</h2>
      <p>{answer.reasons.map(say.reason).join(' ')}</p>
      {named.length > 0 && <p>{t('call.wrong', { what: named.join('; ') })}</p>}
      {answer.next === 'care' && answer.complaint && (
        <>
          <h3>{t('call.care')}</h3>
          <ul className="history-list">
            {answer.complaint.care.map((care) => (
              <li key={care.en}>{say.spoken(care)}</li>
            ))}
          </ul>
        </>
      )}
      {answer.complaint && (answer.next === 'care' || answer.next === 'vet-soon') && (
        <p>{say.spoken(answer.complaint.vet)}</p>
      )}
      <p className="field-hint">{t('sheet.vetOnly')}</p>
    </section>
  );
}
