// What is to be done at this desk today: one list by urgency, each row the way to where it is done.

import { useState } from 'react';
import { Button } from 'react-aria-components';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useSaying } from '../animal/say.ts';
import { useAsked } from '../animal/use-asked.ts';
import { useSpecies } from '../animal/use-species.ts';
import { useHomeTitle } from '../controls/home-title.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { BranchCalendar } from './calendar-part.tsx';
import { useConcernWords } from './concern-words.ts';
import { readMore, readToday, sendStep, type TaskRow, type TodayAnswer } from './today-api.ts';
import { TodayRow } from './today-row.tsx';

export function TodayPage() {
  const { value, failed, again } = useAsked('today', readToday);
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <List answer={value} again={again} />;
}

function List({ answer, again }: { readonly answer: TodayAnswer; readonly again: () => void }) {
  const { t } = useSheet();
  const say = useSaying();
  const { overdue, due, most } = answer.counts;
  const count = (n: number): string => (n >= most ? t('today.moreThan', { n: most - 1 }) : String(n));
  const now = useNow(answer, again);
  const today = useToday(answer);
  const goOn = useGoOn(answer);
  return (
    <main className="today">
      <div className="sheet-head">
        <h1>{t('today.title', { day: say.day(answer.today) })}</h1>
        <p className="lead">{t('today.lead', { now: now.length, overdue: count(overdue), due: count(due) })}</p>
        {answer.waiting > 0 && <p role="status">{t('today.waiting', { n: count(answer.waiting) })}</p>}
      </div>
      {answer.fresh && <Begin />}
      <Part title={t('today.now')} rows={now} empty={t('today.nowNone')} />
      <Part title={t('today.today')} rows={today} empty={t('today.todayNone')}>
        <More answer={answer} />
      </Part>
      <Part title={t('today.goOn')} rows={goOn} empty={t('today.goOnNone')} />
      <Done answer={answer} again={again} />
      <BranchCalendar />
      <p>
        <Way path="/own-figures">{t('today.figures')}</Way>
      </p>
    </main>
  );
}

interface PartProps {
  readonly title: string;
  readonly rows: readonly React.ReactNode[];
  readonly empty: string;
  readonly children?: React.ReactNode;
}

function Part({ title, rows, empty, children }: PartProps) {
  return (
    <section className="today-part">
      <h2>{title}</h2>
      {rows.length === 0 ? <p className="field-hint">{empty}</p> : <ul className="today-list">{rows}</ul>}
      {children}
    </section>
  );
}

/** What cannot wait: told by a keeper, overdue by the vet's word, a home whose readings stopped. */
function useNow(answer: TodayAnswer, again: () => void): readonly React.ReactNode[] {
  const nameOf = useNameOf();
  const homeTitle = useHomeTitle();
  const { t } = useSheet();
  const say = useSaying();
  const words = useConcernWords();
  const look = (placementId: string, eventId: string) => async () => {
    await sendStep(placementId, crypto.randomUUID(), { what: 'looked-at', of: eventId });
    again();
  };
  return [
    ...answer.concerns.map((one) => (
      <TodayRow
        key={one.eventId}
        mark="now"
        word={t(one.urgency === 'now' ? 'today.word.now' : 'today.word.look')}
        path={`/aftercare/${one.placementId}`}
        what={one.told.concerns.map(words).join('; ')}
        who={nameOf(one)}
        when={t(one.told.via === 'keeper' ? 'today.toldKeeper' : 'today.toldDesk', { day: say.day(one.told.on) })}
      >
        <Button className="button button-quiet" onPress={() => void look(one.placementId, one.eventId)()}>
          {t('today.looked')}
        </Button>
      </TodayRow>
    )),
    ...answer.animals
      .filter((one) => one.what === 'vet')
      .map((one) => (
        <TodayRow
          key={`vet-${one.animalId}`}
          mark="now"
          word={t('today.word.now')}
          path={`/animals/${one.animalId}`}
          what={t('today.animal.vet')}
          who={`${one.callName} · ${one.enclosure}`}
        />
      )),
    ...answer.silent.map((one) => (
      <TodayRow
        key={one.sourceId}
        mark="now"
        word={t('today.word.silent')}
        path={`/proof/${one.enquiryId}`}
        what={one.lastAt === null ? t('today.neverSpoke', { name: one.label }) : t('today.silent', { name: one.label })}
        who={homeTitle(one.title)}
        when={one.lastAt === null ? '' : t('today.lastSpoke', { day: say.day(one.lastAt.slice(0, 10)) })}
      />
    )),
  ];
}

function useToday(answer: TodayAnswer): readonly React.ReactNode[] {
  const { t } = useSheet();
  const say = useSaying();
  const { feeding, round } = answer;
  const soon = answer.animals.filter((one) => one.what !== 'vet');
  const row = (key: string, path: string, what: string, who: string) => (
    <TodayRow key={key} mark="due" word={t('today.word.today')} path={path} what={what} who={who} />
  );
  return [
    ...answer.tasks.map((task) => <AftercareRow key={`${task.placementId}-${task.key}`} task={task} />),
    ...(round.left > 0 ? [row('round', '/round', t('today.round', { n: round.left, of: round.of }), '')] : []),
    ...(feeding.due > 0
      ? [
          row(
            'feeding',
            '/animals',
            t('today.feeding', { n: feeding.due, overdue: feeding.overdue }),
            feeding.names.join(', '),
          ),
        ]
      : []),
    ...soon.map((one) =>
      row(
        `${one.what}-${one.animalId}`,
        `/animals/${one.animalId}`,
        t(`today.animal.${one.what}`, { day: say.day(one.on) }),
        `${one.callName} · ${one.enclosure}`,
      ),
    ),
    ...answer.instruments.map((one) =>
      row(
        one.id,
        '/instruments',
        one.dueOn === null ? t('today.instrumentNever') : t('today.instrument', { day: say.day(one.dueOn) }),
        one.name,
      ),
    ),
  ];
}

