// The tasks of aftercare as a calendar (RFC 5545): a file to take in once, or an address that a calendar program fetches.
// A task is one all-day entry on its first day; done or set aside it is cancelled for a while, then it is gone.
import { createHash } from 'node:crypto';
import ical, { ICalCalendarMethod, ICalEventBusyStatus, ICalEventStatus } from 'ical-generator';
import { addDays, dayNumber } from '../../animal/calendar.ts';
import { type CareFacts, numberOf } from '../../animal/care-facts.ts';
import { sayTask } from '../../proving/aftercare/words/say.ts';
import type { DueTaskRow } from '../../records/aftercare.ts';
import { bookIn } from '../../shared/languages.ts';
import { type PaperUnits, paperReader } from '../paper-units.ts';
import { calendarWords } from './calendar-words.ts';

export interface CalendarTask {
  readonly row: DueTaskRow;
  /** Unguessable and no key to anything; the same for one placement for ever. */
  readonly calendarName: string;
  /** What the desk calls the placement; left out for the keeper. */
  readonly title: string;
}

export interface CalendarChoice {
  readonly to: 'desk' | 'keeper';
  readonly units: PaperUnits;
  readonly today: string;
  readonly care: CareFacts;
}

const refreshS = 6 * 3600;

/** Name of an entry: the same whenever the calendar is made anew, whatever the words or days. */
export const entryUid = (calendarName: string, key: string): string =>
  `${calendarName}-${createHash('sha256').update(key).digest('hex').slice(0, 16)}@warmstead`;

export function calendarOf(tasks: readonly CalendarTask[], choice: CalendarChoice): string {
  const { language } = choice.units;
  const words = bookIn('calendar', language, calendarWords);
  const kept = numberOf(choice.care.aftercare, 'keptOnTrackDays');
  const calendar = ical({
    name: choice.to === 'desk' ? words.deskName : words.keeperName,
    prodId: { company: 'Warmstead', product: 'aftercare', language: language.toUpperCase() },
    method: ICalCalendarMethod.PUBLISH,
    ttl: refreshS,
  });
  for (const task of tasks) {
    const { row } = task;
    const ended = row.state !== 'open';
    if (ended && (row.doneOn === null || addDays(row.doneOn, kept) < choice.today)) continue;
    const event = calendar.createEvent({
      id: entryUid(task.calendarName, row.key),
      sequence: row.sequence,
      stamp: row.changedAt,
      lastModified: row.changedAt,
      start: midnightUtc(row.from),
      end: midnightUtc(addDays(row.from, 1)),
      allDay: true,
      busystatus: ICalEventBusyStatus.FREE,
      status: ended ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
      ...wordsOf(task, choice),
    });
    // A day that is only to be remembered takes no time.
    event.transparency('TRANSPARENT' as never);
  }
  const text = calendar.toString();
  return text.endsWith('\r\n') ? text : `${text}\r\n`;
}

const midnightUtc = (day: string): Date => new Date(dayNumber(day) * 86_400_000);

function wordsOf({ row, title }: CalendarTask, { to, units }: CalendarChoice) {
  const { language } = units;
  const reader = paperReader(units);
  const words = bookIn('calendar', language, calendarWords);
  const { blanks, ask } = row.task as { blanks: Record<string, string | number>; ask: never[] };
  const said = sayTask({ kind: row.kind as never, blanks, ask }, language, to, reader);
  const named = to === 'desk' && title !== '' ? `${said.title} · ${title}` : said.title;
  const until = row.to > row.from ? [words.until.replace('{day}', reader.day(row.to))] : [];
  return {
    summary: row.state === 'open' ? named : `${words[row.state]}: ${named}`,
    description: [...until, said.why, ...said.ask.map((one) => `– ${one}`)].join('\n'),
  };
}
