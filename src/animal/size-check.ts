// Can this mass belong to this length at all? A check of the typing hand against many species, never a verdict on an
// animal: the scatter between species is a factor of 1.4 to 1.9 either way (one standard deviation).
import type { Sourced } from '../husbandry/need.ts';

/** One row of data/length-mass.json: log10 mass[g] = intercept + slope log10 length[mm]. */
export interface LengthMassFit extends Sourced {
  readonly measure: 'svl' | 'total';
  /** A family, two families joined by "+", or "all". */
  readonly group: string;
  readonly animals: number;
  readonly slope: number;
  readonly intercept: number;
  readonly residualSdLog10: number;
  readonly lowMm: number;
  readonly highMm: number;
}

export interface SizeCheck {
  readonly expectedG: number;
  /** Nine in ten species means lie between these. */
  readonly lowG: number;
  readonly highG: number;
  readonly plausible: boolean;
  /** The length lies outside the animals that the fit was made from. */
  readonly outside: boolean;
  readonly fit: LengthMassFit;
}

/** The fit of the family with at least 12 animals (our choice), else of its joined group, else of all. */
export function fitFor(fits: readonly LengthMassFit[], measure: 'svl' | 'total', family: string): LengthMassFit | null {
  const same = fits.filter((fit) => fit.measure === measure);
  const own = same.find((fit) => fit.group === family && fit.animals >= 12);
  const joined = same.find((fit) => fit.group.includes('+') && fit.group.split('+').includes(family));
  return own ?? joined ?? same.find((fit) => fit.group === 'all') ?? null;
}

/** Standard normal quantile of 0.95: the middle nine tenths. */
const q95 = 1.645;

/** @param lengthMm snout to vent or total, as the fit says [mm]  @param massG [g]
 *  @returns expected mass and the range of nine species in ten [g]
 *  Source: FM2013-FIT. Checks: animal/length-mass. */
export function sizeCheck(fit: LengthMassFit, lengthMm: number, massG: number): SizeCheck {
  const log = fit.intercept + fit.slope * Math.log10(lengthMm);
  const reach = q95 * fit.residualSdLog10;
  const [expectedG, lowG, highG] = [10 ** log, 10 ** (log - reach), 10 ** (log + reach)];
  return {
    expectedG,
    lowG,
    highG,
    plausible: massG >= lowG && massG <= highG,
    outside: lengthMm < fit.lowMm || lengthMm > fit.highMm,
    fit,
  };
}
