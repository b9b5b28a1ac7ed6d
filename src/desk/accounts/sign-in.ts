// Sign in with name and password, or with a one-time code that lets one choose a password. The answer to a wrong one is
// the same, and takes the same time, whether the name exists or not.

import { branchFacts } from '../../records/animals.ts';
import { addPersonChange, personById, personByName, putPassword } from '../../records/people.ts';
import { useCode } from '../../records/person-codes.ts';
import { endSessionsOf, type OpenSession } from '../../records/sessions.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { codeHash } from './codes.ts';
import { hashOf, isSecret } from './hashing.ts';
import { passwordFinding } from './password-rule.ts';
import { type AccountDesk, openSession } from './sessions.ts';
import { countWrong, forgetWrong, waitFor } from './waits.ts';

export interface WayIn {
  readonly device: string;
  /** The session of this browser, if any: it ends. */
  readonly instead: OpenSession | null;
}

/** @returns the token of the new session. Faults: "ACCOUNT_WRONG", "ACCOUNT_WAIT". */
export async function signIn(
  desk: AccountDesk,
  given: { readonly name: string; readonly password: string },
  way: WayIn,
): Promise<Result<{ readonly token: string }>> {
  const { db, clock } = desk;
  const wait = await waitFor(db, 'password', given.name, clock.now());
  if (wait !== null) return bad([wait]);
  const person = await personByName(db, given.name);
  const right = await isSecret(person?.passwordHash ?? null, given.password);
  if (!right || person === undefined || person.disabled) {
    await countWrong(db, 'password', given.name, clock.now());
    return bad([accountFaults.wrong]);
  }
  await forgetWrong(db, 'password', given.name);
  await forgetWrong(db, 'pin', person.id);
  return good({ token: await openSession(desk, { person, how: 'password', ...way }) });
}

/** The password once more, in an open session: what a PIN may not do is open again.
 *  Faults: "ACCOUNT_WRONG", "ACCOUNT_WAIT". */
export async function proveAgain(
  desk: AccountDesk,
  session: OpenSession,
  password: string,
): Promise<Result<{ readonly token: string }>> {
  return await signIn(desk, { name: session.name, password }, { device: session.device, instead: session });
}

/** Choose a password with a code from a manager or the owner, and sign in. Sessions that were open elsewhere end.
 *  Faults: "ACCOUNT_CODE", "ACCOUNT_PASSWORD". */
export async function choosePassword(
  desk: AccountDesk,
  given: { readonly code: string; readonly password: string },
  way: WayIn,
): Promise<Result<{ readonly token: string }>> {
  const { db, clock } = desk;
  // Looked at before the code is taken: a password that is too short must not use it up.
  const early = passwordFinding(given.password, ['Warmstead']);
  if (early !== null) return bad([accountFaults.password(early)]);
  const hash = await hashOf(given.password);
  const now = clock.now();
  return await db.transaction().execute(async (tx) => {
    const code = await useCode(tx, codeHash(given.code), 'person', now);
    const person = code?.personId == null ? undefined : await personById(tx, code.personId);
    if (person === undefined || person.disabled) return bad([accountFaults.code]);
    const writer = { at: now, by: person.name };
    await putPassword(tx, person.id, hash);
    await addPersonChange(tx, person.id, { kind: 'password', was: {}, now: {} }, writer);
    await endSessionsOf(tx, person.id, 'new password', now);
    await forgetWrong(tx, 'password', person.name);
    await forgetWrong(tx, 'pin', person.id);
    return good({ token: await openSession({ db: tx, clock }, { person, how: 'password', ...way }) });
  });
}

/** Names that anybody here knows, for the rule of passwords. */
export async function knownNames(desk: AccountDesk, session: OpenSession): Promise<readonly string[]> {
  const { shopName, branchName } = await branchFacts(desk.db, session.branchId);
  return ['Warmstead', session.name, shopName, branchName];
}
