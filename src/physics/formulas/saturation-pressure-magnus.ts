// A short form of the saturation pressure over water, for hand calculation and as a cross-check.
import type { FormulaRange } from './range.ts';

export const magnusRange: FormulaRange = {
  formula: 'Magnus saturation pressure',
  source: 'WMO2008',
  inputs: { tempC: { low: -45, high: 60, unit: '°C' } },
};

/** Saturation pressure over water by the Magnus form; within 0.3 % of Hyland and Wexler from 0 to 45 °C.
 *  @param tempC  temperature [°C]      @returns pressure [Pa]
 *  Source: WMO2008 annex 4.B (memory). Checks: P-127. */
export function saturationPressurePaMagnus(tempC: number): number {
  return 611.2 * Math.exp((17.62 * tempC) / (243.12 + tempC));
}
