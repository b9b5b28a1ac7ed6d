// The clock of the machine jumps: what was written last still counts as the newest, and the chain holds.
import { randomUUID } from 'node:crypto';
import { insertAnimal, insertFacts, registerEntries } from '../../src/records/animals.ts';
import { insertEnquiry } from '../../src/records/enquiries.ts';
import type { Records } from '../../src/records/open.ts';
import { insertPlanResult, planResultsOf } from '../../src/records/plan-results.ts';
import { insertProofResult, newestProof } from '../../src/records/readings.ts';
import { firstBranch } from '../../src/records/shops.ts';
import { verifyChain } from '../../src/records/verify-chain.ts';

export interface ClockDone {
  readonly jumps: number;
  readonly wrong: readonly string[];
}

/** A year back, a year ahead, an hour back, two minutes back, and one that stands still [s]. */
const jumpsS = [0, -31_536_000, 31_536_000, -3600, -120, 0, 0] as const;

export async function jumpClock({ db, pool }: Records): Promise<ClockDone> {
  const start = new Date('2026-01-15T09:00:00Z');
  const { branchId } = await firstBranch(db, { shopName: 'Clock', branchName: 'Counter', at: start });
  const { shop_id: shopId } = await db
    .selectFrom('branch')
    .select('shop_id')
    .where('id', '=', branchId)
    .executeTakeFirstOrThrow();
  const wrong: string[] = [];
  const animalId = randomUUID();
  const enquiryId = randomUUID();
  await insertAnimal(db, animalId, shopId, { branchId, at: start, by: 'clock' });
  await insertEnquiry(db, { id: enquiryId, branchId, document: {}, at: start, by: 'clock' });
  for (const [n, jumpS] of jumpsS.entries()) {
    const at = new Date(start.getTime() + jumpS * 1000);
    const writer = { branchId, at, by: 'clock' };
    await insertFacts(db, animalId, { name: `name ${n}` } as never, 'clock', writer);
    const versions = { enquiryId, enquiryVersion: 1, modelVersion: `m${n}`, dataVersion: 'd' };
    await insertPlanResult(db, { id: randomUUID(), answer: { n }, ...versions, at, by: 'clock' });
    await insertProofResult(db, { answer: { n }, inputs: {}, ...versions }, { at, by: 'clock' });
    const entry = (await registerEntries(db, [animalId])).get(animalId) as Record<string, string> | undefined;
    if (entry?.name !== `name ${n}`) wrong.push(`register after jump ${n}`);
    if ((await planResultsOf(db, enquiryId))[0]?.modelVersion !== `m${n}`) wrong.push(`plan after jump ${n}`);
    if ((await newestProof(db, enquiryId))?.modelVersion !== `m${n}`) wrong.push(`proof after jump ${n}`);
  }
  const client = await pool.connect();
  for (const one of (await verifyChain(client)).breaks) wrong.push(`chain: ${one.kind} ${one.table}`);
  client.release();
  return { jumps: jumpsS.length, wrong };
}
