// How did work end that somebody waited for: was its outcome kept, or was it stopped before? Whoever comes first writes the
// row, in one database for all processes, so that both never hold.
import type { Db } from './schema.ts';

export type WorkEnd = 'kept' | 'stopped';

/** Keeps the outcome of work, or nothing of it when it was stopped before.
 *  @param workId  null: nobody can stop it any more
 *  @returns what keeping gave; null when it was stopped */
export async function keepUnlessStopped<T>(
  db: Db,
  workId: string | null,
  at: Date,
  keep: (tx: Db) => Promise<T>,
): Promise<T | null> {
  return await db.transaction().execute(async (tx) => {
    if (workId !== null && (await endWork(tx, workId, 'kept', at)) === 'stopped') return null;
    return await keep(tx);
  });
}

/** @returns how it ended: "kept" when the stop came too late */
export async function stopWork(db: Db, workId: string, at: Date): Promise<WorkEnd> {
  return await endWork(db, workId, 'stopped', at);
}

/** Waits for a transaction that is keeping the outcome at this moment. */
async function endWork(db: Db, id: string, ended: WorkEnd, at: Date): Promise<WorkEnd> {
  const done = await db
    .insertInto('work_end')
    .values({ id, ended, at })
    .onConflict((clash) => clash.column('id').doNothing())
    .returning('ended')
    .executeTakeFirst();
  if (done !== undefined) return ended;
  const before = await db.selectFrom('work_end').select('ended').where('id', '=', id).executeTakeFirstOrThrow();
  return before.ended;
}

/** Nobody waits so long. */
export async function forgetWorkEnds(db: Db, before: Date): Promise<void> {
  await db.deleteFrom('work_end').where('at', '<', before).execute();
}
