// How long will this animal be in the coming years, and with what doubt? A curve that slows towards the adult length.
// Its rate comes from the age at maturity where one has been read; nobody has published curves for these species that we
// have read, and feeding decides most of it, so the spread is wide. Leaves out: mass, and animals fed far from usual.
import type { Species } from '../../husbandry/fact.ts';
import { rangeOf } from '../../husbandry/species-facts.ts';
import type { PlannedAnimal } from '../../physics/enclosure.ts';
import { seededUniform } from '../../shared/seeded.ts';
import { normalQuantile } from '../ensemble.ts';
import { intervalOf } from '../interval.ts';
import type { Interval } from '../plan-answer.ts';

/** Length at maturity against adult length: royal pythons mature at 950 mm of 1162 mm. Source: AUBRET2005. */
export const maturityShare = 950 / 1162;
/** Rate where no age at maturity has been read [1/year]; middle of the others, our choice. */
export const usualRatePerYear = 0.6;
/** Nine curves in ten lie within this factor of the rate, either way; our choice. */
export const rateFactor = 1.8;
/** Rates from ages at maturity are kept within these [1/year]: a wild animal's calendar is not a fed one's. */
const rateLimits = { low: 0.25, high: 1.5 } as const;
const curves = 200;

export interface GrowthForecast {
  /** Years from now: 0, 0.25 ... */
  readonly years: readonly number[];
  readonly lengthM: readonly Interval[];
  readonly adultLengthM: Interval;
  readonly ratePerYear: number;
  /** Where the rate comes from. */
  readonly basis: 'age at maturity' | 'our choice';
  readonly source: string;
}

export interface GrowthCurve {
  readonly nowM: number;
  readonly adultM: number;
  readonly ratePerYear: number;
}

/** Length after some years [m]: adult - (adult - now) e^(-rate years). */
export const lengthAfter = (c: GrowthCurve, years: number): number =>
  c.adultM - (c.adultM - c.nowM) * Math.exp(-c.ratePerYear * years);

/** Years until a length is passed; Infinity when the curve never gets there; 0 when it is passed already. */
export function yearsUntil(c: GrowthCurve, lengthM: number): number {
  if (c.nowM > lengthM) return 0;
  if (c.adultM <= lengthM) return Number.POSITIVE_INFINITY;
  return Math.log((c.adultM - c.nowM) / (c.adultM - lengthM)) / c.ratePerYear;
}

export interface GrowthRate {
  readonly perYear: number;
  readonly basis: GrowthForecast['basis'];
  readonly source: string;
}

/** Rate from the age at maturity: the curve from hatching passes the mature share of the adult length at that age. */
export function growthRate(species: Species): GrowthRate {
  const maturity = species.all.femaleMaturityDays;
  const hatchling = rangeOf(species, 'hatchling', 'totalLengthCm');
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  const days = typeof maturity?.value === 'number' ? maturity.value : null;
  if (!days || !hatchling || !adult || !maturity)
    return { perYear: usualRatePerYear, basis: 'our choice', source: 'OUR-CHOICE' };
  const start = (hatchling.low + hatchling.high) / (adult.low + adult.high);
  const rate = Math.log((1 - start) / (1 - maturityShare)) / (days / 365);
  return {
    perYear: Math.max(rateLimits.low, Math.min(rateLimits.high, rate)),
    basis: 'age at maturity',
    source: maturity.source,
  };
}

/** Curves that this animal may follow; the same for the same seed. */
export function growthCurves(species: Species, animal: PlannedAnimal, seed: number): GrowthCurve[] {
  const uniform = seededUniform(seed);
  const rate = growthRate(species).perYear;
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  return Array.from({ length: curves }, () => {
    const drawnM = adult ? (adult.low + (adult.high - adult.low) * uniform()) / 100 : animal.totalLengthM;
    const ratePerYear = rate * rateFactor ** (normalQuantile(uniform()) / 1.645);
    return { nowM: animal.totalLengthM, adultM: Math.max(drawnM, animal.totalLengthM), ratePerYear };
  });
}

/** @param years how far to look, 1..30 */
export function growthForecast(species: Species, animal: PlannedAnimal, years: number, seed: number): GrowthForecast {
  const all = growthCurves(species, animal, seed);
  const rate = growthRate(species);
  const at = Array.from({ length: years * 4 + 1 }, (_, i) => i / 4);
  return {
    years: at,
    lengthM: at.map((t) => intervalOf(all.map((c) => lengthAfter(c, t)))),
    adultLengthM: intervalOf(all.map((c) => c.adultM)),
    ratePerYear: rate.perYear,
    basis: rate.basis,
    source: rate.source,
  };
}
