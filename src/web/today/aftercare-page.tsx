// What follows one placement: its tasks by day, what was told, an answer entered while one speaks with the keeper.

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { readTriage } from '../animal/animal-api.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useSaying } from '../animal/say.ts';
import { useAsked } from '../animal/use-asked.ts';
import { useSpecies } from '../animal/use-species.ts';
import { useHomeTitle } from '../controls/home-title.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';
import { go } from '../shell/router.ts';
import { keptDraft } from './answer-draft.ts';
import { AnswerForm, answerPlace } from './answer-form.tsx';
import { PlacementCalendar } from './calendar-part.tsx';
import { SourceList } from './source-list.tsx';
import { type AftercareSheet, readAftercare, type TaskShown } from './today-api.ts';
import { ToldPart } from './told-part.tsx';

export function AftercarePage({ id }: { readonly id: string }) {
  const { value, failed, again } = useAsked(`aftercare-${id}`, () => readAftercare(id));
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Sheet sheet={value} again={again} />;
}

function Sheet({ sheet, again }: { readonly sheet: AftercareSheet; readonly again: () => void }) {
  const { t } = useSheet();
  const say = useSaying();
  const { nameOf } = useSpecies();
  const { released } = sheet;
  const [open, setOpen] = useState(
    () =>
      new URLSearchParams(location.search).get('task') ??
      sheet.tasks.find((task) => keptDraft(answerPlace(sheet, task)) !== null)?.key ??
      null,
  );
  const shown = (['overdue', 'due', 'later'] as const).flatMap((state) =>
    sheet.tasks.filter((task) => task.state === state),
  );
  const homeTitle = useHomeTitle();
  const lead = released === null ? t('aftercare.notReleased') : t('aftercare.since', { day: say.day(released.on) });
  return (
    <main className="today aftercare">
      <div className="sheet-head">
        <h1>{t('aftercare.title', { name: sheet.callName || sheet.placementId.slice(0, 8) })}</h1>
        <p className="lead">
          {nameOf(sheet.speciesId)} · {homeTitle(sheet.title)}. {lead}
        </p>
        {released?.diedOn && <p>{t('aftercare.died', { day: say.day(released.diedOn) })}</p>}
        {released?.returnedOn && <p>{t('aftercare.returned', { day: say.day(released.returnedOn) })}</p>}
        <p className="aftercare-ways">
          <Way path={`/placement/${sheet.placementId}`}>{t('aftercare.placement')}</Way>
          <Way path={`/animals/${sheet.animalId}`}>{t('aftercare.animal')}</Way>
          <Way path={`/proof/${sheet.enquiryId}`}>{t('aftercare.proof')}</Way>
        </p>
      </div>
      <section className="today-part">
        <h2>{t('aftercare.tasks')}</h2>
        {shown.length === 0 && <p className="field-hint">{t('aftercare.noTasks')}</p>}
        <ol className="aftercare-tasks">
          {shown.map((task) => (
            <TaskItem
              key={task.key}
              task={task}
              sheet={sheet}
              isOpen={open === task.key}
              onOpen={() => setOpen(open === task.key ? null : task.key)}
              onDone={() => {
                setOpen(null);
                again();
              }}
            />
          ))}
        </ol>
      </section>
      <ToldPart sheet={sheet} again={again} />
      {released && <PlacementCalendar id={sheet.placementId} feeds={sheet.feeds} again={again} />}
    </main>
  );
}

interface TaskItemProps {
  readonly task: TaskShown;
  readonly sheet: AftercareSheet;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onDone: () => void;
}

function TaskItem({ task, sheet, isOpen, onOpen, onDone }: TaskItemProps) {
  const { t, settings } = useSheet();
  const say = useSaying();
  const reader = useReader();
  const said = sayTask(task, settings.language, 'desk', reader);
  const days =
    task.from === task.to ? say.day(task.to) : t('aftercare.span', { from: say.day(task.from), to: say.day(task.to) });
  const mark = task.state === 'overdue' ? 'overdue' : task.state === 'due' ? 'due' : 'open';
  return (
    <li className={`aftercare-task today-${mark}`}>
      <div className="aftercare-when">
        <span className="today-word">
          <span className="today-mark" aria-hidden="true" />
          {t(`task.state.${task.state}`)}
        </span>
        <span className="today-when">{days}</span>
      </div>
      <div className="aftercare-what">
        <h3>{said.title}</h3>
        <p>{said.why}</p>
        <SourceList keys={task.sources} sources={sheet.sources} />
        <Button className="button button-quiet" aria-expanded={isOpen} onPress={onOpen}>
          {t('aftercare.enter')}
        </Button>
        {isOpen && <DeskAnswer task={task} sheet={sheet} onDone={onDone} />}
      </div>
    </li>
  );
}

function DeskAnswer({ task, sheet, onDone }: Pick<TaskItemProps, 'task' | 'sheet' | 'onDone'>) {
  const { value, failed, again } = useAsked('triage', readTriage);
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <AnswerForm task={task} sheet={sheet} triage={value} onDone={onDone} />;
}

function Way({ path, children }: { readonly path: string; readonly children: React.ReactNode }) {
  return (
    <a
      className="today-way"
      href={path}
      onClick={(event) => {
        event.preventDefault();
        go(path);
      }}
    >
      {children}
    </a>
  );
}
