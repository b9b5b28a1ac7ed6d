// The shelves of a branch, one after the other: put down, never changed or deleted.
// Leaves out whether a shelf is sound (planning/shelf) and the starter shelf that stands until there is one.
import { sql } from 'kysely';
import type { Rows, Writer } from './animals.ts';
import type { Db } from './schema.ts';
import type { ShelfStep } from './shelf-schema.ts';

export interface ShelfStamp {
  readonly version: number;
  readonly step: ShelfStep;
  readonly backTo: number | null;
  readonly why: string;
  readonly at: Date;
  readonly by: string;
}

export interface NewShelf extends Pick<ShelfStamp, 'step' | 'backTo' | 'why'> {
  readonly document: object;
}

const stampColumns = ['version', 'step', 'back_to as backTo', 'why', 'at', 'by'] as const;

/** Every shelf that the branch ever had, newest first. */
export const shelfStamps = async (db: Rows, branchId: string): Promise<readonly ShelfStamp[]> =>
  await db
    .selectFrom('shelf_version')
    .select(stampColumns)
    .where('branch_id', '=', branchId)
    .orderBy('version', 'desc')
    .execute();

export async function shelfDocument(db: Rows, branchId: string, version: number): Promise<unknown | null> {
  const row = await db
    .selectFrom('shelf_version')
    .select('document')
    .where('branch_id', '=', branchId)
    .where('version', '=', version)
    .executeTakeFirst();
  return row?.document ?? null;
}

/** Puts a shelf down after version `base` (0: there was none).
 *  @returns its version, or null when somebody else has put one down since */
export async function insertShelf(db: Db, base: number, shelf: NewShelf, writer: Writer): Promise<number | null> {
  return await db.transaction().execute(async (tx) => {
    await sql`select id from branch where id = ${writer.branchId} for update`.execute(tx);
    const newest = (await shelfStamps(tx, writer.branchId))[0]?.version ?? 0;
    if (newest !== base) return null;
    await tx
      .insertInto('shelf_version')
      .values({
        branch_id: writer.branchId,
        version: base + 1,
        document: JSON.stringify(shelf.document),
        step: shelf.step,
        back_to: shelf.backTo,
        why: shelf.why,
        at: writer.at,
        by: writer.by,
      })
      .execute();
    return base + 1;
  });
}
