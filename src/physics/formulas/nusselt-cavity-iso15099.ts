// Natural convection in the upright gap of a double pane. Leaves out radiation across the gap.
import type { FormulaRange } from './range.ts';

export const cavityIso15099Range: FormulaRange = {
  formula: 'ISO 15099 upright glazing cavity',
  source: 'ISO15099',
  inputs: { rayleigh: { low: 0, high: 1e6, unit: '' }, aspect: { low: 5, high: 200, unit: '' } },
};

/** Nusselt number of an upright cavity. @param rayleigh on the gap [-] @param aspect height / gap [-] @returns on the gap [-].
 *  Source: ISO15099 cl. 5.3.3 (memory). Checks: P-042. */
export function nusseltCavityIso15099(rayleigh: number, aspect: number): number {
  const byRayleigh =
    rayleigh <= 1e4
      ? 1 + 1.7596678e-10 * rayleigh ** 2.2984755
      : rayleigh <= 5e4
        ? 0.028154 * rayleigh ** 0.4134
        : 0.0673838 * Math.cbrt(rayleigh);
  return Math.max(byRayleigh, 0.242 * (rayleigh / aspect) ** 0.272);
}
