// The people of the demonstration shop, all invented. Their passwords are made anew at each start and told in the
// terminal, until somebody changes their own; a PIN is chosen by the person.

import type { PersonRole } from '../../records/account-schema.ts';
import { branchFacts } from '../../records/animals.ts';
import { insertPerson, lockPeople, peopleOf, putPassword } from '../../records/people.ts';
import { newCode } from './codes.ts';
import { hashOf } from './hashing.ts';
import type { AccountDesk } from './sessions.ts';

const demoPeople: readonly { readonly name: string; readonly role: PersonRole; readonly everyBranch?: true }[] = [
  { name: 'Demo owner', role: 'owner', everyBranch: true },
  { name: 'Demo manager', role: 'manager' },
  { name: 'Demo assistant', role: 'assistant' },
  { name: 'Demo inspector', role: 'inspector' },
];

const by = 'demonstration';

export interface DemoPassword {
  readonly name: string;
  readonly role: PersonRole;
  readonly password: string;
}

/** Makes the people where there are none yet. @returns those whose password is still ours to tell */
export async function demoPasswords({ db, clock }: AccountDesk, branchId: string): Promise<DemoPassword[]> {
  const { shopId } = await branchFacts(db, branchId);
  const at = clock.now();
  await db.transaction().execute(async (tx) => {
    await lockPeople(tx);
    if ((await peopleOf(tx, shopId)).length > 0) return;
    for (const { name, role, everyBranch } of demoPeople) {
      const standing = { role, branchId: everyBranch ? null : branchId, disabled: false };
      await insertPerson(tx, { shopId, name, ...standing, passwordHash: null, passwordBy: by }, { at, by });
    }
  });
  const people = (await peopleOf(db, shopId)).filter((person) => person.passwordBy === by);
  return await Promise.all(
    people.map(async ({ id, name, role }) => {
      const password = newCode().toLowerCase();
      await putPassword(db, id, await hashOf(password), by);
      return { name, role, password };
    }),
  );
}
