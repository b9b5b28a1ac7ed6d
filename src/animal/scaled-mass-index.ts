// How heavy would this animal be at a common length? The scaled mass index takes out what is only length.
// Leaves out what is too thin or too fat: the index compares animals of one kind, the outline decides.
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';

export interface SizedAnimal {
  readonly lengthMm: number;
  readonly massG: number;
}

export interface MajorAxis {
  /** Slope of ln mass on ln length by the standardised major axis: ordinary slope over r, which is sd over sd. */
  readonly exponent: number;
  readonly correlation: number;
  /** Arithmetic mean length, the usual common length. */
  readonly meanLengthMm: number;
  readonly animals: number;
}

const mean = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0) / xs.length;

/** Standardised major axis of ln(mass) on ln(length).
 *  @param animals length [mm] > 0, mass [g] > 0; at least 3 of differing length
 *  @returns exponent [-], correlation [-], mean length [mm]
 *  Faults: "ANIMAL_SCALING" when there are too few, or no length differs, or mass and length are unrelated.
 *  Source: PEIG2009 (equations 1 and 2; formula from memory, abstract read). Checks: animal/scaled-mass-index. */
export function majorAxis(animals: readonly SizedAnimal[]): Result<MajorAxis> {
  const usable = animals.filter(({ lengthMm, massG }) => lengthMm > 0 && massG > 0);
  if (usable.length < 3) return bad([scalingFault(`${usable.length} animals`, 'at least 3 with length and mass')]);
  const x = usable.map(({ lengthMm }) => Math.log(lengthMm));
  const y = usable.map(({ massG }) => Math.log(massG));
  const [mx, my] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, xi) => sum + (xi - mx) ** 2, 0);
  const syy = y.reduce((sum, yi) => sum + (yi - my) ** 2, 0);
  const sxy = x.reduce((sum, xi, i) => sum + (xi - mx) * ((y[i] ?? 0) - my), 0);
  if (sxx <= 1e-12 || syy <= 1e-12 || Math.abs(sxy) <= 1e-12)
    return bad([scalingFault('animals of one size', 'lengths and masses that differ')]);
  const correlation = sxy / Math.sqrt(sxx * syy);
  const exponent = sxy / sxx / correlation;
  const meanLengthMm = mean(usable.map(({ lengthMm }) => lengthMm));
  return good({ exponent, correlation, meanLengthMm, animals: usable.length });
}

/** Mass at the common length.
 *  @param massG [g]  @param lengthMm own length [mm]  @param commonMm common length [mm]  @param exponent [-]
 *  @returns scaled mass [g]
 *  Source: PEIG2009 (equation 2). Checks: animal/scaled-mass-index. */
export const scaledMassG = (massG: number, lengthMm: number, commonMm: number, exponent: number): number =>
  massG * (commonMm / lengthMm) ** exponent;

function scalingFault(got: string, allowed: string): Fault {
  return {
    code: 'ANIMAL_SCALING',
    field: 'animals',
    got,
    allowed,
    say: 'These animals give no scaling of mass with length.',
    fix: 'Measure more animals of this species, small and large ones.',
    source: 'PEIG2009',
  };
}
