// The rows of a branch's own values: put down, withdrawn, never changed or deleted.
// Leaves out which values are allowed (desk/set-overlay.ts) and laying them over the facts (husbandry/overlay.ts).
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import type { ShopParts } from '../husbandry/shop-value.ts';
import type { Rows, Writer } from './animals.ts';
import type { Db } from './schema.ts';

export type OverlayValue = ShopParts;

export interface NewOverlay {
  readonly path: string;
  readonly value: OverlayValue;
  readonly was: OverlayValue;
  readonly why: string;
}

export interface OverlayRow extends NewOverlay {
  readonly id: string;
  readonly at: Date;
  readonly by: string;
  /** Null while it holds. */
  readonly withdrawn: { readonly at: Date; readonly by: string; readonly why: string } | null;
}

/** Every value that a branch ever set, oldest first. */
export async function overlayRows(db: Rows, branchId: string): Promise<readonly OverlayRow[]> {
  const rows = await db
    .selectFrom('overlay')
    .leftJoin('overlay_withdrawal as gone', 'gone.overlay_id', 'overlay.id')
    .select(['overlay.id', 'overlay.path', 'overlay.value', 'overlay.was', 'overlay.why', 'overlay.at', 'overlay.by'])
    .select(['gone.at as goneAt', 'gone.by as goneBy', 'gone.why as goneWhy'])
    .where('overlay.branch_id', '=', branchId)
    .orderBy('overlay.seq')
    .execute();
  return rows.map(({ goneAt, goneBy, goneWhy, ...row }) => ({
    ...row,
    withdrawn: goneAt === null ? null : { at: goneAt, by: goneBy ?? '', why: goneWhy ?? '' },
  }));
}

/** Values that hold now, oldest first; at most one for each path. */
export const standingOverlays = async (db: Rows, branchId: string): Promise<readonly OverlayRow[]> =>
  (await overlayRows(db, branchId)).filter((row) => row.withdrawn === null);

/** Puts a value down; one that stood at the same path is withdrawn in the same step, as replaced. */
export async function insertOverlay(db: Db, overlay: NewOverlay, writer: Writer): Promise<string> {
  const id = randomUUID();
  await db.transaction().execute(async (tx) => {
    await lockBranch(tx, writer.branchId);
    const stood = (await standingOverlays(tx, writer.branchId)).filter((row) => row.path === overlay.path);
    for (const row of stood) await insertWithdrawal(tx, row.id, `replaced: ${overlay.why}`, writer);
    await tx
      .insertInto('overlay')
      .values({
        id,
        branch_id: writer.branchId,
        path: overlay.path,
        value: JSON.stringify(overlay.value),
        was: JSON.stringify(overlay.was),
        why: overlay.why,
        at: writer.at,
        by: writer.by,
      })
      .execute();
  });
  return id;
}

/** Withdraws a value of this branch that stands. @returns false when there is none such */
export async function withdrawStanding(db: Db, id: string, why: string, writer: Writer): Promise<boolean> {
  return await db.transaction().execute(async (tx) => {
    await lockBranch(tx, writer.branchId);
    const stands = (await standingOverlays(tx, writer.branchId)).some((row) => row.id === id);
    if (stands) await insertWithdrawal(tx, id, why, writer);
    return stands;
  });
}

async function insertWithdrawal(tx: Rows, id: string, why: string, writer: Writer): Promise<void> {
  await tx.insertInto('overlay_withdrawal').values({ overlay_id: id, why, at: writer.at, by: writer.by }).execute();
}

/** Two people who change values of one branch go one after the other. */
async function lockBranch(tx: Rows, branchId: string): Promise<void> {
  await sql`select id from branch where id = ${branchId} for update`.execute(tx);
}
