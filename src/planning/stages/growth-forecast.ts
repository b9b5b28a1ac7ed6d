// How long will this animal be in the coming years, and when does it outgrow a length? The animal room's growth band
// (slow, middle, fast), drawn from today's length on. Leaves out: mass, and animals fed far from usual.
import type { CareFacts } from '../../animal/care-facts.ts';
import { daysToReach, type GrowthBand, growthBand, lengthAfterCm } from '../../animal/growth.ts';
import type { Species } from '../../husbandry/fact.ts';
import type { PlannedAnimal } from '../../physics/enclosure.ts';
import type { Interval } from '../plan-answer.ts';

const yearDays = 365.25;
/** Stands for "never" in an interval of years, so that it stays a number. */
export const neverYears = 99;

export interface GrowthForecast {
  /** Years from now: 0, 0.25 ... */
  readonly years: readonly number[];
  /** Slow, middle and fast growth [m]. */
  readonly lengthM: readonly Interval[];
  readonly adultLengthM: Interval;
  readonly ratePerYear: number;
  readonly maturityYears: number;
  /** The age at maturity was read; otherwise it is our choice. */
  readonly maturityRead: boolean;
}

/** Null when the species record has no lengths. */
export const bandOf = (species: Species, care: CareFacts): GrowthBand | null => growthBand(species, care);

/** Length after some years [m]: slow, middle, fast. An animal longer than a curve's end stays as it is. */
export function lengthIn(band: GrowthBand, nowM: number, years: number): Interval {
  const at = (curve: GrowthBand['slow']) => lengthAfterCm(curve, nowM * 100, years * yearDays) / 100;
  return { low: at(band.slow), median: at(band.middle), high: at(band.fast) };
}

/** Years until a length is passed: soonest, likely, latest; neverYears when the curve does not get there. */
export function yearsUntil(band: GrowthBand, nowM: number, lengthM: number): Interval {
  const at = (curve: GrowthBand['slow']) => {
    if (nowM > lengthM) return 0;
    const days = daysToReach(curve, nowM * 100, lengthM * 100 + 1e-9);
    return days === null ? neverYears : Math.min(neverYears, days / yearDays);
  };
  return { low: at(band.fast), median: at(band.middle), high: at(band.slow) };
}

/** @param years how far to look, 1..30 */
export function growthForecast(band: GrowthBand, animal: PlannedAnimal, years: number): GrowthForecast {
  const at = Array.from({ length: years * 4 + 1 }, (_, i) => i / 4);
  const now = animal.totalLengthM;
  const end = (curve: GrowthBand['slow']) => Math.max(now, curve.adultCm / 100);
  return {
    years: at,
    lengthM: at.map((t) => lengthIn(band, now, t)),
    adultLengthM: { low: end(band.slow), median: end(band.middle), high: end(band.fast) },
    ratePerYear: band.middle.ratePerYear,
    maturityYears: band.maturityYears,
    maturityRead: band.maturityRead,
  };
}
