// How do resting metabolism, water lost through the skin and performance follow temperature and size?
// Leaves out digestion (many times the resting rate) and breath.

import { vapourDensityGPerM3 } from './moist-air.ts';
import type { FormulaRange } from './range.ts';
import { saturationPressurePa } from './saturation-pressure.ts';

export const boidMetabolismRange: FormulaRange = {
  formula: 'Resting metabolism of boas and pythons',
  source: 'CHAPPELL1987',
  inputs: { tempC: { low: 20, high: 34, unit: '°C' }, massG: { low: 2, high: 67_800, unit: 'g' } },
};

/** Exponents of the published series, 34 species. Source: CHAPPELL1987 abstract. */
export const boidMetabolism = { q10From20: 2.61, q10From30: 2.65, massExponent: 0.806 } as const;

/** Resting metabolism relative to that at 30 °C. @param tempC [°C] @returns ratio. Source: CHAPPELL1987. Checks: P-169. */
export const metabolismTempRatio = (tempC: number): number =>
  (tempC <= 30 ? boidMetabolism.q10From20 : boidMetabolism.q10From30) ** ((tempC - 30) / 10);

/** Resting metabolism of a heavier animal. @param massRatio [-] @returns ratio. Source: CHAPPELL1987. Checks: P-169. */
export const metabolismMassRatio = (massRatio: number): number => massRatio ** boidMetabolism.massExponent;

/** Water lost through the skin. @param tempC skin [°C] @param skinResistanceSPerCm [s/cm] @param rhFrac of the air, 0..1 @returns [mg/cm²h].
 *  Definition of the resistance, air at skin temperature. Checks: P-170, P-171, P-172. */
export const skinWaterLossMgPerCm2H = (tempC: number, skinResistanceSPerCm: number, rhFrac: number): number =>
  ((vapourDensityGPerM3(tempC, saturationPressurePa(tempC)) * 1e-3) / skinResistanceSPerCm) * 3600 * (1 - rhFrac);

/** Skin area from mass. @param massG [g] @returns [cm²]. Coefficient 10 from memory. Checks: P-171. */
export const snakeSkinAreaCm2 = (massG: number): number => 10 * massG ** (2 / 3);

/** Performance relative to the best. @param tempC [°C] @param bestC [°C] @param spreadK width below the best [K] @param limitC upper limit [°C]
 *  @returns 0..1 (0 at and above the limit). Source: DEUTSCH2008 (memory). Checks: P-173. */
export const performanceFrac = (tempC: number, bestC: number, spreadK: number, limitC: number): number =>
  tempC <= bestC
    ? Math.exp(-(((tempC - bestC) / (2 * spreadK)) ** 2))
    : Math.max(0, 1 - ((tempC - bestC) / (bestC - limitC)) ** 2);
