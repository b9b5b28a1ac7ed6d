// How did work end that somebody waited for: was its outcome kept, or was it stopped before? Whoever comes first writes the
// row, in one database for all processes, so that both never hold.
import type { Db } from './schema.ts';

export type WorkEnd = 'kept' | 'stopped';

/** Keeps the outcome of work, or nothing of it when it was stopped before.
 *  @param workId  null: nobody can stop it any more
 *  @param keep    gives the id of what it kept
 *  @returns that id; null when it was stopped */
export async function keepUnlessStopped(
  db: Db,
  workId: string | null,
  at: Date,
  keep: (tx: Db) => Promise<string>,
): Promise<string | null> {
  return await db.transaction().execute(async (tx) => {
    if (workId !== null && (await endWork(tx, workId, 'kept', at)) === 'stopped') return null;
    const id = await keep(tx);
    if (workId !== null) await tx.updateTable('work_end').set({ kept_id: id }).where('id', '=', workId).execute();
    return id;
  });
}

export interface Ended {
  /** "kept" when the stop came too late. */
  readonly ended: WorkEnd;
  /** What was kept; null when nothing was. */
  readonly keptId: string | null;
}

export async function stopWork(db: Db, workId: string, at: Date): Promise<Ended> {
  const ended = await endWork(db, workId, 'stopped', at);
  const row = await db.selectFrom('work_end').select('kept_id').where('id', '=', workId).executeTakeFirst();
  return { ended, keptId: row?.kept_id ?? null };
}

/** Whether somebody has stopped it. */
export async function isStopped(db: Db, workId: string): Promise<boolean> {
  const row = await db.selectFrom('work_end').select('ended').where('id', '=', workId).executeTakeFirst();
  return row?.ended === 'stopped';
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
