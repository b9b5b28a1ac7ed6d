// The rows of animals and of what the register says of them. Every value that ever stood is kept.
// Leaves out events (animal-events.ts) and which values are allowed (animal/register.ts).
import { randomUUID } from 'node:crypto';
import { type Kysely, sql, type Transaction } from 'kysely';
import type { RegisterEntry, RegisterField } from '../animal/register.ts';
import type { Db, Tables } from './schema.ts';

/** Either the records or a transaction on them. */
export type Rows = Kysely<Tables> | Transaction<Tables>;

export interface Writer {
  readonly branchId: string;
  readonly at: Date;
  readonly by: string;
}

export async function insertAnimal(tx: Rows, id: string, shopId: string, writer: Writer): Promise<void> {
  await tx.insertInto('animal').values({ id, shop_id: shopId, created_at: writer.at, created_by: writer.by }).execute();
}

export async function insertFacts(
  tx: Rows,
  animalId: string,
  values: Readonly<Partial<Record<RegisterField, string>>>,
  reason: string,
  writer: Writer,
): Promise<void> {
  const rows = Object.entries(values).map(([field, value]) => ({
    id: randomUUID(),
    animal_id: animalId,
    field,
    value,
    reason,
    branch_id: writer.branchId,
    at: writer.at,
    by: writer.by,
  }));
  if (rows.length > 0) await tx.insertInto('animal_fact').values(rows).execute();
}

/** What holds now, of one or several animals. */
export async function registerEntries(db: Rows, ids: readonly string[]): Promise<ReadonlyMap<string, RegisterEntry>> {
  const found = new Map<string, Record<string, string>>(ids.map((id) => [id, {}]));
  if (ids.length === 0) return found;
  const rows = await db
    .selectFrom('animal_fact')
    .distinctOn(['animal_id', 'field'])
    .select(['animal_id', 'field', 'value'])
    .where(sql<boolean>`animal_id = any(${[...ids]}::uuid[])`)
    .orderBy('animal_id')
    .orderBy('field')
    // Never by the clock: one that was set back must not bring an old value back.
    .orderBy('seq', 'desc')
    .execute();
  for (const row of rows) {
    const entry = found.get(row.animal_id);
    if (entry) entry[row.field] = row.value;
  }
  return found;
}

export interface FactRow {
  readonly field: string;
  readonly value: string;
  readonly reason: string;
  readonly at: Date;
  readonly by: string;
}

/** All that was ever said of an animal, oldest first. */
export async function factHistory(db: Rows, animalId: string): Promise<readonly FactRow[]> {
  return await db
    .selectFrom('animal_fact')
    .select(['field', 'value', 'reason', 'at', 'by'])
    .where('animal_id', '=', animalId)
    .orderBy('seq')
    .execute();
}

/** The same of many at once, by animal. */
export async function factHistories(
  db: Rows,
  animalIds: readonly string[],
): Promise<ReadonlyMap<string, readonly FactRow[]>> {
  const rows = await db
    .selectFrom('animal_fact')
    .select(['animal_id', 'field', 'value', 'reason', 'at', 'by'])
    .where(sql<boolean>`animal_id = any(${[...animalIds]}::uuid[])`)
    .orderBy('seq')
    .execute();
  const found = new Map<string, FactRow[]>(animalIds.map((id) => [id, []]));
  for (const { animal_id: id, ...row } of rows) found.get(id)?.push(row);
  return found;
}

export interface AnimalRow {
  readonly id: string;
  readonly createdAt: Date;
  readonly branchId: string;
  readonly enclosure: string;
  readonly gone: boolean;
}

/** Animals of a shop. `branchId`: those that are there now; `seenAt`: those that are or ever were there, because the
 *  register of a branch keeps an animal that moved on, and its history stays one. */
export async function animalsOf(
  db: Db,
  shopId: string,
  choice: {
    readonly branchId?: string;
    readonly seenAt?: string;
    readonly gone?: boolean;
    readonly id?: string;
    readonly ids?: readonly string[];
  },
): Promise<readonly AnimalRow[]> {
  let query = db
    .selectFrom('animal')
    .innerJoin('animal_whereabouts', 'animal_whereabouts.animal_id', 'animal.id')
    .select([
      'animal.id as id',
      'animal.created_at as createdAt',
      'animal_whereabouts.branch_id as branchId',
      'animal_whereabouts.enclosure as enclosure',
      'animal_whereabouts.gone as gone',
    ])
    .where('animal.shop_id', '=', shopId);
  if (choice.id !== undefined) query = query.where('animal.id', '=', choice.id);
  if (choice.ids !== undefined) query = query.where(sql<boolean>`animal.id = any(${[...choice.ids]}::uuid[])`);
  if (choice.branchId !== undefined) query = query.where('animal_whereabouts.branch_id', '=', choice.branchId);
  const { seenAt } = choice;
  if (seenAt !== undefined) {
    query = query.where((is) =>
      is.or([
        is('animal_whereabouts.branch_id', '=', seenAt),
        is.exists(
          is
            .selectFrom('animal_event as e')
            .select('e.id')
            .whereRef('e.animal_id', '=', 'animal.id')
            .where('e.branch_id', '=', seenAt),
        ),
      ]),
    );
  }
  if (choice.gone !== undefined) query = query.where('animal_whereabouts.gone', '=', choice.gone);
  return await query.orderBy('animal.created_at').execute();
}

export async function putWhereabouts(
  tx: Rows,
  animalId: string,
  where: { readonly branchId: string; readonly enclosure: string; readonly gone: boolean },
): Promise<void> {
  const row = { branch_id: where.branchId, enclosure: where.enclosure, gone: where.gone };
  await tx
    .insertInto('animal_whereabouts')
    .values({ animal_id: animalId, ...row })
    .onConflict((clash) => clash.column('animal_id').doUpdateSet(row))
    .execute();
}

/** The shop and the place of a branch. */
export async function branchFacts(
  db: Rows,
  branchId: string,
): Promise<{
  readonly shopId: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly place: string;
}> {
  return await db
    .selectFrom('branch')
    .innerJoin('shop', 'shop.id', 'branch.shop_id')
    .select(['shop.id as shopId', 'shop.name as shopName', 'branch.name as branchName', 'branch.place as place'])
    .where('branch.id', '=', branchId)
    .executeTakeFirstOrThrow();
}
