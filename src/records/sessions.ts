// The rows of sessions: opened, seen, locked, ended. Found by the hash of the token that only the browser has.
// Leaves out the limits (desk/accounts/session-limits.ts).
import { randomUUID } from 'node:crypto';
import type { PersonRole, SessionHow } from './account-schema.ts';
import type { Db } from './schema.ts';

export interface NewSession {
  readonly tokenSha256: string;
  readonly personId: string;
  readonly branchId: string;
  readonly how: SessionHow;
  readonly provenAt: Date;
  readonly at: Date;
  readonly device: string;
}

/** A session with its person and branch, as they are now. */
export interface OpenSession {
  readonly id: string;
  readonly personId: string;
  readonly name: string;
  readonly role: PersonRole;
  readonly shopId: string;
  /** null: the person may change branch. */
  readonly ownBranchId: string | null;
  readonly branchId: string;
  readonly branchName: string;
  readonly shopName: string;
  readonly how: SessionHow;
  readonly provenAt: Date;
  readonly seenAt: Date;
  readonly locked: boolean;
  readonly hasPin: boolean;
  readonly device: string;
}

export async function insertSession(tx: Db, session: NewSession): Promise<string> {
  const id = randomUUID();
  await tx
    .insertInto('session')
    .values({
      id,
      token_sha256: session.tokenSha256,
      person_id: session.personId,
      branch_id: session.branchId,
      how: session.how,
      proven_at: session.provenAt,
      opened_at: session.at,
      seen_at: session.at,
      device: session.device,
    })
    .execute();
  return id;
}

/** Not of a person who was disabled, not ended; limits of time are not looked at here. */
export async function sessionByToken(db: Db, tokenSha256: string): Promise<OpenSession | undefined> {
  const row = await db
    .selectFrom('session as s')
    .innerJoin('person as p', 'p.id', 's.person_id')
    .innerJoin('branch as b', 'b.id', 's.branch_id')
    .innerJoin('shop', 'shop.id', 'b.shop_id')
    .select([
      's.id',
      's.person_id as personId',
      'p.name',
      'p.role',
      'p.shop_id as shopId',
      'p.branch_id as ownBranchId',
      's.branch_id as branchId',
      'b.name as branchName',
      'shop.name as shopName',
      's.how',
      's.proven_at as provenAt',
      's.seen_at as seenAt',
      's.locked',
      'p.pin_hash as pinHash',
      's.device',
    ])
    .where('s.token_sha256', '=', tokenSha256)
    .where('s.ended_at', 'is', null)
    .where('p.disabled', '=', false)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { pinHash, ...session } = row;
  // A person bound to one branch works there, whatever the session began with.
  return { ...session, branchId: row.ownBranchId ?? row.branchId, hasPin: pinHash !== null };
}

export async function markSeen(db: Db, id: string, at: Date): Promise<void> {
  await db.updateTable('session').set({ seen_at: at }).where('id', '=', id).execute();
}

export async function setLocked(db: Db, id: string, locked: boolean): Promise<void> {
  await db.updateTable('session').set({ locked }).where('id', '=', id).execute();
}

export async function setBranch(db: Db, id: string, branchId: string): Promise<void> {
  await db.updateTable('session').set({ branch_id: branchId }).where('id', '=', id).execute();
}

export async function endSession(db: Db, id: string, why: string, at: Date): Promise<void> {
  await db
    .updateTable('session')
    .set({ ended_at: at, ended_why: why })
    .where('id', '=', id)
    .where('ended_at', 'is', null)
    .execute();
}

/** All sessions of a person, or all but one. */
export async function endSessionsOf(
  db: Db,
  personId: string,
  why: string,
  at: Date,
  except: string | null = null,
): Promise<void> {
  let query = db
    .updateTable('session')
    .set({ ended_at: at, ended_why: why })
    .where('person_id', '=', personId)
    .where('ended_at', 'is', null);
  if (except !== null) query = query.where('id', '<>', except);
  await query.execute();
}

export interface ListedSession {
  readonly id: string;
  readonly device: string;
  readonly how: SessionHow;
  readonly openedAt: Date;
  readonly seenAt: Date;
  readonly provenAt: Date;
  readonly locked: boolean;
}

/** Newest first. */
export async function sessionsOf(db: Db, personId: string): Promise<ListedSession[]> {
  return await db
    .selectFrom('session')
    .select(['id', 'device', 'how', 'opened_at as openedAt', 'seen_at as seenAt', 'proven_at as provenAt', 'locked'])
    .where('person_id', '=', personId)
    .where('ended_at', 'is', null)
    .orderBy('seen_at', 'desc')
    .execute();
}
