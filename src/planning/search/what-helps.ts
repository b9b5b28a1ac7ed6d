// Nothing holds: what about the home, its room or its water would have to change so that the nearest kit does, and what
// does each change cost? Each is tried on that kit in a few versions of the box; two together where one is not enough.
// In another box, where that kit does not hold, a few others are tried (in this box the search has tried them all).
// Leaves out: power and wear (prices here are of things to buy besides the kit).

import type { Enclosure } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import type { KitPart } from '../kit/kit-part.ts';
import { type Change, changesFor, type HelpInput, type HelpStep, type Home, priceOf } from './help-changes.ts';
import { type JudgedHome, judgeHome } from './judge-home.ts';
import { otherKitsFor } from './other-kits.ts';

export interface HelpingChange extends JudgedHome {
  /** One or two; what they are, without words. */
  readonly steps: readonly HelpStep[];
  /** What is bought for it from the shelf; a box, foam, a cover. */
  readonly parts: readonly KitPart[];
  /** Sum of the parts in the shelf's currency; null where the shelf has no price for it, as for another room. */
  readonly cost: number | null;
  readonly enclosure: Enclosure;
}

/** Versions tried for each change; enough to tell holds from fails, not for a verdict to rely on. */
export const helpVersions = 10;
/** A change that raises the chance by this much counts as help; our choice. */
const betterByFrac = 0.05;

/** So many boxes are tried with other kits too, the cheapest first; our choice. */
const boxesForKits = 6;

interface Helping {
  readonly change: Change;
  readonly found: HelpingChange;
}

/** Changes that bring the nearest kit further: those after which it holds first, each group cheapest first. */
export function* whatHelps(input: HelpInput): Generator<HelpingChange | null, readonly HelpingChange[]> {
  const { enclosure, heart } = input.choice;
  const start: Home = { enclosure, heart, parts: [], priced: true };
  const before = judgeHome(start, input, helpVersions);
  const helping: Helping[] = [];
  const enough = new Set<string>();
  const failing: Change[] = [];
  for (const change of changesFor(input)) {
    // a milder one of the same sort is enough
    if (change.graded && enough.has(change.family)) continue;
    const found = tried([change], start, input);
    if (found) yield found;
    if (found?.verdict === 'holds') enough.add(change.family);
    else if (change.box) failing.push(change);
    if (found && isBetter(found, before)) helping.push({ change, found });
  }
  yield* withOtherKits(failing, helping, start, input);
  if (helping.some((h) => h.change.family === 'box' && h.found.verdict === 'holds')) enough.add('box');
  const useful = helping.filter((h) => isBetter(h.found, before));
  const single = useful.map((h) => h.found).filter((found) => costsNoOther(found, before));
  const pairs: HelpingChange[] = [];
  if (enough.size === 0) {
    for (const pair of pairsOf(useful)) {
      const found = tried(pair, start, input);
      if (!found) continue;
      yield found;
      const further = isBetter(found, before) && single.every((c) => found.stillOpen.length < c.stillOpen.length);
      if (found.verdict === 'holds' || (further && costsNoOther(found, before))) pairs.push(found);
    }
  }
  return [...single, ...pairs].sort(compareHelp);
}

/** Adds the best of the other kits to each box that fails with the nearest one, where it does better. Boxes that cost no less than one
 *  that holds already are left alone. */
function* withOtherKits(
  boxes: readonly Change[],
  helping: Helping[],
  start: Home,
  input: HelpInput,
): Generator<HelpingChange | null> {
  const holding = () => helping.filter((h) => h.change.family === 'box' && h.found.verdict === 'holds');
  for (const { box } of boxes.slice(0, boxesForKits)) {
    if (!box || holding().some((h) => (h.found.cost ?? 0) <= priceOf(box, input))) continue;
    const found: Helping[] = [];
    for (const change of yield* otherKitsFor(box, input)) {
      const one = tried([change], start, input);
      yield one;
      if (one) found.push({ change, found: one });
      if (one?.verdict === 'holds') break;
    }
    const best = found.sort((a, b) => compareHelp(a.found, b.found))[0];
    const nearest = helping.findIndex((h) => h.change.box === box);
    if (!best || (nearest >= 0 && compareHelp(helping[nearest]!.found, best.found) <= 0)) continue;
    helping.splice(nearest >= 0 ? nearest : helping.length, nearest >= 0 ? 1 : 0, best);
  }
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

/** Null where a change cannot be made to this home. */
function tried(changes: readonly Change[], start: Home, input: HelpInput): HelpingChange | null {
  let home: Home | null = start;
  for (const change of changes) home = home && change.apply(home);
  if (!home) return null;
  return {
    steps: changes.map((c) => c.step),
    parts: home.parts,
    cost: home.priced ? home.parts.reduce((sum, p) => sum + p.price, 0) : null,
    ...judgeHome(home, input, helpVersions),
    enclosure: home.enclosure,
  };
}
