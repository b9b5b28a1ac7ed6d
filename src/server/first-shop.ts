// Which shop do these records begin with, and how does its first person get in? A real shop waits for its owner; the
// demonstration is asked for and never put into records that are somebody's own.
import { demoPasswords } from '../desk/accounts/demo-people.ts';
import type { AccountDesk } from '../desk/accounts/sessions.ts';
import { firstStartCode } from '../desk/accounts/set-up.ts';
import { fillDemoPlacements } from '../desk/demo-placements.ts';
import { systemClock } from '../desk/desk-context.ts';
import { demoShop, fillDemo } from '../records/demo.ts';
import type { Records } from '../records/open.ts';
import { type Branch, firstBranch } from '../records/shops.ts';
import { bad, good, type Result } from '../shared/result.ts';

export const isDemonstration = (branch: Branch): boolean => branch.shopName === demoShop.shopName;

/** @param demo  whether the demonstration was asked for. Fault "SETTING_DEMO_RECORDS". */
export async function firstShop({ db }: Records, demo: boolean): Promise<Result<Branch>> {
  const at = systemClock.now();
  if (!demo) return good(await firstBranch(db, { shopName: 'Our shop', branchName: 'Counter', at }));
  const branch = await firstBranch(db, {
    ...demoShop,
    at,
    fill: async (tx, branchId) => await fillDemo(tx, branchId, at),
  });
  if (!isDemonstration(branch)) {
    return bad([
      {
        code: 'SETTING_DEMO_RECORDS',
        field: 'WARMSTEAD_DEMO',
        got: `records of "${branch.shopName}"`,
        allowed: 'new records, or those of the demonstration',
        say: 'These records are a real shop’s; the demonstration is not put among them.',
        fix: 'Leave out WARMSTEAD_DEMO, or start the demonstration on records of its own: npm run demo',
      },
    ]);
  }
  const actor = { name: 'desk', branchId: branch.branchId, role: 'owner' } as const;
  await fillDemoPlacements({ actor, clock: systemClock, db });
  return good(branch);
}

/** What the terminal tells about getting in: the code of the first start, or the people of the demonstration. */
export async function waysIn(account: AccountDesk, branch: Branch, demo: boolean): Promise<readonly string[]> {
  if (isDemonstration(branch)) {
    const people = await demoPasswords(account, branch.branchId);
    return [
      ...(people.length > 0 ? ['People of the demonstration:'] : []),
      ...people.map((one) => `  ${one.name} (${one.role}): ${one.password}`),
      ...(demo
        ? []
        : [
            'These records are the demonstration’s. Your own shop begins in new ones: WARMSTEAD_DATA=data-shop npm start',
          ]),
    ];
  }
  const code = await firstStartCode(account);
  return code === null ? [] : [`Set-up code: ${code}`, 'Open the address above and type it there to become the owner.'];
}
