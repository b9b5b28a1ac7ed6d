// What the shop would like to know, on the keeper's page: due tasks, one question a screen, sent later without a connection.
import '../animal/animal.css';
import '../today/today.css';
import { useCallback, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { useSaying } from '../animal/say.ts';
import { paperQuery } from '../settings/paper-query.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { TaskShown } from '../today/today-api.ts';
import { AskKeeper } from './ask-keeper.tsx';
import {
  fetchAsked,
  forgetAsked,
  type KeeperAsked,
  keepAsked,
  keptAsked,
  sendAnswers,
  waitingAnswers,
} from './keeper-answers.ts';

/** @param onAsking while a task is being answered nothing else is shown on the phone */
export function AftercarePart({
  secret,
  onAsking,
}: {
  readonly secret: string;
  readonly onAsking: (asking: boolean) => void;
}) {
  const { t } = useSheet();
  const [asked, setAsked] = useState<KeeperAsked | null>(() => keptAsked(secret));
  const [waiting, setWaiting] = useState(() => waitingAnswers(secret).length);
  const [said, setSaid] = useState<'sent' | 'refused' | null>(null);
  const [open, setOpen] = useState<TaskShown | null>(null);
  const show = (task: TaskShown | null) => {
    setOpen(task);
    onAsking(task !== null);
    scrollTo(0, 0);
  };
  const refresh = useCallback(async () => {
    const before = waitingAnswers(secret).length;
    const refused = await sendAnswers(secret);
    setWaiting(waitingAnswers(secret).length);
    if (before > 0 && refused !== null) setSaid(refused > 0 ? 'refused' : 'sent');
    const answer = await fetchAsked(secret);
    if (answer.ok) {
      keepAsked(secret, answer.value);
      setAsked(answer.value);
    } else if (answer.status === 404 || answer.status === 400) {
      forgetAsked(secret);
      setAsked(null);
    }
  }, [secret]);
  useEffect(() => {
    void refresh();
    const again = () => void refresh();
    addEventListener('online', again);
    return () => removeEventListener('online', again);
  }, [refresh]);
  if (asked === null || asked.releasedOn === null) return null;
  if (open)
    return (
      <AskKeeper
        key={open.key}
        secret={secret}
        task={open}
        asked={asked}
        onQueued={() => void refresh()}
        onClose={() => show(null)}
      />
    );
  return (
    <section className="keeper-after" aria-labelledby="keeper-tasks">
      <h2 id="keeper-tasks">{t('keeper.tasks')}</h2>
      <div role="status">
        {waiting > 0 && <p>{t('keeper.answersWaiting', { n: waiting })}</p>}
        {waiting === 0 && said === 'sent' && <p>{t('keeper.answered')}</p>}
        {said === 'refused' && <p className="field-fault">{t('keeper.answerRefused')}</p>}
      </div>
      <Tasks asked={asked} waiting={waitingAnswers(secret).map((one) => one.key)} onOpen={show} />
      <CalendarLink secret={secret} />
    </section>
  );
}

function Tasks({
  asked,
  waiting,
  onOpen,
}: {
  readonly asked: KeeperAsked;
  readonly waiting: readonly string[];
  readonly onOpen: (task: TaskShown) => void;
}) {
  const { t, settings } = useSheet();
  const say = useSaying();
  const due = asked.tasks.filter((task) => task.state !== 'later' && !waiting.includes(task.key));
  const later = asked.tasks.find((task) => task.state === 'later');
  const titleOf = (task: TaskShown) => sayTask(task, settings.language, 'keeper').title;
  return (
    <>
      {due.length === 0 && <p>{t('keeper.tasksNone')}</p>}
      <ul className="keeper-tasks">
        {due.map((task) => (
          <li key={task.key}>
            <strong>{titleOf(task)}</strong>
            <br />
            <Button
              className="button button-large"
              aria-label={`${t('keeper.answer')}: ${titleOf(task)}`}
              onPress={() => onOpen(task)}
            >
              {t('keeper.answer')}
            </Button>
          </li>
        ))}
      </ul>
      {later && <p className="field-hint">{t('keeper.later', { title: titleOf(later), day: say.day(later.from) })}</p>}
    </>
  );
}

function CalendarLink({ secret }: { readonly secret: string }) {
  const { t, settings } = useSheet();
  return (
    <p className="keeper-calendar">
      <a className="button button-quiet" href={`/api/keeper/${secret}/calendar.ics?${paperQuery(settings)}`} download>
        {t('keeper.calendar')}
      </a>
    </p>
  );
}
