// One task asked of the keeper: one question a screen, large; at the end it is queued, and where something in it asks for
// a second look the phone says what to do first, also without a connection.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type TriageAnswer, triage } from '../../animal/triage.ts';
import { type AftercareAnswers, concernsOf, lossOf, readingsTold } from '../../proving/aftercare/answer.ts';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { forgetDraft, keepDraft, keptDraft } from '../today/answer-draft.ts';
import { QuestionField } from '../today/question-field.tsx';
import type { TaskShown } from '../today/today-api.ts';
import { WhatFirst } from '../today/what-first.tsx';
import { type KeeperAsked, queueAnswer } from './keeper-answers.ts';

interface AskKeeperProps {
  readonly secret: string;
  readonly task: TaskShown;
  readonly asked: KeeperAsked;
  readonly onQueued: () => void;
  readonly onClose: () => void;
}

export function AskKeeper({ secret, task, asked, onQueued, onClose }: AskKeeperProps) {
  const { t, settings } = useSheet();
  const place = `${secret}-${task.key}`;
  const [draft, setDraft] = useState(() => keptDraft(place) ?? { token: crypto.randomUUID() as string, said: {} });
  const [at, setAt] = useState(0);
  const [first, setFirst] = useState<TriageAnswer | 'died' | null>(null);
  const words = sayTask(task, settings.language, 'keeper');
  const question = task.ask[at];
  const change = (said: AftercareAnswers) => {
    const next = { ...draft, said };
    keepDraft(place, next);
    setDraft(next);
  };
  const ready = at >= task.ask.length || draft.said.well === 'died';
  const empty = Object.keys(draft.said).length === 0;
  const send = () => {
    queueAnswer(secret, { token: draft.token, key: task.key, on: deviceDay(), answers: draft.said });
    forgetDraft(place);
    onQueued();
    const what = firstThing(draft.said, asked);
    if (what === null) onClose();
    else setFirst(what);
  };
  if (first !== null)
    return (
      <section className="keeper-question">
        <h1>{first === 'died' ? words.title : t('keeper.first')}</h1>
        {first === 'died' || asked.triage === null ? (
          <p>{t('keeper.died')}</p>
        ) : (
          <WhatFirst answer={first} facts={asked.triage} to="keeper" />
        )}
        <Button className="button button-large" onPress={onClose}>
          {t('answer.close')}
        </Button>
      </section>
    );
  return (
    <section className="keeper-question" aria-labelledby="keeper-question">
      <h1 id="keeper-question">{words.title}</h1>
      {!ready && <p className="field-hint">{t('keeper.step', { n: at + 1, of: task.ask.length })}</p>}
      {!ready && question && (
        <QuestionField
          question={question}
          label={words.ask[at] ?? ''}
          said={draft.said}
          onChange={change}
          flags={asked.triage?.redFlags ?? []}
          from={asked.releasedOn ?? asked.today}
          latest={asked.latest}
        />
      )}
      {ready && <p role="status">{empty ? t('keeper.nothing') : t('keeper.ready')}</p>}
      {ready ? (
        <Button className="button button-large" isDisabled={empty} onPress={send}>
          {t('keeper.sendAnswer')}
        </Button>
      ) : (
        <Button className="button button-large" onPress={() => setAt(at + 1)}>
          {question && answered(question, draft.said) ? t('keeper.next') : t('keeper.skip')}
        </Button>
      )}
      <div className="answer-buttons">
        {at > 0 && (
          <Button className="button button-quiet" onPress={() => setAt(Math.min(at, task.ask.length) - 1)}>
            {t('keeper.back')}
          </Button>
        )}
        <Button className="button button-quiet" onPress={onClose}>
          {t('keeper.leave')}
        </Button>
      </div>
    </section>
  );
}

/** The enclosure first, then the vet, judged on the phone itself; null when all is well. */
function firstThing(said: AftercareAnswers, asked: KeeperAsked): TriageAnswer | 'died' | null {
  if (said.well === 'died') return 'died';
  const { species, stage, lastMassG, limits, triage: facts } = asked;
  if (species === null || facts === null) return null;
  const found = concernsOf(said, { species, stage, lastMassG }, limits);
  if (found.length === 0) return null;
  const complaintId = found.find((one) => one.complaintId !== null)?.complaintId ?? '';
  const lossPct = lossOf(said, { lastMassG });
  const call = { complaintId, flags: said.flags ?? [], readings: readingsTold(said), answers: {}, days: 0, lossPct };
  return triage(facts, species, stage, call, limits.lossAlarmPct);
}

const answerKeys = {
  well: ['well'],
  ate: ['ate'],
  readings: ['baskingSurfaceC', 'warmAirC', 'coolAirC'],
  massG: ['massG'],
  droppings: ['droppings'],
  'day-of-readings': ['readingsSent'],
  fitted: ['fittedOn'],
  checked: ['iceShownC'],
  box: ['lengthCm'],
} as const;

const answered = (question: keyof typeof answerKeys, said: AftercareAnswers): boolean =>
  answerKeys[question].some((key) => said[key] !== undefined);

/** The day by the phone's own clock. */
function deviceDay(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
