// One question of aftercare with its way to answer; the same at the desk and on the keeper's phone.
import { useId } from 'react';
import type { TriageFacts } from '../../animal/triage.ts';
import { type AftercareAnswers, answeredReadings, answerLimits } from '../../proving/aftercare/answer.ts';
import type { Question } from '../../proving/aftercare/task.ts';
import { useSaying } from '../animal/say.ts';
import { Choice } from '../controls/choice.tsx';
import { HelpLine } from '../controls/help-line.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';

interface QuestionFieldProps {
  readonly question: Question;
  readonly label: string;
  readonly said: AftercareAnswers;
  readonly onChange: (said: AftercareAnswers) => void;
  readonly flags: TriageFacts['redFlags'];
  /** Days that may be written. */
  readonly from: string;
  readonly latest: string;
}

export function QuestionField({ question, label, said, onChange, flags, from, latest }: QuestionFieldProps) {
  const { t } = useSheet();
  const put = (part: Readonly<Record<string, unknown>>) =>
    onChange(
      Object.fromEntries(Object.entries({ ...said, ...part }).filter(([, v]) => v !== null)) as AftercareAnswers,
    );
  if (question === 'well')
    return (
      <>
        <Choice
          label={label}
          layout="list"
          value={said.well ?? null}
          onChange={(well) => put({ well, flags: null })}
          options={(['well', 'not-well', 'died'] as const).map((value) => ({ value, text: t(`said.well.${value}`) }))}
        />
        {said.well === 'not-well' && <Flags flags={flags} said={said} put={put} />}
      </>
    );
  if (question === 'ate')
    return (
      <>
        <Choice
          label={label}
          layout="list"
          value={said.ate ?? null}
          onChange={(ate) => put({ ate, mealOn: null })}
          options={(['taken', 'refused', 'brought-up', 'not-offered'] as const).map((value) => ({
            value,
            text: t(`said.ate.${value}`),
          }))}
        />
        {(said.ate === 'taken' || said.ate === 'refused') && (
          <DayField
            label={t('said.mealOn')}
            hint={t('help.aftercare.mealOn')}
            value={said.mealOn}
            from={from}
            latest={latest}
            put={(mealOn) => put({ mealOn })}
          />
        )}
      </>
    );
  if (question === 'droppings')
    return (
      <Choice
        label={label}
        layout="list"
        hint={t('help.aftercare.droppings')}
        value={said.droppings ?? null}
        onChange={(droppings) => put({ droppings })}
        options={(['seen', 'none', 'odd'] as const).map((value) => ({ value, text: t(`said.droppings.${value}`) }))}
      />
    );
  if (question === 'day-of-readings')
    return (
      <Choice
        label={label}
        layout="list"
        value={said.readingsSent === undefined ? null : said.readingsSent ? 'yes' : 'no'}
        onChange={(word) => put({ readingsSent: word === 'yes' })}
        options={[
          { value: 'yes', text: t('said.sent.yes') },
          { value: 'no', text: t('said.sent.no') },
        ]}
      />
    );
  if (question === 'fitted')
    return (
      <DayField
        label={label}
        hint={t('help.aftercare.fitted')}
        value={said.fittedOn}
        from={from}
        latest={latest}
        put={(fittedOn) => put({ fittedOn })}
      />
    );
  if (question === 'readings')
    return (
      <fieldset className="question-set" aria-describedby="asked-readings-help">
        <legend className="field-label">{label}</legend>
        <HelpLine id="asked-readings-help" text={t('help.aftercare.readings')} />
        {answeredReadings.map((key) => (
          <NumberAnswer key={key} name={key} kind="temperature" said={said} put={put} label={t(`said.${key}`)} />
        ))}
      </fieldset>
    );
  if (question === 'box')
    return (
      <NumberAnswer
        name="lengthCm"
        kind="length"
        perStored={100}
        said={said}
        put={put}
        label={label}
        hint={t('help.aftercare.length')}
      />
    );
  if (question === 'massG')
    return (
      <NumberAnswer name="massG" kind="mass" said={said} put={put} label={label} hint={t('help.aftercare.massG')} />
    );
  return (
    <NumberAnswer name="iceShownC" kind="temperature" said={said} put={put} label={label} hint={t('said.iceHint')} />
  );
}

interface NumberAnswerProps {
  readonly name: keyof typeof answerLimits;
  readonly kind: 'temperature' | 'mass' | 'length';
  /** How many of ours make one of the field's: it speaks of metres, the answer of centimetres. */
  readonly perStored?: number;
  readonly label: string;
  readonly hint?: string;
  readonly said: AftercareAnswers;
  readonly put: (part: Readonly<Record<string, unknown>>) => void;
}

function NumberAnswer({ name, kind, perStored = 1, label, hint, said, put }: NumberAnswerProps) {
  const [low, high] = answerLimits[name];
  const value = said[name];
  return (
    <QuantityField
      kind={kind}
      label={label}
      value={value === undefined ? null : value / perStored}
      min={low / perStored}
      max={high / perStored}
      onChange={(next) => put({ [name]: next === null ? null : next * perStored })}
      {...(hint === undefined ? {} : { hint })}
    />
  );
}

interface DayFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string | undefined;
  readonly from: string;
  readonly latest: string;
  readonly put: (day: string | null) => void;
}

function DayField({ label, hint, value, from, latest, put }: DayFieldProps) {
  const id = `${useId()}-help`;
  return (
    <>
      <label className="field-label question-day">
        {label}
        <input
          className="text-input"
          aria-describedby={id}
          type="date"
          min={from}
          max={latest}
          value={value ?? ''}
          onChange={(event) => put(event.target.value || null)}
        />
      </label>
      <HelpLine id={id} text={hint} />
    </>
  );
}

interface FlagsProps {
  readonly flags: TriageFacts['redFlags'];
  readonly said: AftercareAnswers;
  readonly put: (part: Readonly<Record<string, unknown>>) => void;
}

/** Signs that cannot wait; seen or not, no more than that. */
function Flags({ flags, said, put }: FlagsProps) {
  const { t } = useSheet();
  const say = useSaying();
  const seen = said.flags ?? [];
  return (
    <fieldset className="sign-list">
      <legend>{t('said.flags')}</legend>
      {flags.map((flag) => (
        <label key={flag.id} className={`sign sign-${flag.urgency}`}>
          <input
            type="checkbox"
            checked={seen.includes(flag.id)}
            onChange={(event) =>
              put({ flags: event.target.checked ? [...seen, flag.id] : seen.filter((id) => id !== flag.id) })
            }
          />
          <span className="sign-say">{say.spoken(flag.say)}</span>
        </label>
      ))}
    </fieldset>
  );
}
