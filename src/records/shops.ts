// Shops and branches. A new set of records gets its first shop here, so that everything that follows has a branch.
import { randomUUID } from 'node:crypto';
import type { Transaction } from 'kysely';
import { sql } from 'kysely';
import type { Db, Tables } from './schema.ts';

export interface Branch {
  readonly branchId: string;
  readonly branchName: string;
  readonly shopName: string;
}

export interface FirstShop {
  readonly shopName: string;
  readonly branchName: string;
  readonly at: Date;
  /** What else a new set of records begins with; part of the same transaction. */
  readonly fill?: (tx: Transaction<Tables>, branchId: string) => Promise<void>;
}

/** The oldest branch; made, with its shop, when there is none. Two processes that start together make one. */
export async function firstBranch(db: Db, first: FirstShop): Promise<Branch> {
  return await db.transaction().execute(async (tx) => {
    await sql`lock table shop in share row exclusive mode`.execute(tx);
    const found = await oldestBranch(tx);
    if (found !== undefined) return found;
    const shopId = randomUUID();
    const branchId = randomUUID();
    await tx.insertInto('shop').values({ id: shopId, name: first.shopName, created_at: first.at }).execute();
    await tx
      .insertInto('branch')
      .values({ id: branchId, shop_id: shopId, name: first.branchName, created_at: first.at })
      .execute();
    await first.fill?.(tx, branchId);
    return { branchId, branchName: first.branchName, shopName: first.shopName };
  });
}

async function oldestBranch(tx: Transaction<Tables>): Promise<Branch | undefined> {
  return await tx
    .selectFrom('branch')
    .innerJoin('shop', 'shop.id', 'branch.shop_id')
    .select(['branch.id as branchId', 'branch.name as branchName', 'shop.name as shopName'])
    .orderBy('branch.created_at')
    .limit(1)
    .executeTakeFirst();
}
