// Nothing holds: what about the home, its room or its water would have to change so that the nearest kit does, and what
// does each change cost? Each is tried on that kit in a few versions of the box; two together where one is not enough.
// In another box, where that kit does not hold, a few others are tried (in this box the search has tried them all).
// Leaves out: power and wear (prices here are of things to buy besides the kit).

import type { Enclosure } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import type { KitPart } from '../kit/kit-part.ts';
import type { ShelfEnclosure } from '../shelf/shelf.ts';
import { type Change, changesFor, type HelpInput, type HelpStep, type Home, priceOf } from './help-changes.ts';
import type { JudgedHome } from './judge-home.ts';
import { otherKitsFor } from './other-kits.ts';
import type { HomeJudge } from './spread-homes.ts';

export interface HelpingChange extends JudgedHome {
  /** One or two; what they are, without words. */
  readonly steps: readonly HelpStep[];
  /** What is bought for it from the shelf; a box, foam, a cover. */
  readonly parts: readonly KitPart[];
  /** Sum of the parts in the shelf's currency; null where the shelf has no price for it, as for another room. */
  readonly cost: number | null;
  readonly enclosure: Enclosure;
}

/** A change that raises the chance by this much counts as help; our choice. */
const betterByFrac = 0.05;

/** So many boxes are tried with other kits too, the cheapest first; our choice. */
const boxesForKits = 6;

interface Helping {
  readonly change: Change;
  readonly found: HelpingChange;
}

/** Changes that bring the nearest kit further: those after which it holds first, each group cheapest first.
 *  @returns null when nobody wanted to know any more */
export async function whatHelps(input: HelpInput, judge: HomeJudge): Promise<readonly HelpingChange[] | null> {
  const { enclosure, heart } = input.choice;
  const start: Home = { enclosure, heart, parts: [], priced: true };
  const changes = changesFor(input);
  const [nearest, first] = await Promise.all([judge.judge([start]), changed(changes, start, judge)]);
  const before = nearest?.[0];
  if (!before || !first) return null;
  const helping = [...first]
    .filter(([, found]) => isBetter(found, before))
    .map(([change, found]) => ({ change, found }));
  const failing = changes.filter((change) => change.box && first.get(change)?.verdict !== 'holds');
  const inBoxes = await withOtherKits(failing, helping, start, input, judge);
  if (!inBoxes) return null;
  const useful = inBoxes.filter((h) => isBetter(h.found, before));
  const single = useful.map((h) => h.found).filter((found) => costsNoOther(found, before));
  const enough = [...first.values(), ...useful.map((h) => h.found)].some((found) => found.verdict === 'holds');
  if (enough) return single.sort(compareHelp);
  const pairs = await tried(pairsOf(useful), start, judge);
  if (!pairs) return null;
  const further = pairs.filter((found): found is HelpingChange => {
    if (!found || found.verdict === 'holds') return found !== null;
    const leavesLess = isBetter(found, before) && single.every((c) => found.stillOpen.length < c.stillOpen.length);
    return leavesLess && costsNoOther(found, before);
  });
  return [...single, ...further].sort(compareHelp);
}

/** What each change does; of those that go from mild to strong none stronger than one that is enough. */
async function changed(
  changes: readonly Change[],
  start: Home,
  judge: HomeJudge,
): Promise<ReadonlyMap<Change, HelpingChange> | null> {
  const found = new Map<Change, HelpingChange | null>();
  const enough = (family: string) =>
    [...found].some(([change, one]) => change.family === family && one?.verdict === 'holds');
  const isNext = (change: Change) =>
    !found.has(change) &&
    !(change.graded && enough(change.family)) &&
    (!change.graded || changes.find((c) => c.graded && c.family === change.family && !found.has(c)) === change);
  for (let round = changes.filter(isNext); round.length > 0; round = changes.filter(isNext)) {
    const results = await tried(
      round.map((change) => [change]),
      start,
      judge,
    );
    if (!results) return null;
    for (const [i, change] of round.entries()) found.set(change, results[i] ?? null);
  }
  return new Map(changes.flatMap((change) => (found.get(change) ? [[change, found.get(change)!] as const] : [])));
}

/** Adds the best of the other kits to each box that fails with the nearest one, where it does better. Boxes that cost no
 *  less than one that holds already are left alone. */
