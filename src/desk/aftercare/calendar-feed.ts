// Calendars given out and fetched: a file of one placement, an address for the desk or for a keeper, taken back again.
import { addDays } from '../../animal/calendar.ts';
import { numberOf } from '../../animal/care-facts.ts';
import { type DueTaskRow, doneSince, dueOfPlacement, openBetween, releasedPlacement } from '../../records/aftercare.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { branchFacts } from '../../records/animals.ts';
import { type FeedUnits, feedBySecret, feedsOf, insertFeed, withdrawFeed } from '../../records/calendar-feeds.ts';
import { placementById } from '../../records/placements.ts';
import { calendarNames, placementNames } from '../../records/today.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import type { Clock, DeskContext } from '../desk-context.ts';
import { type PaperUnits, paperUnits } from '../paper-units.ts';
import { placementFaults } from '../placement-faults.ts';
import { newSecret, secretHash } from '../secrets.ts';
import { todayOf } from '../today.ts';
import { aftercareFaults } from './aftercare-faults.ts';
import { type CalendarChoice, calendarOf } from './calendar.ts';
import { aftercareUpToDate } from './rebuild.ts';

/** How far ahead a calendar of the whole branch looks, and how much it holds at most; our choice. */
const aheadDays = 400;
const mostEntries = 2000;

/** An address of its own; the secret in it is told once. Faults: "PLACEMENT_UNKNOWN", "AFTERCARE_NOT_RELEASED". */
export async function giveFeed(
  desk: DeskContext,
  placementId: string | null,
  units: FeedUnits,
): Promise<Result<{ readonly id: string; readonly secret: string }>> {
  if (placementId !== null) {
    const found = await releasedFor(desk, placementId);
    if (!found.ok) return found;
  }
  const secret = newSecret();
  const writer = { at: desk.clock.now(), by: desk.actor.name };
  const feed = { branchId: desk.actor.branchId, placementId, ...units };
  return good({ id: await insertFeed(desk.db, feed, secretHash(secret), writer), secret });
}

export const listFeeds = async (desk: DeskContext, placementId: string | null) =>
  (await feedsOf(desk.db, desk.actor.branchId, placementId)).map((feed) => ({ ...feed, at: feed.at.toISOString() }));

/** Faults: "CALENDAR_FEED". */
export async function takeBackFeed(
  desk: DeskContext,
  placementId: string | null,
  id: string,
): Promise<Result<{ readonly id: string }>> {
  const known = (await feedsOf(desk.db, desk.actor.branchId, placementId)).some((feed) => feed.id === id);
  if (!known) return bad([aftercareFaults.feedUnknown]);
  await withdrawFeed(desk.db, id, { at: desk.clock.now(), by: desk.actor.name });
  return good({ id });
}

/** The calendar behind an address. Faults: "CALENDAR_FEED", the same for one that never was and one taken back. */
export async function fetchFeed(
  { db, clock }: Pick<DeskContext, 'db' | 'clock'>,
  secret: string,
): Promise<Result<string>> {
  const feed = await feedBySecret(db, secretHash(secret));
  if (feed === undefined) return bad([aftercareFaults.feedUnknown]);
  const desk = deskOfFeed(db, clock, feed.branchId);
  if (feed.placementId !== null) return await placementCalendar(desk, feed.placementId, unitsOf(feed), 'keeper');
  return good(await branchCalendar(desk, unitsOf(feed)));
}

/** As the address was given out; units that were not said then are those of the place. */
function unitsOf({ language, temperature, length, mass }: FeedUnits): Partial<PaperUnits> {
  return {
    language,
    ...(temperature === null ? {} : { temperature }),
    ...(length === null ? {} : { length }),
    ...(mass === null ? {} : { mass }),
  };
}

/** Reads only: nobody acts under this name. */
export const deskOfFeed = (db: DeskContext['db'], clock: Clock, branchId: string): DeskContext => ({
  db,
  clock,
  actor: { name: 'calendar', branchId, role: 'inspector' },
});

/** Faults: "PLACEMENT_UNKNOWN", "AFTERCARE_NOT_RELEASED". */
export async function placementCalendar(
  desk: DeskContext,
  placementId: string,
  asked: Partial<PaperUnits>,
  to: CalendarChoice['to'],
): Promise<Result<string>> {
  const found = await releasedFor(desk, placementId);
  if (!found.ok) return found;
  return good(await calendarFrom(desk, await dueOfPlacement(desk.db, placementId), asked, to));
}

async function branchCalendar(desk: DeskContext, asked: Partial<PaperUnits>): Promise<string> {
  await aftercareUpToDate(desk);
  const today = todayOf(desk.clock);
  const kept = numberOf(allFacts().care.aftercare, 'keptOnTrackDays');
  const since = new Date(desk.clock.now().getTime() - kept * 86_400_000);
  const { branchId } = desk.actor;
  const open = await openBetween(desk.db, branchId, addDays(today, -aheadDays), addDays(today, aheadDays), mostEntries);
  const done = await doneSince(desk.db, branchId, since, mostEntries);
  return await calendarFrom(desk, [...open, ...done], asked, 'desk');
}

async function calendarFrom(
  desk: DeskContext,
  rows: readonly DueTaskRow[],
  asked: Partial<PaperUnits>,
  to: CalendarChoice['to'],
): Promise<string> {
  const ids = [...new Set(rows.map((row) => row.placementId))];
  const [names, calendars] = [await placementNames(desk.db, ids), await calendarNames(desk.db, ids)];
  const tasks = rows.flatMap((row) => {
    const calendarName = calendars.get(row.placementId);
    const name = names.get(row.placementId);
    const title = [name?.callName, name?.title].filter(Boolean).join(', ');
    return calendarName === undefined ? [] : [{ row, calendarName, title }];
  });
  const { place } = await branchFacts(desk.db, desk.actor.branchId);
  return calendarOf(tasks, { to, units: paperUnits(asked, place), today: todayOf(desk.clock), care: allFacts().care });
}

async function releasedFor(desk: DeskContext, placementId: string): Promise<Result<true>> {
  const placement = await placementById(desk.db, placementId);
  if (placement === undefined || placement.branchId !== desk.actor.branchId)
    return bad([placementFaults.unknown(placementId)]);
  await aftercareUpToDate(desk);
  return (await releasedPlacement(desk.db, placementId)) === undefined
    ? bad([aftercareFaults.notReleased])
    : good(true as const);
}
