// The first start: whoever reads the code in the terminal becomes the owner. Open only while there is no owner, so that
// nobody on the network takes the shop over.
import { places } from '../../husbandry/law-rule.ts';
import { nameShop } from '../../records/branches.ts';
import { hasOwner, insertPerson, lockPeople } from '../../records/people.ts';
import { useCode, withdrawCodes } from '../../records/person-codes.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { codeHash, giveCode } from './codes.ts';
import { hashOf } from './hashing.ts';
import { passwordFinding } from './password-rule.ts';
import { nameFault } from './person-name.ts';
import { type AccountDesk, openSession } from './sessions.ts';

export interface SetUp {
  readonly code: string;
  readonly name: string;
  readonly password: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly place: string;
}

/** The code to print, or null when there is an owner already. Codes of earlier starts stop working. */
export async function firstStartCode({ db, clock }: AccountDesk): Promise<string | null> {
  if (await hasOwner(db)) return null;
  return await giveCode(db, null, { at: clock.now(), by: 'start' });
}

/** Makes the first owner and signs them in. Faults: "ACCOUNT_SET_UP", "ACCOUNT_CODE", "ACCOUNT_NAME",
 *  "ACCOUNT_PASSWORD", "ACCOUNT_BRANCH". */
export async function setUpShop(
  { db, clock }: AccountDesk,
  branch: { readonly branchId: string; readonly shopId: string },
  given: SetUp,
  device: string,
): Promise<Result<{ readonly token: string }>> {
  if (await hasOwner(db)) return bad([accountFaults.setUp]);
  const faults = setUpFaults(given);
  if (faults.length > 0) return bad(faults);
  const passwordHash = await hashOf(given.password);
  const at = clock.now();
  return await db.transaction().execute(async (tx) => {
    await lockPeople(tx);
    if (await hasOwner(tx)) return bad([accountFaults.setUp]);
    if ((await useCode(tx, codeHash(given.code), 'first-start', at)) === undefined) return bad([accountFaults.code]);
    await withdrawCodes(tx, null, at);
    const name = given.name.trim();
    const { shopId } = branch;
    const owner = { shopId, name, role: 'owner', branchId: null, disabled: false, passwordHash } as const;
    const id = await insertPerson(tx, owner, { at, by: name });
    const { shopName, branchName, place } = given;
    await nameShop(tx, branch.branchId, { shopName: shopName.trim(), branchName: branchName.trim(), place });
    const person = { id, shopId, branchId: branch.branchId };
    return good({ token: await openSession({ db: tx, clock }, { person, how: 'password', device, instead: null }) });
  });
}

function setUpFaults(given: SetUp): Fault[] {
  const faults: Fault[] = [];
  const wrongName = nameFault(given.name);
  if (wrongName !== null) faults.push(wrongName);
  const finding = passwordFinding(given.password, ['Warmstead', given.name, given.shopName, given.branchName]);
  if (finding !== null) faults.push(accountFaults.password(finding));
  for (const field of ['shopName', 'branchName'] as const) {
    const wrong = nameFault(given[field]);
    if (wrong !== null) faults.push({ ...wrong, field });
  }
  if (!places.some((one) => one === given.place)) {
    faults.push({ ...accountFaults.branch(given.place.slice(0, 40)), field: 'place' });
  }
  return faults;
}
