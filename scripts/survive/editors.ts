// Two people change one enquiry and one placement at the same moment, each through connections of their own: is exactly one
// change of an enquiry kept and the other told, and is all that was said about a placement kept once?
import { randomUUID } from 'node:crypto';
import { insertAnimal } from '../../src/records/animals.ts';
import { insertEnquiry, updateEnquiry } from '../../src/records/enquiries.ts';
import type { Records } from '../../src/records/open.ts';
import type { PlacementEventKind } from '../../src/records/placement-schema.ts';
import { addPlacementEvent, insertPlacement, placementEvents } from '../../src/records/placements.ts';
import { firstBranch } from '../../src/records/shops.ts';

export interface EditorsDone {
  readonly rounds: number;
  /** Changes of the enquiry that were refused because somebody else was first. */
  readonly told: number;
  /** What was kept but should not be, or should be and was not. */
  readonly wrong: readonly string[];
}

const at = new Date('2026-01-15T09:00:00Z');

/** @param hands  the records, opened once for each person */
export async function twoEditors(hands: readonly [Records, Records], rounds: number): Promise<EditorsDone> {
  const [{ db }] = hands;
  const { branchId } = await firstBranch(db, { shopName: 'Two hands', branchName: 'Counter', at });
  const shop = await db.selectFrom('branch').select('shop_id').where('id', '=', branchId).executeTakeFirstOrThrow();
  const enquiryId = randomUUID();
  const animalId = randomUUID();
  await insertEnquiry(db, { id: enquiryId, branchId, document: {}, at, by: 'one' });
  await insertAnimal(db, animalId, shop.shop_id, { branchId, at, by: 'one' });
  const wrong: string[] = [];
  let told = 0;
  for (let round = 1; round <= rounds; round++) {
    const change = (by: string) => ({ id: enquiryId, branchId, fromVersion: round, document: { round, by }, at, by });
    const both = await Promise.all(hands.map(async (hand, n) => await updateEnquiry(hand.db, change(`hand ${n}`))));
    const kept = both.filter((row) => row !== undefined).length;
    told += both.length - kept;
    if (kept !== 1) wrong.push(`round ${round}: ${kept} changes of one enquiry kept`);
  }
  for (let round = 1; round <= rounds; round++) {
    wrong.push(...(await placementRound(hands, { branchId, enquiryId, animalId }, round)));
  }
  return { rounds, told, wrong };
}

/** Both say something of their own, both press the same thing, one releases while the other refuses. */
async function placementRound(
  hands: readonly [Records, Records],
  home: { readonly branchId: string; readonly enquiryId: string; readonly animalId: string },
  round: number,
): Promise<string[]> {
  const placementId = await insertPlacement(hands[0].db, home, { at, by: 'one' });
  const add = async (hand: number, kind: PlacementEventKind, token: string) =>
    await (hands[hand] as Records).db
      .transaction()
      .execute(
        async (tx) =>
          await addPlacementEvent(tx, placementId, { kind, body: { hand }, token }, { at, by: `hand ${hand}` }),
      );
  const same = randomUUID();
  await Promise.all([
    add(0, 'statement', randomUUID()),
    add(1, 'statement', randomUUID()),
    add(0, 'statement', same),
    add(1, 'statement', same),
  ]);
  const decided = await Promise.all([add(0, 'released', randomUUID()), add(1, 'refused', randomUUID())]);
  const events = await placementEvents(hands[0].db, placementId);
  const wrong: string[] = [];
  const said = events.filter((event) => event.kind === 'statement').length;
  if (said !== 3) wrong.push(`round ${round}: of 3 things said ${said} are kept`);
  const ends = events.filter((event) => event.kind === 'released' || event.kind === 'refused').length;
  if (ends !== 1 || decided.filter((one) => one.ok).length !== 1) wrong.push(`round ${round}: ${ends} decisions kept`);
  return wrong;
}
