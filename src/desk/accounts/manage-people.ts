// The owner's work on people, and a manager's on those of the own branch: add, change role and branch, disable, give a
// code for a new password; each with undo. Nobody but the person ever knows a password.
import { places } from '../../husbandry/law-rule.ts';
import type { PersonRole } from '../../records/account-schema.ts';
import { type BranchRow, branchesOf, insertBranch } from '../../records/branches.ts';
import {
  addPersonChange,
  insertPerson,
  lockPeople,
  type Person,
  peopleOf,
  personById,
  personByName,
  personChanges,
  putStanding,
  type Standing,
  standingOf,
  workingOwners,
} from '../../records/people.ts';
import { withdrawCodes } from '../../records/person-codes.ts';
import type { Db } from '../../records/schema.ts';
import { endSessionsOf } from '../../records/sessions.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { giveCode } from './codes.ts';
import { nameFault } from './person-name.ts';
import type { OwnDesk } from './sessions.ts';

/** Changes that are shown and can be undone: those of the last while (our choice). */
const longestList = 50;

export async function showPeople({ db, session }: OwnDesk) {
  const [all, changes, branches] = await Promise.all([
    peopleOf(db, session.shopId),
    personChanges(db, session.shopId, longestList),
    branchesOf(db, session.shopId),
  ]);
  const people = all.filter((person) => mayManage(session, person) || person.id === session.personId);
  const shown = new Set(people.map((person) => person.id));
  return {
    people: people.map((person) => ({
      id: person.id,
      name: person.name,
      ...standingOf(person),
      hasPassword: person.passwordHash !== null,
      hasPin: person.pinHash !== null,
      mayChange: mayManage(session, person),
    })),
    changes: changes.filter((change) => shown.has(change.personId)),
    branches: session.ownBranchId === null ? branches : branches.filter((one) => one.id === session.branchId),
  };
}

/** A manager manages assistants and inspectors of the own branch; the owner everybody. */
function mayManage(session: OwnDesk['session'], person: Pick<Person, 'role' | 'branchId'>): boolean {
  if (session.role === 'owner') return true;
  const below: readonly PersonRole[] = ['assistant', 'inspector'];
  return session.role === 'manager' && below.includes(person.role) && person.branchId === session.branchId;
}

/** @returns a code with which the person chooses a password. Faults: "ACCOUNT_NAME", "ACCOUNT_BRANCH", "ACCOUNT_ROLE". */
export async function addPerson(
  desk: OwnDesk,
  given: { readonly name: string; readonly role: PersonRole; readonly branchId: string | null },
): Promise<Result<{ readonly id: string; readonly code: string }>> {
  const { db, clock, session } = desk;
  const name = given.name.trim();
  const faults: Fault[] = [];
  const wrongName = nameFault(name) ?? ((await personByName(db, name)) ? accountFaults.name(name) : null);
  if (wrongName !== null) faults.push(wrongName);
  faults.push(...(await standingFaults(desk, given)));
  if (faults.length > 0) return bad(faults);
  const writer = { at: clock.now(), by: session.name };
  return await db.transaction().execute(async (tx) => {
    const { role, branchId } = given;
    const person = { shopId: session.shopId, name, role, branchId, disabled: false, passwordHash: null };
    const id = await insertPerson(tx, person, writer);
    return good({ id, code: await giveCode(tx, id, writer) });
  });
}

/** Faults: "ACCOUNT_UNKNOWN", "ACCOUNT_ROLE", "ACCOUNT_BRANCH", "ACCOUNT_LAST_OWNER". */
export async function changePerson(desk: OwnDesk, id: string, part: Partial<Standing>): Promise<Result<object>> {
  const person = await managed(desk, id);
  if (!person.ok) return person;
  const faults = await standingFaults(desk, { ...standingOf(person.value), ...part });
  if (faults.length > 0) return bad(faults);
  return await desk.db.transaction().execute(async (tx) => {
    await lockPeople(tx);
    const fresh = await personById(tx, id);
    if (fresh === undefined) return bad([accountFaults.unknown(id)]);
    return await putChange(tx, desk, fresh, { ...standingOf(fresh), ...part }, 'changed');
  });
}

async function putChange(tx: Db, desk: OwnDesk, person: Person, now: Standing, kind: string): Promise<Result<object>> {
  const owners = await workingOwners(tx, person.shopId);
  const stays = now.role === 'owner' && !now.disabled;
  if (!stays && owners.length === 1 && owners[0] === person.id) return bad([accountFaults.lastOwner]);
  const writer = { at: desk.clock.now(), by: desk.session.name };
  await putStanding(tx, person.id, now);
  if (now.disabled) {
    await endSessionsOf(tx, person.id, 'disabled', writer.at);
    await withdrawCodes(tx, person.id, writer.at);
  }
  await addPersonChange(tx, person.id, { kind, was: standingOf(person), now }, writer);
  return good({});
}

