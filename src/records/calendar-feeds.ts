// The rows of calendar addresses that were given out: made, taken back, found again by the hash of their secret.
import { randomUUID } from 'node:crypto';
import type { Rows } from './animals.ts';

export interface CalendarFeed {
  readonly id: string;
  readonly branchId: string;
  /** Null: every placement of the branch. */
  readonly placementId: string | null;
  readonly language: string;
  readonly at: Date;
  readonly by: string;
}

export async function insertFeed(
  db: Rows,
  feed: Pick<CalendarFeed, 'branchId' | 'placementId' | 'language'>,
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
