// Counts in how many versions of the box a kit holds, and says what is certain before all have been tried.
// Certain by counting; or because a need is missed by more than four times its spread; or because a share cannot grow so
// far in the versions that are left, to more than three standard errors; or because a kit tried to the end shows that the
// versions left are lost (forecast.ts). Leaves out: costs.
import { ensembleBounds, type Verdict, verdictFromShare, worstVerdict } from '../../shared/verdict.ts';
import { type Margins, mayHold } from './forecast.ts';
import { kitNeeds, midNeeds, summerNeeds, winterNeeds } from './judge-kit.ts';

/** Versions after which a hopeless miss may be called certain, and how many spreads below the limit the mean must lie at
 *  most. A need that holds in a `tenth` of the versions has its mean about 1.3 spreads below, and
 *  the spread itself is only known well enough after `spreadKnown` versions; our choice with room to spare. */
export const certainAfter = { versions: 8, spreads: 4, tenth: 1.3, spreadKnown: 16, leastSpread: 0.05 } as const;

/** Judged spread of each need before anything is measured, one standard deviation, in the order of kitNeeds: a box of one
 *  best-estimate version that misses by more than four of them is hopeless. Doubled for an open lid.
 *  Source: BOX-SPREAD (basking 3 K, air 1.2 to 1.5 K, humidity 15 points hold nine in ten). */
export const judgedSpread: readonly number[] = [1.8, 0.75, 0.9, 0.9, 0.9, 1.8, 9, 9, 2];

/** Standard errors within which a share is taken to stay while the remaining versions come in. The versions are spread
 *  evenly over every doubt (Latin hypercube), so that shares wander less than this allows; our choice. */
const shareErrors = 3.3;

export interface Tally {
  /** 1, or 2 for an open lid. */
  readonly spreadFactor: number;
  tried: number;
  /** Versions in which each need held, in the order of kitNeeds. */
  readonly held: number[];
  /** Versions in which all needs of a season held: winter, mid-season, summer. */
  readonly seasonHeld: number[];
  /** How far the best-estimate version misses its needs, in judged spreads, all together: for ordering kits that fail. */
  shortfall: number;
  readonly sum: number[];
  readonly sumOfSquares: number[];
  /** Of each version tried. */
  readonly margins: (readonly number[])[];
}

const seasons = [winterNeeds, midNeeds, summerNeeds].map((needs) => needs.map((n) => kitNeeds.indexOf(n)));

export const emptyTally = (spreadFactor = 1): Tally => ({
  spreadFactor,
  tried: 0,
  held: kitNeeds.map(() => 0),
  seasonHeld: seasons.map(() => 0),
  shortfall: 0,
  sum: kitNeeds.map(() => 0),
  sumOfSquares: kitNeeds.map(() => 0),
  margins: [],
});

/** Count one version. @param margins of kitNeeds, from needMargins */
export function count(tally: Tally, margins: readonly number[]): void {
  const holds = margins.map((m) => m >= 0);
  margins.forEach((m, i) => {
    if (holds[i]) tally.held[i] = (tally.held[i] ?? 0) + 1;
    tally.sum[i] = (tally.sum[i] ?? 0) + m;
    tally.sumOfSquares[i] = (tally.sumOfSquares[i] ?? 0) + m * m;
  });
  seasons.forEach((index, s) => {
    if (index.every((i) => holds[i])) tally.seasonHeld[s] = (tally.seasonHeld[s] ?? 0) + 1;
  });
  tally.margins.push(margins);
  tally.tried++;
  if (tally.tried > 1) return;
  tally.shortfall = margins.reduce((sum, m, i) => sum + Math.max(0, -m) / (judgedSpread[i] ?? 1), 0);
}

export interface Bounds {
  readonly verdict: Verdict;
  /** Share of versions in which everything holds in the worst season. */
  readonly chanceFrac: number;
}

/** Best and worst that can still come of it when `of` versions are tried in all.
 *  @param likes margins of kits that have been tried in all of them */
