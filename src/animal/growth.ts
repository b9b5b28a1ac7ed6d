// How long will it be, and when does it outgrow its box? A curve with its spread, bound to the last length measured.
// Leaves out how it is fed, which decides most: hence the wide band. Total length throughout.
import type { Species } from '../husbandry/fact.ts';
import { rangeOf, rangeOfFact } from '../husbandry/species-facts.ts';
import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, eventsOf } from './event.ts';

export interface GrowthCurve {
  /** Length that the curve nears [cm]. */
  readonly adultCm: number;
  /** [1/year] */
  readonly ratePerYear: number;
}

export interface GrowthBand {
  readonly slow: GrowthCurve;
  readonly middle: GrowthCurve;
  readonly fast: GrowthCurve;
  readonly hatchlingCm: number;
  /** Age at maturity behind the rate [years], and whether the species record holds it. */
  readonly maturityYears: number;
  readonly maturityRead: boolean;
}

const yearDays = 365.25;

/** Length after a time on a curve that nears the adult length (von Bertalanffy).
 *  @param fromCm [cm]  @param days [d]  @returns [cm]; never shrinks
 *  Source: FABENS1965 (form in growth since a known length, from memory). Checks: animal/growth. */
export function lengthAfterCm(curve: GrowthCurve, fromCm: number, days: number): number {
  if (fromCm >= curve.adultCm) return fromCm;
  return curve.adultCm - (curve.adultCm - fromCm) * Math.exp((-curve.ratePerYear * days) / yearDays);
}

/** Days until a length is reached; null when the curve never gets there. */
export function daysToReach(curve: GrowthCurve, fromCm: number, toCm: number): number | null {
  if (fromCm >= toCm) return 0;
  if (toCm >= curve.adultCm) return null;
  const share = (curve.adultCm - toCm) / (curve.adultCm - fromCm);
  return (-Math.log(share) / curve.ratePerYear) * yearDays;
}

/** Rate at which the share of the adult length that matures is reached at the age of maturity.
 *  @returns [1/year] */
export function ratePerYearFrom(
  hatchlingCm: number,
  adultCm: number,
  maturityFrac: number,
  maturityYears: number,
): number {
  return Math.log((1 - hatchlingCm / adultCm) / (1 - maturityFrac)) / maturityYears;
}

/** Null when the species record has no lengths. */
export function growthBand(species: Species, facts: CareFacts): GrowthBand | null {
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  const hatchling = rangeOf(species, 'hatchling', 'totalLengthCm');
  if (!adult || !hatchling) return null;
  const hatchlingCm = (hatchling.low + hatchling.high) / 2;
  const known = rangeOfFact(species.all.femaleMaturityDays);
  const maturityYears = known ? known.low / yearDays : numberOf(facts.growth, 'rateWithoutMaturityYears');
  const share = numberOf(facts.growth, 'maturityLengthFrac');
  const spread = numberOf(facts.growth, 'rateSpreadFrac');
  const curve = (adultCm: number, factor: number): GrowthCurve => ({
    adultCm,
    ratePerYear: factor * ratePerYearFrom(hatchlingCm, adultCm, share, maturityYears),
  });
  return {
    slow: curve(adult.low, 1 - spread),
    middle: curve((adult.low + adult.high) / 2, 1),
    fast: curve(adult.high, 1 + spread),
    hatchlingCm,
    maturityYears,
    maturityRead: known !== null,
  };
}

export interface LengthPoint {
  readonly on: IsoDate;
  readonly totalLengthCm: number;
  readonly errorMm: number | null;
}

export const lengthSeries = (events: readonly AnimalEvent[]): readonly LengthPoint[] =>
  eventsOf(events, 'length').map(({ on, body }) => ({
    on,
    totalLengthCm: body.totalLengthCm,
    errorMm: body.errorMm,
  }));

/** The animal's own growth between its first and last length, when they lie far enough apart [cm/month]. */
export function ownRateCmPerMonth(series: readonly LengthPoint[], facts: CareFacts): number | null {
  const [first, last] = [series[0], series.at(-1)];
  if (!first || !last) return null;
  const days = daysBetween(first.on, last.on);
  if (days < numberOf(facts.growth, 'ownRateMinDays')) return null;
  return ((last.totalLengthCm - first.totalLengthCm) / days) * (yearDays / 12);
}

export interface MoveUp {
  /** Longest animal that the box takes under the rule [cm]. */
  readonly limitCm: number;
  readonly now: boolean;
  readonly earliest: IsoDate | null;
  readonly likely: IsoDate | null;
  readonly latest: IsoDate | null;
}

/** When a box of this length is outgrown.
 *  @param lengthShare box length asked per length of the animal, e.g. 1 or 2/3 */
export function moveUp(band: GrowthBand, last: LengthPoint, boxLengthCm: number, lengthShare: number): MoveUp {
  const limitCm = boxLengthCm / lengthShare;
  const day = (curve: GrowthCurve): IsoDate | null => {
    const days = daysToReach(curve, last.totalLengthCm, limitCm);
    return days === null || days > 100 * yearDays ? null : addDays(last.on, days);
  };
  return {
    limitCm,
    now: last.totalLengthCm > limitCm,
    earliest: day(band.fast),
    likely: day(band.middle),
    latest: day(band.slow),
  };
}
