// What the keeper says on the phone, entered while one listens: all questions of the task on one sheet, and what to do
// first when something asks for a second look. Half entered it stays on this device until it is sent.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { TriageFacts } from '../../animal/triage.ts';
import type { AftercareAnswers } from '../../proving/aftercare/answer.ts';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { Faults } from '../proof/faults.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { forgetDraft, keepDraft, keptDraft } from './answer-draft.ts';
import { QuestionField } from './question-field.tsx';
import { type AftercareSheet, type Step, sendStep, type TakenStep, type TaskShown } from './today-api.ts';
import { WhatFirst } from './what-first.tsx';

interface AnswerFormProps {
  readonly task: TaskShown;
  readonly sheet: AftercareSheet;
  readonly triage: TriageFacts;
  readonly onDone: () => void;
}

/** Where a half entered answer waits on this device. */
export const answerPlace = (sheet: Pick<AftercareSheet, 'placementId'>, task: Pick<TaskShown, 'key'>): string =>
  `${sheet.placementId}-${task.key}`;

export function AnswerForm({ task, sheet, triage, onDone }: AnswerFormProps) {
  const { t, settings } = useSheet();
  const place = answerPlace(sheet, task);
  // The token stays with what was entered: sent again after a power cut it is still the same thing.
  const [draft, setDraft] = useState(() => keptDraft(place) ?? { token: crypto.randomUUID() as string, said: {} });
  const { now, change: changeAside, forget } = useBegun(`answer-${place}`, { on: sheet.today, why: '' });
  const { on, why } = now;
  const [answer, setAnswer] = useState<Awaited<ReturnType<typeof sendStep>> | null>(null);
  const change = (said: AftercareAnswers) => {
    const next = { ...draft, said };
    keepDraft(place, next);
    setDraft(next);
  };
  const words = sayTask(task, settings.language).ask;
  const send = async (step: Step) => {
    const sent = await sendStep(sheet.placementId, step.what === 'answer' ? draft.token : crypto.randomUUID(), step);
    setAnswer(sent);
    if (!sent.ok) return;
    forgetDraft(place);
    forget();
    if (sent.value.triage === null) onDone();
  };
  const taken: TakenStep | null = answer?.ok ? answer.value : null;
  if (taken?.triage)
    return (
      <div className="answer-form">
        <WhatFirst answer={taken.triage} facts={triage} to="desk" />
        <Button className="button" onPress={onDone}>
          {t('answer.close')}
        </Button>
      </div>
    );
  return (
    <div className="answer-form">
      <label className="field-label question-day">
        {t('answer.on')}
        <input
          className="text-input"
          type="date"
          min={sheet.released?.on ?? sheet.today}
          max={sheet.latest}
          value={on}
          aria-describedby="answer-on-help"
          onChange={(event) => changeAside({ on: event.target.value })}
        />
      </label>
      <HelpLine id="answer-on-help" text={t('help.aftercare.on')} />
      {task.ask.map((question, i) => (
        <QuestionField
          key={question}
          question={question}
          label={words[i] ?? ''}
          said={draft.said}
          onChange={change}
          flags={triage.redFlags}
          from={sheet.released?.on ?? sheet.today}
          latest={sheet.latest}
        />
      ))}
      <Faults answer={answer} />
      <div className="answer-buttons">
        <Button
          className="button"
          onPress={() => void send({ what: 'answer', key: task.key, on, answers: draft.said })}
        >
          {t('answer.keep')}
        </Button>
        <Button className="button button-quiet" onPress={() => void send({ what: 'not-reached', key: task.key })}>
          {t('answer.notReached')}
        </Button>
      </div>
      <details className="answer-aside">
        <summary>{t('answer.aside')}</summary>
        <label className="field-label">
          {t('answer.why')}
          <input
            className="text-input"
            value={why}
            aria-describedby="answer-why-help"
            maxLength={500}
            onChange={(event) => changeAside({ why: event.target.value })}
          />
        </label>
        <HelpLine id="answer-why-help" text={t('help.aftercare.why')} />
        <Button className="button button-quiet" onPress={() => void send({ what: 'set-aside', key: task.key, why })}>
          {t('answer.asideNow')}
        </Button>
      </details>
    </div>
  );
}
