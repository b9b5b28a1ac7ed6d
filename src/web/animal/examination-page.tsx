// The look-over, one step of the hand at a time: drawing, how, what is normal, what is not and how urgent.
// Kept on this device and at the shop computer after every touch, so that it may be interrupted anywhere.
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { type ExaminationBody, type ExaminationStep, examinationVerdict } from '../../animal/examination.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type Examination, type Finished, finishExamination, readExamination, saveExamination } from './animal-api.ts';
import { dropDraft, keepDraft, keptDraft } from './examination-draft.ts';
import { ExaminationResult } from './examination-result.tsx';
import { NotReached } from './not-reached.tsx';
import { OutlineChoice } from './outline-choice.tsx';
import { PhotoButton } from './photo-button.tsx';
import { useSaying } from './say.ts';
import { SignList } from './sign-list.tsx';
import { SnakeParts } from './snake-parts.tsx';
import { useAsked } from './use-asked.ts';

const nothing: ExaminationBody = { answers: {}, massG: null, outline: '', note: '' };

export function ExaminationPage({ id }: { readonly id: string }) {
  const { value, failed, again } = useAsked(`look-${id}`, () => readExamination(id));
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Stepper id={id} examination={value} />;
}

function Stepper({ id, examination }: { readonly id: string; readonly examination: Examination }) {
  const { t, measure } = useSheet();
  const say = useSaying();
  const { steps } = examination;
  const [body, setBody] = useState<ExaminationBody>(() => keptDraft(id) ?? examination.draft?.document ?? nothing);
  const [at, setAt] = useState(() => {
    const open = steps.findIndex((step) => body.answers[step.id] === undefined);
    return open < 0 ? steps.length : open;
  });
  const [finished, setFinished] = useState<Finished | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const began = useRef(Date.now());
  const verdict = examinationVerdict(steps, body.answers);
  useEffect(() => {
    if (body === nothing || finished) return;
    keepDraft(id, body);
    const later = setTimeout(() => void saveExamination(id, body), 800);
    return () => clearTimeout(later);
  }, [id, body, finished]);
  const step = steps[at];
  const last = at >= steps.length;
  const show = (next: number) => {
    setAt(next);
    scrollTo(0, 0);
  };
  const answer = (signs: readonly string[]) =>
    step && setBody((now) => ({ ...now, answers: { ...now.answers, [step.id]: signs } }));
  const next = () => {
    if (step && body.answers[step.id] === undefined) answer([]);
    show(at + 1);
  };
  const finish = async () => {
    const done = await finishExamination(id, body);
    if (!done.ok) return setSaid(faultSentences(done.faults, measure) || t('animals.unreached'));
    dropDraft(id);
    setFinished(done.value);
  };
  if (finished)
    return <ExaminationResult id={id} steps={steps} finished={finished} tookMs={Date.now() - began.current} />;
  return (
    <main className="look-sheet">
      <h1>{t('look.title')}</h1>
      <p className="lead">
        {examination.callName} · {last ? t('look.finish') : t('look.progress', { at: at + 1, of: steps.length })}
      </p>
      <progress
        className="look-progress"
        max={steps.length}
        value={Object.keys(body.answers).length}
        aria-label={t('look.title')}
      />
      {step ? (
        <StepSheet
          animalId={id}
          step={step}
          examination={examination}
          body={body}
          onSigns={answer}
          onOutline={(outline) => setBody((now) => ({ ...now, outline }))}
        />
      ) : (
        <LastStep
          body={body}
          open={verdict.open.map((one) => say.spoken(steps.find((s) => s.id === one)?.title ?? { en: one, de: one }))}
          onBody={setBody}
        />
      )}
      <div className="look-buttons">
        <Button className="button button-quiet" isDisabled={at === 0} onPress={() => show(at - 1)}>
          {t('look.back')}
        </Button>
        {step ? (
          <Button className="button button-large" onPress={next}>
            {t((body.answers[step.id]?.length ?? 0) > 0 ? 'look.withSigns' : 'look.normal')}
          </Button>
        ) : (
          <Button className="button button-large" onPress={() => void finish()}>
            {t('look.finish')}
          </Button>
        )}
      </div>
      {verdict.result === 'vet' && !last && (
        <p className="look-vet">
          {t('look.vetStops')}{' '}
          <Button className="quiet-button" onPress={() => show(steps.length)}>
            {t('look.finish')}
          </Button>
        </p>
      )}
      <p role="status" className="field-fault">
        {said}
      </p>
      <p className="field-hint">{t('look.kept')}</p>
    </main>
  );
}

interface StepSheetProps {
  readonly animalId: string;
  readonly step: ExaminationStep;
  readonly examination: Examination;
  readonly body: ExaminationBody;
  readonly onSigns: (signs: readonly string[]) => void;
  readonly onOutline: (outline: string) => void;
}

function StepSheet({ animalId, step, examination, body, onSigns, onOutline }: StepSheetProps) {
  const { t } = useSheet();
  const say = useSaying();
  const before = examination.last?.body.answers[step.id];
  const beforeSay = before
    ?.map((id) => say.spoken(step.signs.find((sign) => sign.id === id)?.say ?? { en: id, de: id }))
    .join('; ');
  return (
    <section aria-labelledby="look-step">
      <h2 id="look-step">{say.spoken(step.title)}</h2>
      <SnakeParts part={step.part} focus={step.id} label={t('look.drawing', { step: say.spoken(step.title) })} />
      <p>
        <strong>{t('look.how')}</strong> {say.spoken(step.look)}
      </p>
      <p>
        <strong>{t('look.right')}</strong> {say.spoken(step.normal)}
      </p>
      {step.part === 'cross-section' && <OutlineChoice chosen={body.outline} onChoose={onOutline} />}
      {examination.last && before && (
        <p className="look-last">
          {t('look.last', { on: say.day(examination.last.on), what: beforeSay || t('look.lastNormal') })}
        </p>
      )}
      <PhotoButton key={step.id} animalId={animalId} of={step.id} />
      <SignList step={step} chosen={body.answers[step.id] ?? []} onChange={onSigns} />
    </section>
  );
}

interface LastStepProps {
  readonly body: ExaminationBody;
  readonly open: readonly string[];
  readonly onBody: (change: (now: ExaminationBody) => ExaminationBody) => void;
}

function LastStep({ body, open, onBody }: LastStepProps) {
  const { t } = useSheet();
  return (
    <section>
      {open.length > 0 && <p className="register-missing">{t('look.open', { what: open.join('; ') })}</p>}
      <QuantityField
        label={t('look.mass')}
        kind="mass"
        hint={t('help.look.mass')}
        value={body.massG}
        min={0.5}
        max={60_000}
        onChange={(massG) => onBody((now) => ({ ...now, massG }))}
      />
      <label className="field-label" htmlFor="look-note">
        {t('look.note')}
      </label>
      <textarea
        id="look-note"
        className="text-area"
        maxLength={2000}
        value={body.note}
        aria-describedby="look-note-help"
        onChange={(event) => onBody((now) => ({ ...now, note: event.target.value }))}
      />
      <HelpLine id="look-note-help" text={t('help.look.note')} />
    </section>
  );
}
