// What a person does with their own account: see it, change password and PIN, end sessions, choose the branch.
import type { BranchRow } from '../../records/branches.ts';
import { branchesOf } from '../../records/branches.ts';
import { passkeysOf } from '../../records/passkeys.ts';
import { addPersonChange, personById, putPassword, putPin } from '../../records/people.ts';
import { endSession, endSessionsOf, type ListedSession, sessionsOf, setBranch } from '../../records/sessions.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { hashOf, isSecret } from './hashing.ts';
import { isGoodPin, passwordFinding } from './password-rule.ts';
import { absoluteMs, idleMs, type OwnDesk } from './sessions.ts';
import { knownNames } from './sign-in.ts';
import { countWrong, forgetWrong, waitFor } from './waits.ts';

export interface OwnAccount {
  readonly sessions: readonly (ListedSession & { readonly here: boolean })[];
  readonly passkeys: readonly {
    readonly id: string;
    readonly name: string;
    readonly at: Date;
    readonly usedAt: Date | null;
  }[];
  readonly branches: readonly BranchRow[];
}

export async function ownAccount({ db, clock, session }: OwnDesk): Promise<OwnAccount> {
  const now = clock.now().getTime();
  const [sessions, passkeys, branches] = await Promise.all([
    sessionsOf(db, session.personId),
    passkeysOf(db, session.personId),
    branchesOf(db, session.shopId),
  ]);
  const living = sessions.filter((one) => now - one.provenAt.getTime() <= absoluteMs);
  return {
    sessions: living.map((one) => ({
      ...one,
      locked: one.locked || now - one.seenAt.getTime() > idleMs,
      here: one.id === session.id,
    })),
    passkeys: passkeys.map(({ id, name, at, usedAt }) => ({ id, name, at, usedAt })),
    branches: session.ownBranchId === null ? branches : [],
  };
}

/** Every other session ends. Faults: "ACCOUNT_WRONG", "ACCOUNT_WAIT", "ACCOUNT_PASSWORD". */
export async function changePassword(
  desk: OwnDesk,
  given: { readonly now: string; readonly next: string },
): Promise<Result<object>> {
  const wrong = await passwordFault(desk, given.now);
  if (wrong !== null) return bad([wrong]);
  const finding = passwordFinding(given.next, await knownNames(desk, desk.session));
  if (finding !== null) return bad([accountFaults.password(finding)]);
  const { db, clock, session } = desk;
  const hash = await hashOf(given.next);
  const at = clock.now();
  await db.transaction().execute(async (tx) => {
    await putPassword(tx, session.personId, hash);
    await endSessionsOf(tx, session.personId, 'new password', at, session.id);
    await addPersonChange(tx, session.personId, { kind: 'password', was: {}, now: {} }, { at, by: session.name });
  });
  return good({});
}

/** null takes the PIN away. Faults: "ACCOUNT_WRONG", "ACCOUNT_WAIT", "ACCOUNT_PIN". */
export async function changePin(
  desk: OwnDesk,
  given: { readonly password: string; readonly pin: string | null },
): Promise<Result<object>> {
  if (given.pin !== null && !isGoodPin(given.pin)) return bad([accountFaults.pin]);
  const wrong = await passwordFault(desk, given.password);
  if (wrong !== null) return bad([wrong]);
  const { db, clock, session } = desk;
  const hash = given.pin === null ? null : await hashOf(given.pin);
  await db.transaction().execute(async (tx) => {
    await putPin(tx, session.personId, hash);
    await forgetWrong(tx, 'pin', session.personId);
    const change = { kind: hash === null ? 'pin-gone' : 'pin', was: {}, now: {} };
    await addPersonChange(tx, session.personId, change, { at: clock.now(), by: session.name });
  });
  return good({});
}

/** The password is asked for again, and guessing it here waits as it does at the door. */
async function passwordFault({ db, clock, session }: OwnDesk, password: string): Promise<Fault | null> {
  const wait = await waitFor(db, 'password', session.name, clock.now());
  if (wait !== null) return wait;
  const person = await personById(db, session.personId);
  if (await isSecret(person?.passwordHash ?? null, password)) return null;
  await countWrong(db, 'password', session.name, clock.now());
  return accountFaults.wrong;
}

export async function signOut({ db, clock, session }: OwnDesk): Promise<void> {
  await endSession(db, session.id, 'signed out', clock.now());
}

export async function signOutEverywhere({ db, clock, session }: OwnDesk): Promise<void> {
  const at = clock.now();
  await endSessionsOf(db, session.personId, 'signed out everywhere', at);
  await addPersonChange(
    db,
    session.personId,
    { kind: 'signed-out-everywhere', was: {}, now: {} },
    { at, by: session.name },
  );
}

/** Faults: "ACCOUNT_UNKNOWN". */
export async function endOwnSession({ db, clock, session }: OwnDesk, id: string): Promise<Result<object>> {
  const own = await sessionsOf(db, session.personId);
  if (!own.some((one) => one.id === id)) return bad([accountFaults.unknown(id)]);
  await endSession(db, id, 'ended by its person', clock.now());
  return good({});
}

/** Faults: "ACCOUNT_BRANCH". */
export async function goToBranch({ db, session }: OwnDesk, branchId: string): Promise<Result<object>> {
  const branches = await branchesOf(db, session.shopId);
  const may = session.ownBranchId === null && branches.some((one) => one.id === branchId);
  if (!may) return bad([accountFaults.branch(branchId)]);
  await setBranch(db, session.id, branchId);
  return good({});
}