export function boundsOf(
  tally: Tally,
  of: number,
  likes: readonly Margins[] = [],
): { readonly best: Bounds; readonly worst: Bounds } {
  const open = tally.tried < of ? mayHold(tally.margins, likes, judgedSpread) : null;
  const lost = hopeless(tally, of, open);
  const verdict = (left: (need: number) => number) =>
    worstVerdict(tally.held.map((h, i) => (lost[i] ? 'fails' : verdictFromShare((h + left(i)) / of))));
  const all = Math.max(0, of - tally.tried);
  const held = Math.min(...tally.seasonHeld);
  const most = Math.min(
    reachable(held, tally.tried, of),
    ...seasons.map((needs, s) => tally.seasonHeld[s]! + (open ? openInAll(open, needs, all) : all)),
  );
  return {
    best: { verdict: verdict((i) => (open ? sumOf(open[i]!) : all)), chanceFrac: most / of },
    worst: { verdict: verdict(() => 0), chanceFrac: held / of },
  };
}

const sumOf = (marks: Uint8Array): number => marks.reduce((sum, v) => sum + v, 0);

/** Versions left in which all of these needs may hold. */
function openInAll(open: readonly Uint8Array[], needs: readonly number[], left: number): number {
  let count = 0;
  for (let k = 0; k < left; k++) if (needs.every((i) => open[i]![k] === 1)) count++;
  return count;
}

/** Most versions of all in which everything may yet hold, given how many of those tried did. */
function reachable(held: number, tried: number, of: number): number {
  if (tried >= of) return held;
  if (tried < certainAfter.versions) return of;
  const share = (held + 1) / (tried + 2);
  const error = Math.sqrt((share * (1 - share) * (1 - tried / of)) / tried);
  return Math.max(held, of * (share + shareErrors * error));
}

/** What it looks like so far: shares of the versions tried. */
export function estimateOf(tally: Tally): Bounds {
  const of = Math.max(1, tally.tried);
  return {
    verdict: worstVerdict(tally.held.map((h) => verdictFromShare(h / of))),
    chanceFrac: Math.min(...tally.seasonHeld) / of,
  };
}

/** Certain to fail whatever the remaining versions say; only counted once the first few are in. */
export const certainlyFails = (tally: Tally, of: number, likes: readonly Margins[] = []): boolean =>
  boundsOf(tally, of, likes).best.verdict === 'fails';

/** Spreads below the limit at which the mean of a need that never held must lie after n versions: those of one that
 *  holds in a tenth of them, and the standard errors of the mean and of the spread itself. */
const spreadsFor = (n: number, of: number): number =>
  n < certainAfter.spreadKnown
    ? certainAfter.spreads
    : certainAfter.tenth + shareErrors * Math.sqrt(((1 + certainAfter.tenth ** 2 / 2) / n) * (1 - n / of));

/** Needs that no longer come to more than a tenth of the versions: their mean lies far below, or their share cannot grow so far. */
function hopeless(tally: Tally, of: number, open: readonly Uint8Array[] | null): boolean[] {
  const n = tally.tried;
  if (n === 0) return tally.held.map(() => false);
  if (n < certainAfter.versions)
    return tally.sum.map(
      (sum, i) => sum / n < -certainAfter.spreads * tally.spreadFactor * (judgedSpread[i] ?? Number.POSITIVE_INFINITY),
    );
  return tally.held.map((h, i) => {
    const few = of * ensembleBounds.failsFrac;
    if (open && h + sumOf(open[i]!) <= few) return true;
    if (h > n * ensembleBounds.failsFrac) return false;
    if (reachable(h, n, of) <= few) return true;
    const mean = (tally.sum[i] ?? 0) / n;
    const variance = Math.max(0, (tally.sumOfSquares[i] ?? 0) / n - mean * mean) * (n / (n - 1));
    const spreads = h === 0 ? spreadsFor(n, of) : certainAfter.spreads;
    return mean + spreads * Math.max(certainAfter.leastSpread, Math.sqrt(variance)) < 0;
  });
}