function AftercareRow({ task }: { readonly task: TaskRow }) {
  const nameOf = useNameOf();
  const { t, settings } = useSheet();
  const say = useSaying();
  const { nameOf: speciesOf } = useSpecies();
  const when = task.to > task.from ? t('today.until', { day: say.day(task.to) }) : say.day(task.to);
  return (
    <TodayRow
      mark={task.state === 'overdue' ? 'overdue' : 'due'}
      word={t(`task.state.${task.state}`)}
      path={`/aftercare/${task.placementId}?task=${encodeURIComponent(task.key)}`}
      what={sayTask(task, settings.language).title}
      who={`${nameOf(task)}${task.speciesId ? ` · ${speciesOf(task.speciesId)}` : ''}`}
      when={when}
    />
  );
}

/** Half-done work: placements by what is missing next, then enquiries. */
function useGoOn(answer: TodayAnswer): readonly React.ReactNode[] {
  const nameOf = useNameOf();
  const { t } = useSheet();
  return [
    ...answer.placements.map((one) => (
      <TodayRow
        key={one.placementId}
        mark="open"
        word={t('today.word.placement')}
        path={`/placement/${one.placementId}`}
        what={t(`today.placement.${one.next}`)}
        who={nameOf(one)}
      />
    )),
    ...answer.enquiries.map((one) => (
      <TodayRow
        key={one.enquiryId}
        mark="open"
        word={t('today.word.enquiry')}
        path={one.next === 'proof' ? `/proof/${one.enquiryId}` : `/plan/${one.enquiryId}`}
        what={t(`today.enquiry.${one.next}`)}
        who={one.title || t('today.untitled')}
      />
    )),
    ...(answer.held > 0
      ? [
          <TodayRow
            key="held"
            mark="open"
            word={t('today.word.animals')}
            path="/animals"
            what={t('today.held', { n: answer.held })}
            who=""
          />,
        ]
      : []),
  ];
}

/** Further rows, fetched when asked for: the list is short on purpose. */
function More({ answer }: { readonly answer: TodayAnswer }) {
  const { t } = useSheet();
  const [next, setNext] = useState(answer.next);
  const [more, setMore] = useState<readonly TaskRow[]>([]);
  if (answer.next === null) return null;
  const fetchMore = async () => {
    const found = next && (await readMore(next));
    if (!found?.ok) return;
    setMore((now) => [...now, ...found.value.tasks]);
    setNext(found.value.next);
  };
  return (
    <>
      <ul className="today-list">
        {more.map((task) => (
          <AftercareRow key={`${task.placementId}-${task.key}`} task={task} />
        ))}
      </ul>
      {next && (
        <Button className="button button-quiet" onPress={() => void fetchMore()}>
          {t('today.more')}
        </Button>
      )}
    </>
  );
}

function Done({ answer, again }: { readonly answer: TodayAnswer; readonly again: () => void }) {
  const nameOf = useNameOf();
  const { t, settings } = useSheet();
  if (answer.done.length === 0) return null;
  const undo = async (row: TaskRow) => {
    if (!row.doneEvent) return;
    await sendStep(row.placementId, crypto.randomUUID(), { what: 'undone', of: row.doneEvent });
    again();
  };
  return (
    <section className="today-part">
      <h2>{t('today.done')}</h2>
      <ul className="today-list">
        {answer.done.map((row) => (
          <TodayRow
            key={`${row.placementId}-${row.key}`}
            mark="done"
            word={t(`task.state.${row.state}`)}
            path={`/aftercare/${row.placementId}`}
            what={sayTask(row, settings.language).title}
            who={nameOf(row)}
          >
            <Button
              className="button button-quiet"
              aria-label={`${t('today.undo')}: ${sayTask(row, settings.language).title}, ${nameOf(row)}`}
              onPress={() => void undo(row)}
            >
              {t('today.undo')}
            </Button>
          </TodayRow>
        ))}
      </ul>
    </section>
  );
}

/** Nothing was ever entered: how the work begins. */
function Begin() {
  const { t } = useSheet();
  return (
    <section className="today-begin">
      <h2>{t('today.begin')}</h2>
      <ol>
        <li>
          <Way path="/animals">{t('today.begin.animals')}</Way> {t('today.begin.animalsSay')}
        </li>
        <li>
          <Way path="/">{t('today.begin.enquiry')}</Way> {t('today.begin.enquirySay')}
        </li>
        <li>
          <Way path="/placements">{t('today.begin.placement')}</Way> {t('today.begin.placementSay')}
        </li>
      </ol>
    </section>
  );
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

function useNameOf(): (one: { readonly callName: string; readonly title: string }) => string {
  const homeTitle = useHomeTitle();
  return (one) => [...new Set([one.callName, homeTitle(one.title)])].filter((part) => part !== '').join(', ');
}
