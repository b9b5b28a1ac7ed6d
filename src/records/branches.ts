// The branches of a shop: listed, added.
import { randomUUID } from 'node:crypto';
import type { Db } from './schema.ts';

export interface BranchRow {
  readonly id: string;
  readonly name: string;
  readonly place: string;
}

/** Oldest first. */
export async function branchesOf(db: Db, shopId: string): Promise<BranchRow[]> {
  return await db
    .selectFrom('branch')
    .select(['id', 'name', 'place'])
    .where('shop_id', '=', shopId)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
}

export async function insertBranch(
  db: Db,
  branch: { readonly shopId: string; readonly name: string; readonly place: string; readonly at: Date },
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('branch')
    .values({ id, shop_id: branch.shopId, name: branch.name, place: branch.place, created_at: branch.at })
    .execute();
  return id;
}

export async function nameShop(
  db: Db,
  branchId: string,
  names: { readonly shopName: string; readonly branchName: string; readonly place: string },
): Promise<void> {
  const row = await db
    .updateTable('branch')
    .set({ name: names.branchName, place: names.place })
    .where('id', '=', branchId)
    .returning('shop_id as shopId')
    .executeTakeFirstOrThrow();
  await db.updateTable('shop').set({ name: names.shopName }).where('id', '=', row.shopId).execute();
}
