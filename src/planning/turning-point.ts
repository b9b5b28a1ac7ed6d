// A heater that is flat out on the coldest day comes off its stop as the room grows warmer. Up to there every surface grows
// warmer with the room, from there on the heater works less: so a surface in reach is hottest on that very day
// (docs/decisions/0076). Finds it between the days that are judged. Leaves out: what the day is judged by.
import type { SteadyConditions } from '../physics/simulate.ts';

/** A day or night so far from the coldest (0) to the hottest (1), and the share of its power the heater runs at. */
export interface SeasonPoint {
  readonly seasonFrac: number;
  readonly dutyFrac: number;
}

/** Within a thousandth of its power a heater is flat out. */
export const flatOutFrac = 0.999;
/** Near enough to the stop, and most steps towards it; our choice: a step more moved no surface by a tenth of a kelvin. */
const nearFrac = 0.985;
const mostSteps = 4;
/** No step lands closer to a known end than this share of the span. */
const edgeFrac = 0.06;

/** Points tried towards the day on which the heater comes off its stop, the last one nearest; none where it never is on its
 *  stop or never leaves it. @param solve settles the box so far between the coldest and the hottest */
export function turningPoints<P extends SeasonPoint>(
  [cold, mid, hot]: readonly [P, P, P],
  solve: (seasonFrac: number) => P,
): readonly P[] {
  const flat = (p: P): boolean => p.dutyFrac >= flatOutFrac;
  if (!flat(cold) || flat(hot)) return [];
  let [below, above, beyond] = flat(mid) ? [mid, hot, null] : [cold, mid, hot];
  const tried: P[] = [];
  while (tried.length < mostSteps && above.dutyFrac < nearFrac) {
    const now = solve(guess(below, above, beyond));
    tried.push(now);
    // the line came out short, so it is not to be trusted further
    if (flat(now)) [below, beyond] = [now, null];
    else [above, beyond] = [now, above];
  }
  return tried;
}

/** Where the line through two days of part duty comes to full power; the middle where there is no such line. */
function guess(below: SeasonPoint, above: SeasonPoint, beyond: SeasonPoint | null): number {
  const span = above.seasonFrac - below.seasonFrac;
  const middle = below.seasonFrac + span / 2;
  if (!beyond || beyond.dutyFrac < 0.02 || beyond.dutyFrac >= above.dutyFrac) return middle;
  const perDuty = (beyond.seasonFrac - above.seasonFrac) / (above.dutyFrac - beyond.dutyFrac);
  const at = above.seasonFrac - (1 - above.dutyFrac) * perDuty;
  return Math.max(below.seasonFrac + edgeFrac * span, Math.min(above.seasonFrac - edgeFrac * span, at));
}

/** Room, its humidity and the sun so far from one moment to another. */
export const between = (a: SteadyConditions, b: SteadyConditions, frac: number): SteadyConditions => ({
  roomC: a.roomC + (b.roomC - a.roomC) * frac,
  roomRhPct: a.roomRhPct + (b.roomRhPct - a.roomRhPct) * frac,
  sunWPerM2: a.sunWPerM2 + (b.sunWPerM2 - a.sunWPerM2) * frac,
  isDay: a.isDay,
});
