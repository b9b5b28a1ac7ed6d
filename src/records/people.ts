// The rows of people: who works here, as what, where; and what was done to their accounts, which is only added to.
// Leaves out who may do it (desk/accounts/) and sessions (sessions.ts).
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import type { PersonRole } from './account-schema.ts';
import type { Db } from './schema.ts';

export interface Person {
  readonly id: string;
  readonly shopId: string;
  readonly name: string;
  readonly role: PersonRole;
  /** null: every branch of the shop. */
  readonly branchId: string | null;
  readonly passwordHash: string | null;
  readonly passwordBy: string;
  readonly pinHash: string | null;
  readonly disabled: boolean;
  readonly createdAt: Date;
}

/** What of a person can be changed and changed back. */
export interface Standing {
  readonly role: PersonRole;
  readonly branchId: string | null;
  readonly disabled: boolean;
}

export interface PersonChange {
  readonly id: string;
  readonly personId: string;
  readonly kind: string;
  readonly was: Readonly<Record<string, unknown>>;
  readonly now: Readonly<Record<string, unknown>>;
  readonly at: Date;
  readonly by: string;
}

export interface AccountWriter {
  readonly at: Date;
  readonly by: string;
}

export const standingOf = (person: Standing): Standing => ({
  role: person.role,
  branchId: person.branchId,
  disabled: person.disabled,
});

const rows = (db: Db) =>
  db
    .selectFrom('person')
    .select([
      'id',
      'shop_id as shopId',
      'name',
      'role',
      'branch_id as branchId',
      'password_hash as passwordHash',
      'password_by as passwordBy',
      'pin_hash as pinHash',
      'disabled',
      'created_at as createdAt',
    ]);

export async function peopleOf(db: Db, shopId: string): Promise<Person[]> {
  return await rows(db).where('shop_id', '=', shopId).orderBy(sql`lower(name)`).execute();
}

export async function personById(db: Db, id: string): Promise<Person | undefined> {
  return await rows(db).where('id', '=', id).executeTakeFirst();
}

/** Capitals and spaces at the ends do not matter. */
export async function personByName(db: Db, name: string): Promise<Person | undefined> {
  return await rows(db).where(sql`lower(name)`, '=', sql`lower(${name.trim()})`).executeTakeFirst();
}

/** Whether somebody is there who may do everything: before that, only the first set-up is open. */
export async function hasOwner(db: Db): Promise<boolean> {
  const owner = await db.selectFrom('person').select('id').where('role', '=', 'owner').limit(1).executeTakeFirst();
  return owner !== undefined;
}

/** Owners who can sign in and reach every branch. */
export async function workingOwners(tx: Db, shopId: string): Promise<readonly string[]> {
  const found = await tx
    .selectFrom('person')
    .select('id')
    .where('shop_id', '=', shopId)
    .where('role', '=', 'owner')
    .where('disabled', '=', false)
    .where('password_hash', 'is not', null)
    .execute();
  return found.map((row) => row.id);
}

/** Owners of every shop here who may sign in, by name. */
export async function ownersHere(db: Db): Promise<Person[]> {
  return await rows(db).where('role', '=', 'owner').where('disabled', '=', false).orderBy(sql`lower(name)`).execute();
}

export interface NewPerson extends Standing {
  readonly shopId: string;
  readonly name: string;
  readonly passwordHash: string | null;
  readonly passwordBy?: string;
}

export async function insertPerson(tx: Db, person: NewPerson, writer: AccountWriter): Promise<string> {
  const id = randomUUID();
  await tx
    .insertInto('person')
    .values({
      id,
      shop_id: person.shopId,
      name: person.name,
      role: person.role,
      branch_id: person.branchId,
      disabled: person.disabled,
      password_hash: person.passwordHash,
      password_by: person.passwordBy ?? 'self',
      created_at: writer.at,
      created_by: writer.by,
    })
    .execute();
  await addPersonChange(tx, id, { kind: 'added', was: {}, now: standingOf(person) }, writer);
  return id;
}

/** One change at a time: two owners who disable each other at once find one of them still there. */
export async function lockPeople(tx: Db): Promise<void> {
  await sql`lock table person in share row exclusive mode`.execute(tx);
}

export async function putStanding(tx: Db, id: string, now: Standing): Promise<void> {
  await tx
    .updateTable('person')
    .set({ role: now.role, branch_id: now.branchId, disabled: now.disabled })
    .where('id', '=', id)
    .execute();
}

export async function putPassword(tx: Db, id: string, hash: string, by = 'self'): Promise<void> {
  await tx.updateTable('person').set({ password_hash: hash, password_by: by }).where('id', '=', id).execute();
}

export async function putPin(tx: Db, id: string, hash: string | null): Promise<void> {
  await tx.updateTable('person').set({ pin_hash: hash }).where('id', '=', id).execute();
}

export async function addPersonChange(
  tx: Db,
  personId: string,
  change: { readonly kind: string; readonly was: object; readonly now: object },
  writer: AccountWriter,
): Promise<string> {
  const id = randomUUID();
  const { kind, was, now } = change;
  await tx
    .insertInto('person_change')
    .values({ id, person_id: personId, kind, was: JSON.stringify(was), now: JSON.stringify(now), ...writer })
    .execute();
  return id;
}

/** Newest first. */
export async function personChanges(db: Db, shopId: string, limit: number): Promise<PersonChange[]> {
  return await db
    .selectFrom('person_change as c')
    .innerJoin('person as p', 'p.id', 'c.person_id')
    .select(['c.id', 'c.person_id as personId', 'c.kind', 'c.was', 'c.now', 'c.at', 'c.by'])
    .where('p.shop_id', '=', shopId)
    .orderBy('c.seq', 'desc')
    .limit(limit)
    .execute();
}
