// An owner forgot the password, and nobody stands above an owner: whoever sits at the machine of the records may have a
// code for one. They could read the records anyway; that the code was given stands in the list of changes.
import { addPersonChange, lockPeople, ownersHere } from '../../records/people.ts';
import { withdrawCodes } from '../../records/person-codes.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { giveCode } from './codes.ts';
import type { AccountDesk } from './sessions.ts';

/** @param name which owner; empty where there is only one. Faults: "ACCOUNT_WHICH_OWNER". */
export async function ownerCode(
  { db, clock }: AccountDesk,
  name: string,
): Promise<Result<{ readonly name: string; readonly code: string }>> {
  const wanted = name.trim().toLowerCase();
  return await db.transaction().execute(async (tx) => {
    await lockPeople(tx);
    const owners = await ownersHere(tx);
    const meant = wanted === '' ? owners : owners.filter((one) => one.name.toLowerCase() === wanted);
    const [owner] = meant;
    if (owner === undefined || meant.length > 1)
      return bad([
        accountFaults.whichOwner(
          name,
          owners.map((one) => one.name),
        ),
      ]);
    const writer = { at: clock.now(), by: 'terminal' };
    await withdrawCodes(tx, owner.id, writer.at);
    await addPersonChange(tx, owner.id, { kind: 'code', was: {}, now: {} }, writer);
    return good({ name: owner.name, code: await giveCode(tx, owner.id, writer) });
  });
}