async function withOtherKits(
  boxes: readonly Change[],
  nearest: readonly Helping[],
  start: Home,
  input: HelpInput,
  judge: HomeJudge,
): Promise<readonly Helping[] | null> {
  const helping = [...nearest];
  const isDearer = (box: ShelfEnclosure) =>
    helping.some(
      (h) => h.change.family === 'box' && h.found.verdict === 'holds' && (h.found.cost ?? 0) <= priceOf(box, input),
    );
  const asked = boxes.slice(0, boxesForKits).flatMap(({ box }) => (box && !isDearer(box) ? [box] : []));
  // kits are found for the next box while those of the last are judged
  const runs: {
    readonly box: ShelfEnclosure;
    readonly kits: readonly Change[];
    readonly found: Promise<Tried | null>;
  }[] = [];
  for (const box of asked) {
    const kits = otherKitsFor(box, input);
    const found = tried(
      kits.map((kit) => [kit]),
      start,
      judge,
    );
    runs.push({ box, kits, found });
    await judge.rest();
  }
  for (const { box, kits, found } of runs) {
    const results = await found;
    if (!results) return null;
    if (isDearer(box)) continue;
    const last = results.findIndex((one) => one?.verdict === 'holds');
    const best = (last < 0 ? results : results.slice(0, last + 1))
      .flatMap((one, i) => (one ? [{ change: kits[i]!, found: one }] : []))
      .sort((a, b) => compareHelp(a.found, b.found))[0];
    const same = helping.findIndex((h) => h.change.box === box);
    if (!best || (same >= 0 && compareHelp(helping[same]!.found, best.found) <= 0)) continue;
    helping.splice(same >= 0 ? same : helping.length, same >= 0 ? 1 : 0, best);
  }
  return helping;
}

const isBetter = (now: JudgedHome, before: JudgedHome): boolean =>
  now.verdict === 'holds' ||
  now.stillOpen.length < before.stillOpen.length ||
  now.chanceFrac > before.chanceFrac + betterByFrac;

/** A change that mends one need and loses another is no help by itself; with a second change it may be. */
const costsNoOther = (now: JudgedHome, before: JudgedHome): boolean =>
  now.stillOpen.every((id) => before.stillOpen.includes(id));

const order: Readonly<Record<Verdict, number>> = { holds: 0, 'not-known': 1, fails: 2 };
const costOf = (c: HelpingChange): number => c.cost ?? Number.MAX_VALUE;

/** What holds first, then what leaves less open; then the cheapest, and what has no price last. */
export const compareHelp = (a: HelpingChange, b: HelpingChange): number =>
  order[a.verdict] - order[b.verdict] ||
  a.stillOpen.length - b.stillOpen.length ||
  costOf(a) - costOf(b) ||
  a.steps.length - b.steps.length ||
  b.chanceFrac - a.chanceFrac;

/** The change of each family that does most with that of every other family; boxes come first, so that foam fits them. */
function pairsOf(helping: readonly Helping[]): (readonly Change[])[] {
  const best = new Map<string, Helping>();
  const does = ({ verdict, stillOpen, chanceFrac }: HelpingChange) =>
    chanceFrac - stillOpen.length - 100 * order[verdict];
  for (const one of helping) {
    const known = best.get(one.change.family);
    if (!known || does(one.found) >= does(known.found)) best.set(one.change.family, one);
  }
  const list = [...best.values()].map((one) => one.change);
  return list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b]));
}

/** In the order asked; null where a change cannot be made to this home. */
type Tried = readonly (HelpingChange | null)[];

async function tried(sets: readonly (readonly Change[])[], start: Home, judge: HomeJudge): Promise<Tried | null> {
  const homes = sets.map((changes) => changes.reduce<Home | null>((home, change) => home && change.apply(home), start));
  const made = homes.filter((home) => home !== null);
  const judged = await judge.judge(made);
  if (!judged) return null;
  return homes.map((home, i) => home && helping(sets[i]!, home, judged[made.indexOf(home)]!));
}

const helping = (
  changes: readonly Change[],
  { parts, priced, enclosure }: Home,
  judged: JudgedHome,
): HelpingChange => ({
  steps: changes.map((c) => c.step),
  parts,
  cost: priced ? parts.reduce((sum, p) => sum + p.price, 0) : null,
  ...judged,
  enclosure,
});
