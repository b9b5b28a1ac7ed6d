// Film coefficients of room surfaces after Alamdari and Hammond: walls, surfaces that drive the air
// (warm floor, cool ceiling), and surfaces under a stable layer (warm ceiling, cool floor).
import type { FormulaRange } from './range.ts';

export const alamdariHammondRange: FormulaRange = {
  formula: 'Alamdari and Hammond films',
  source: 'ALAMDARI1983',
  inputs: {
    deltaK: { low: 0.1, high: 100, unit: 'K' },
    heightM: { low: 0.01, high: 3, unit: 'm' },
    hydraulicDiameterM: { low: 0.01, high: 3, unit: 'm' },
  },
};

/** Sixth root of the sum of sixth powers; by roots, which are quicker than powers. */
function blend(laminar: number, turbulent: number): number {
  const a = laminar * laminar * laminar;
  const b = turbulent * turbulent * turbulent;
  return Math.cbrt(Math.sqrt(a * a + b * b));
}

/** Vertical wall. @param deltaK surface minus air, sign ignored [K] @param heightM [m] @returns [W/m²K].
 *  Source: ALAMDARI1983 (memory). Checks: P-039. */
export function filmVerticalAlamdariHammond(deltaK: number, heightM: number): number {
  const d = Math.abs(deltaK);
  return blend(1.5 * Math.sqrt(Math.sqrt(d / heightM)), 1.23 * Math.cbrt(d));
}

/** Warm surface facing up or cool surface facing down: the air is driven. @param deltaK [K]
 *  @param hydraulicDiameterM 4 area / perimeter [m] @returns [W/m²K]. Source: ALAMDARI1983 (memory). Checks: P-039. */
export function filmUnstableAlamdariHammond(deltaK: number, hydraulicDiameterM: number): number {
  const d = Math.abs(deltaK);
  return blend(1.4 * Math.sqrt(Math.sqrt(d / hydraulicDiameterM)), 1.63 * Math.cbrt(d));
}

/** Warm surface facing down or cool surface facing up: the air lies still. @param deltaK [K]
 *  @param hydraulicDiameterM 4 area / perimeter [m] @returns [W/m²K]. Source: ALAMDARI1983 (memory). Checks: P-039. */
export const filmStableAlamdariHammond = (deltaK: number, hydraulicDiameterM: number): number =>
  0.6 * (Math.abs(deltaK) / (hydraulicDiameterM * hydraulicDiameterM)) ** 0.2;
