// Nothing holds: what about the home, its room or its water would have to change so that the nearest kit does, and what
// does each change cost? Each is tried on that kit in a few versions of the box; two together where one is not enough.
// Leaves out: other kits (the search has tried them), and power and wear (prices here are of things to buy).

import type { Enclosure } from '../../physics/enclosure.ts';
import { boxGeometry, modelFrom, type SettledBox } from '../../physics/simulate.ts';
import { type Verdict, worstVerdict } from '../../shared/verdict.ts';
import { climateVerdicts } from '../climate-verdicts.ts';
import { drawMembers } from '../ensemble.ts';
import type { KitPart } from '../kit/kit-part.ts';
import { memberAnswer, momentsOf } from '../member.ts';
import { type Change, changesFor, type HelpInput, type HelpStep, type Home } from './help-changes.ts';

export interface HelpingChange {
  /** One or two; what they are, without words. */
  readonly steps: readonly HelpStep[];
  /** What is bought for it from the shelf; a box, foam, a cover. */
  readonly parts: readonly KitPart[];
  /** Sum of the parts in the shelf's currency; null where the shelf has no price for it, as for another room. */
  readonly cost: number | null;
  readonly verdict: Verdict;
  /** Share of the versions tried in which every need of climate holds. */
  readonly chanceFrac: number;
  /** Ids of needs that still do not hold. */
  readonly stillOpen: readonly string[];
  readonly enclosure: Enclosure;
}

/** Versions tried for each change; enough to tell holds from fails, not for a verdict to rely on. */
export const helpVersions = 10;
/** A change that raises the chance by this much counts as help; our choice. */
const betterByFrac = 0.05;

/** Changes that bring the nearest kit further: those after which it holds first, each group cheapest first. */
export function* whatHelps(input: HelpInput): Generator<HelpingChange, readonly HelpingChange[]> {
  const start: Home = { enclosure: input.choice.enclosure, parts: [], priced: true };
  const before = judged(start.enclosure, input);
  const helping: { readonly change: Change; readonly found: HelpingChange }[] = [];
  const enough = new Set<string>();
  for (const change of changesFor(input)) {
    // a milder one of the same sort is enough
    if (change.graded && enough.has(change.family)) continue;
    const found = tried([change], start, input);
    if (!found) continue;
    yield found;
    if (found.verdict === 'holds') enough.add(change.family);
    if (isBetter(found, before)) helping.push({ change, found });
  }
  const single = helping.map((h) => h.found).filter((found) => costsNoOther(found, before));
  const pairs: HelpingChange[] = [];
  if (enough.size === 0) {
    for (const pair of pairsOf(helping)) {
      const found = tried(pair, start, input);
      if (!found) continue;
      yield found;
      const further = isBetter(found, before) && single.every((c) => found.stillOpen.length < c.stillOpen.length);
      if (found.verdict === 'holds' || (further && costsNoOther(found, before))) pairs.push(found);
    }
  }
  return [...single, ...pairs].sort(compareHelp);
}

type Judged = Pick<HelpingChange, 'verdict' | 'chanceFrac' | 'stillOpen'>;

const isBetter = (now: Judged, before: Judged): boolean =>
  now.verdict === 'holds' ||
  now.stillOpen.length < before.stillOpen.length ||
  now.chanceFrac > before.chanceFrac + betterByFrac;

/** A change that mends one need and loses another is no help by itself; with a second change it may be. */
const costsNoOther = (now: Judged, before: Judged): boolean =>
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
function pairsOf(
  helping: readonly { readonly change: Change; readonly found: HelpingChange }[],
): (readonly Change[])[] {
  const best = new Map<string, { readonly change: Change; readonly found: HelpingChange }>();
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
    ...judged(home.enclosure, input),
    enclosure: home.enclosure,
  };
}

function judged(enclosure: Enclosure, input: HelpInput): Judged {
  const geometry = boxGeometry(enclosure, input.facts.materials);
  const moments = momentsOf(enclosure);
  let warm: SettledBox | undefined;
  const members = drawMembers(input.priors, helpVersions, input.seed).map((parameters) => {
    const answer = memberAnswer(modelFrom(geometry, parameters), moments, input.climate, warm);
    warm ??= answer.settled;
    return answer;
  });
  const needs = climateVerdicts(enclosure, input.climate, members, moments);
  return {
    verdict: worstVerdict(needs.map((n) => n.verdict)),
    chanceFrac: Math.min(...needs.map((n) => n.shareHolding ?? 0)),
    stillOpen: needs.filter((n) => n.verdict !== 'holds').map((n) => n.id),
  };
}
