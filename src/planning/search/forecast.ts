// In which versions not yet tried may a kit still hold? Read off another kit that has been tried to the end: all kits meet
// the same versions of the box, so that a version in which one runs warm or dry is warm or dry for the others too. Each
// need's margin is drawn as a straight line over the same need's margin of the other kit; where even the upper end of its
// scatter misses, the version is lost. Leaves out: what follows for the kit (tally.ts).

/** Margins of each version tried, in their order; of each need, in the order of kitNeeds. */
export type Margins = readonly (readonly number[])[];

/** Scatters above the line that a margin may lie at most: four, and as much more as few versions call for (Student's
 *  distribution has about the same tail at five for eight versions as at four for many); our choice. */
const scatters = (n: number): number => 4 + 8 / n;
/** No scatter is taken for less than this share of the judged spread of the need; our choice. */
const leastShare = 0.1;
/** Fewer versions than this say too little about a line; our choice. */
export const forecastFrom = 8;

/** @param tried margins of the kit   @param likes kits tried to the end   @param spread judged, of each need
 *  @returns for each need whether it may hold in versions tried.length, tried.length + 1 ...; null when nothing can be said */
export function mayHold(tried: Margins, likes: readonly Margins[], spread: readonly number[]): Uint8Array[] | null {
  const n = tried.length;
  if (n < forecastFrom || likes.length === 0) return null;
  return spread.map((usual, need) => {
    const lines = likes.map((like) => lineOver(tried, like, need));
    const best = lines.reduce((a, b) => (b.scatter < a.scatter ? b : a));
    const like = likes[lines.indexOf(best)]!;
    const scatter = Math.max(best.scatter, leastShare * usual);
    return Uint8Array.from({ length: like.length - n }, (_, k) => {
      const from = like[n + k]![need]! - best.meanX;
      const error = Math.sqrt(1 + 1 / n + (best.squareX > 0 ? (from * from) / best.squareX : 0));
      return best.meanY + best.slope * from + scatters(n) * scatter * error >= 0 ? 1 : 0;
    });
  });
}

interface Line {
  readonly meanX: number;
  readonly meanY: number;
  readonly squareX: number;
  readonly slope: number;
  /** Standard deviation about the line. */
  readonly scatter: number;
}

/** Least squares of one need's margins over those of the other kit in the same versions. Source: definition. */
function lineOver(tried: Margins, like: Margins, need: number): Line {
  const n = tried.length;
  let meanX = 0;
  let meanY = 0;
  for (let m = 0; m < n; m++) {
    meanX += like[m]![need]! / n;
    meanY += tried[m]![need]! / n;
  }
  let squareX = 0;
  let squareY = 0;
  let both = 0;
  for (let m = 0; m < n; m++) {
    const x = like[m]![need]! - meanX;
    const y = tried[m]![need]! - meanY;
    squareX += x * x;
    squareY += y * y;
    both += x * y;
  }
  // a kit whose margin never moves says nothing about another's
  const slope = squareX > 1e-12 ? both / squareX : 0;
  const left = Math.max(0, squareY - slope * both);
  return { meanX, meanY, squareX: squareX > 1e-12 ? squareX : 0, slope, scatter: Math.sqrt(left / (n - 2)) };
}
