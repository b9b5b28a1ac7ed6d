// How often does a lamp or emitter have to be replaced, and when? Counted in burning hours against its usual life.
// Leaves out: early deaths by switching and knocks, and that dimmed lamps live longer (not relied on).
import type { ControlKind } from '../../physics/enclosure.ts';

/** Burning hours of a year. Switched thermostats burn the heater only while it is on; a dimming one keeps it alight.
 *  @param hoursPerDay hours of the day in which it may heat, 0..24   @param dutyFrac mean share of its power, 0..1
 *  Source: OUR-CHOICE (how hours are counted); lives: data/heaters.json. */
export function burningHoursPerYear(hoursPerDay: number, dutyFrac: number, control: ControlKind): number {
  const share = control === 'dimming' ? (dutyFrac > 0 ? 1 : 0) : dutyFrac;
  return 365 * hoursPerDay * Math.max(0, Math.min(1, share));
}

/** Replacements in a number of years after the first piece, which comes with the kit; a life that ends on the last day
 *  needs no new piece. @param lifeH usual life [h] */
export function replacements(hoursPerYear: number, lifeH: number, years: number): number {
  return Math.max(0, Math.ceil((hoursPerYear * years) / lifeH - 1e-9) - 1);
}

/** Years after the start at which each replacement falls due. */
export const replacementYears = (hoursPerYear: number, lifeH: number, years: number): number[] =>
  Array.from({ length: replacements(hoursPerYear, lifeH, years) }, (_, i) => ((i + 1) * lifeH) / hoursPerYear);
