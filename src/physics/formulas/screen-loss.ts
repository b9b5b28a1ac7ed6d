// How much does a mesh slow the air? Loss coefficient of a woven screen at low speed (Bailey) and at high speed
// (Idelchik), and what is left of a vent behind it. Leaves out dirt, and the mixing layer below a mesh lid.
import type { FormulaRange } from './range.ts';

export const screenBaileyRange: FormulaRange = {
  formula: 'Bailey, woven screen',
  source: 'BAILEY2003',
  inputs: { openFrac: { low: 0.3, high: 0.9, unit: '' }, reynolds: { low: 0.5, high: 1000, unit: '' } },
};

/** Loss coefficient on face velocity. @param openFrac open share 0..1 @param wireM wire diameter [m] @param speedMPerS face velocity [m/s]
 *  @param viscosityM2PerS kinematic [m²/s] @returns [-]. Source: BAILEY2003 (terms read, coefficients from memory). Checks: P-072. */
export function screenLossBailey(openFrac: number, wireM: number, speedMPerS: number, viscosityM2PerS: number): number {
  const re = (speedMPerS * wireM) / viscosityM2PerS;
  return ((1 - openFrac ** 2) / openFrac ** 2) * (18 / re + 0.75 / Math.log10(re + 1.25) + 0.055 * Math.log10(re));
}

/** Loss coefficient of a wire gauze at high Reynolds number. @param openFrac 0..1 @returns [-].
 *  Source: IDELCHIK diagram 8-6 (memory). Checks: P-073. */
export const screenLossIdelchik = (openFrac: number): number => 1.3 * (1 - openFrac) + (1 / openFrac - 1) ** 2;

/** Discharge coefficient of an opening with a screen in series. @param discharge of the open hole [-] @param loss screen coefficient [-]
 *  @returns [-]. Derived: losses in series. Checks: P-074. */
export const dischargeWithScreen = (discharge: number, loss: number): number =>
  1 / Math.sqrt(1 / discharge ** 2 + loss);
