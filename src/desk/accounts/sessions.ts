// Is this browser's session still good, and for how long? Half an hour without a touch locks it; twelve hours after the
// last password or passkey it ends (ASVS 4.0.3, 3.3.2 at level 2). Both are looked at on every request.
import type { SessionHow } from '../../records/account-schema.ts';
import { branchesOf } from '../../records/branches.ts';
import type { Db } from '../../records/schema.ts';
import {
  endSession,
  insertSession,
  markSeen,
  type OpenSession,
  sessionByToken,
  setLocked,
} from '../../records/sessions.ts';
import type { Clock, DeskContext } from '../desk-context.ts';
import { secretHash } from '../secrets.ts';
import { newToken } from './codes.ts';

export const idleMs = 30 * 60_000;
export const absoluteMs = 12 * 3_600_000;
/** Seen is written down at most once a minute. */
const noteEveryMs = 60_000;

export interface AccountDesk {
  readonly db: Db;
  readonly clock: Clock;
}

export interface OwnDesk extends AccountDesk {
  readonly session: OpenSession;
}

export type FoundSession =
  | { readonly state: 'none' }
  | { readonly state: 'locked' | 'open'; readonly session: OpenSession };

export async function findSession({ db, clock }: AccountDesk, token: string | undefined): Promise<FoundSession> {
  if (token === undefined || token === '') return { state: 'none' };
  const session = await sessionByToken(db, secretHash(token));
  if (session === undefined) return { state: 'none' };
  const now = clock.now();
  if (now.getTime() - session.provenAt.getTime() > absoluteMs) {
    await endSession(db, session.id, 'absolute limit', now);
    return { state: 'none' };
  }
  const idleForMs = now.getTime() - session.seenAt.getTime();
  if (idleForMs > idleMs && !session.locked) await setLocked(db, session.id, true);
  if (session.locked || idleForMs > idleMs) return { state: 'locked', session };
  if (idleForMs > noteEveryMs) await markSeen(db, session.id, now);
  return { state: 'open', session };
}

/** The desk of a session: who acts, at which branch. */
export const deskOf = ({ db, clock }: AccountDesk, session: OpenSession): DeskContext => ({
  actor: { name: session.name, branchId: session.branchId, role: session.role },
  clock,
  db,
});

export interface Opening {
  readonly person: { readonly id: string; readonly shopId: string; readonly branchId: string | null };
  readonly how: SessionHow;
  readonly device: string;
  /** The session that it takes the place of; ended, so that no token outlives a change of person or strength. */
  readonly instead: OpenSession | null;
}

/** A new session with a token of its own. @returns the token, told this once */
export async function openSession({ db, clock }: AccountDesk, opening: Opening): Promise<string> {
  const { person, how, device, instead } = opening;
  const now = clock.now();
  const branches = await branchesOf(db, person.shopId);
  const wanted = person.branchId ?? instead?.branchId;
  const branch = branches.find((one) => one.id === wanted) ?? branches[0];
  if (branch === undefined) throw new Error('a shop without a branch');
  if (instead !== null) await endSession(db, instead.id, 'replaced', now);
  const token = newToken();
  await insertSession(db, {
    tokenSha256: secretHash(token),
    personId: person.id,
    branchId: branch.id,
    how,
    provenAt: how === 'pin' && instead !== null ? instead.provenAt : now,
    at: now,
    device,
  });
  return token;
}