/** The old password works until the code is used. Faults: "ACCOUNT_UNKNOWN". */
export async function giveNewCode(desk: OwnDesk, id: string): Promise<Result<{ readonly code: string }>> {
  const person = await managed(desk, id);
  if (!person.ok) return person;
  const writer = { at: desk.clock.now(), by: desk.session.name };
  return await desk.db.transaction().execute(async (tx) => {
    await withdrawCodes(tx, id, writer.at);
    await addPersonChange(tx, id, { kind: 'code', was: {}, now: {} }, writer);
    return good({ code: await giveCode(tx, id, writer) });
  });
}

/** Takes one change back. A person who was added is disabled; a code stops working.
 *  Faults: "ACCOUNT_UNKNOWN", "ACCOUNT_CHANGED", "ACCOUNT_LAST_OWNER". */
export async function undoChange(desk: OwnDesk, changeId: string): Promise<Result<object>> {
  const { db, session } = desk;
  const changes = await personChanges(db, session.shopId, longestList);
  const change = changes.find((one) => one.id === changeId);
  if (change === undefined) return bad([accountFaults.unknown(changeId)]);
  const found = await managed(desk, change.personId);
  if (!found.ok) return found;
  return await db.transaction().execute(async (tx) => {
    await lockPeople(tx);
    const person = await personById(tx, change.personId);
    if (person === undefined) return bad([accountFaults.unknown(change.personId)]);
    const at = desk.clock.now();
    if (change.kind === 'code') {
      await withdrawCodes(tx, person.id, at);
      await addPersonChange(tx, person.id, { kind: 'code-withdrawn', was: {}, now: {} }, { at, by: session.name });
      return good({});
    }
    const standing = standingOf(person);
    const asLeft = same(change.now, standing);
    if (!asLeft || !['added', 'changed', 'undone'].includes(change.kind)) return bad([accountFaults.changed]);
    const back = change.kind === 'added' ? { ...standing, disabled: true } : (change.was as unknown as Standing);
    const faults = await standingFaults(desk, back);
    return faults.length > 0 ? bad(faults) : await putChange(tx, desk, person, back, 'undone');
  });
}

const same = (one: object, other: Standing): boolean => {
  const { role, branchId, disabled } = one as Partial<Standing>;
  return role === other.role && branchId === other.branchId && disabled === other.disabled;
};

/** A person whom the actor may manage; others are not found. */
async function managed({ db, session }: OwnDesk, id: string): Promise<Result<Person>> {
  const person = await personById(db, id);
  const found = person !== undefined && person.shopId === session.shopId && mayManage(session, person);
  return found ? good(person) : bad([accountFaults.unknown(id)]);
}

/** Nobody gives a role or a branch that is not theirs to give. */
async function standingFaults(
  { db, session }: OwnDesk,
  wanted: { readonly role: PersonRole; readonly branchId: string | null },
): Promise<Fault[]> {
  const faults: Fault[] = [];
  const branches = await branchesOf(db, session.shopId);
  if (wanted.branchId !== null && !branches.some((one) => one.id === wanted.branchId)) {
    faults.push(accountFaults.branch(wanted.branchId));
  }
  if (!mayManage(session, wanted)) {
    faults.push(
      accountFaults.role(session.role, 'a manager for assistants and inspectors of the own branch; the owner'),
    );
  }
  return faults;
}

/** Faults: "ACCOUNT_NAME", "ACCOUNT_BRANCH". */
export async function addBranch(
  { db, clock, session }: OwnDesk,
  given: { readonly name: string; readonly place: string },
): Promise<Result<{ readonly id: string }>> {
  const name = given.name.trim();
  const there: readonly BranchRow[] = await branchesOf(db, session.shopId);
  const faults: Fault[] = [];
  const taken = there.some((one) => one.name.toLowerCase() === name.toLowerCase());
  const wrongName = taken ? accountFaults.name(name) : nameFault(name);
  if (wrongName !== null) faults.push(wrongName);
  if (!places.some((one) => one === given.place)) {
    faults.push({ ...accountFaults.branch(given.place.slice(0, 40)), field: 'place' });
  }
  if (faults.length > 0) return bad(faults);
  const { place } = given;
  return good({ id: await insertBranch(db, { shopId: session.shopId, name, place, at: clock.now() }) });
}
