// A shared tablet at the counter: lock it, and let the next person in by PIN. A PIN opens only a sheet on which
// somebody gave a password or passkey today; it opens less, and ten wrong ones close it.
import type { PersonRole } from '../../records/account-schema.ts';
import { type Person, peopleOf, personById } from '../../records/people.ts';
import { type OpenSession, setLocked } from '../../records/sessions.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { isSecret } from './hashing.ts';
import { type AccountDesk, type OwnDesk, openSession } from './sessions.ts';
import { countWrong, forgetWrong, waitFor } from './waits.ts';

export interface SwitchChoice {
  readonly id: string;
  readonly name: string;
  readonly role: PersonRole;
}

const maySwitch = (person: Person, session: OpenSession): boolean =>
  person.shopId === session.shopId &&
  !person.disabled &&
  person.pinHash !== null &&
  (person.branchId === null || person.branchId === session.branchId);

/** Who can take this sheet over by PIN. */
export async function switchChoices({ db }: AccountDesk, session: OpenSession): Promise<SwitchChoice[]> {
  const people = await peopleOf(db, session.shopId);
  return people.filter((one) => maySwitch(one, session)).map(({ id, name, role }) => ({ id, name, role }));
}

export async function lockSheet({ db, session }: OwnDesk): Promise<void> {
  await setLocked(db, session.id, true);
}

/** @returns the token of the new session. Faults: "ACCOUNT_WRONG", "ACCOUNT_WAIT", "ACCOUNT_PIN_SPENT". */
export async function switchPerson(
  desk: AccountDesk,
  session: OpenSession,
  given: { readonly personId: string; readonly pin: string },
): Promise<Result<{ readonly token: string }>> {
  const { db, clock } = desk;
  const wait = await waitFor(db, 'pin', given.personId, clock.now());
  if (wait !== null) return bad([wait]);
  const person = await personById(db, given.personId);
  const allowed = person !== undefined && maySwitch(person, session) ? person : undefined;
  const right = await isSecret(allowed?.pinHash ?? null, given.pin);
  if (!right || allowed === undefined) {
    await countWrong(db, 'pin', given.personId, clock.now());
    return bad([accountFaults.wrong]);
  }
  await forgetWrong(db, 'pin', allowed.id);
  const { device } = session;
  return good({ token: await openSession(desk, { person: allowed, how: 'pin', device, instead: session }) });
}
