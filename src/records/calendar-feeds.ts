// The rows of calendar addresses that were given out: made, taken back, found again by the hash of their secret.
import { randomUUID } from 'node:crypto';
import type { Rows } from './animals.ts';

/** How a calendar speaks; units are null where the address was given out without them. */
export interface FeedUnits {
  readonly language: string;
  readonly temperature: 'C' | 'F' | null;
  readonly length: 'cm' | 'in' | null;
  readonly mass: 'g' | 'oz' | null;
}

export interface CalendarFeed extends FeedUnits {
  readonly id: string;
  readonly branchId: string;
  /** Null: every placement of the branch. */
  readonly placementId: string | null;
  readonly at: Date;
  readonly by: string;
}

export async function insertFeed(
  db: Rows,
  feed: FeedUnits & Pick<CalendarFeed, 'branchId' | 'placementId'>,
  secretSha256: string,
  writer: { readonly at: Date; readonly by: string },
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('calendar_feed')
    .values({
      id,
      branch_id: feed.branchId,
      placement_id: feed.placementId,
      language: feed.language,
      temperature: feed.temperature,
      length: feed.length,
      mass: feed.mass,
      secret_sha256: secretSha256,
      ...writer,
    })
    .execute();
  return id;
}

/** Only those that still work. */
const working = (db: Rows) =>
  db
    .selectFrom('calendar_feed as f')
    .leftJoin('calendar_feed_withdrawal as w', 'w.feed_id', 'f.id')
    .select(['f.id', 'f.branch_id as branchId', 'f.placement_id as placementId', 'f.language', 'f.at', 'f.by'])
    .select(['f.temperature', 'f.length', 'f.mass'])
    .where('w.feed_id', 'is', null);

export async function feedBySecret(db: Rows, secretSha256: string): Promise<CalendarFeed | undefined> {
  return await working(db).where('f.secret_sha256', '=', secretSha256).executeTakeFirst();
}

/** Addresses of one placement, or of the whole branch when null. */
export async function feedsOf(db: Rows, branchId: string, placementId: string | null): Promise<CalendarFeed[]> {
  const own = working(db).where('f.branch_id', '=', branchId).orderBy('f.at', 'desc');
  const wanted =
    placementId === null ? own.where('f.placement_id', 'is', null) : own.where('f.placement_id', '=', placementId);
  return await wanted.execute();
}

export async function withdrawFeed(
  db: Rows,
  id: string,
  writer: { readonly at: Date; readonly by: string },
): Promise<void> {
  await db
    .insertInto('calendar_feed_withdrawal')
    .values({ feed_id: id, ...writer })
    .onConflict((clash) => clash.column('feed_id').doNothing())
    .execute();
}
