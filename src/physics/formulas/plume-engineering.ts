// Plume laws in daily use: displacement ventilation (Popiolek) and fire protection (Zukoski's flow, Heskestad's
// centreline). The three textbook laws differ by a factor of 1.7 at 40 W and 0.4 m.
import type { FormulaRange } from './range.ts';

export const popiolekRange: FormulaRange = {
  formula: 'Displacement-ventilation plume',
  source: 'REHVA1',
  inputs: { convectedW: { low: 20, high: 500, unit: 'W' }, heightM: { low: 0.5, high: 4, unit: 'm' } },
};
export const heskestadRange: FormulaRange = {
  formula: 'Fire plume',
  source: 'NFPA92',
  inputs: { convectedW: { low: 1e3, high: 5e7, unit: 'W' }, heightM: { low: 0.5, high: 50, unit: 'm' } },
};

/** Plume flow for people and small appliances. @param convectedW [W] @param heightM above the virtual source [m] @returns [m³/s].
 *  Source: REHVA1 (memory). Checks: P-062. */
export const plumeFlowPopiolekM3PerS = (convectedW: number, heightM: number): number =>
  0.005 * Math.cbrt(convectedW) * heightM ** (5 / 3);

/** Plume mass flow of the fire laws. @param convectedW [W] @param heightM [m] @returns [kg/s]. Source: NFPA92 (memory). Checks: P-063. */
export const plumeMassFlowZukoskiKgPerS = (convectedW: number, heightM: number): number =>
  0.071 * Math.cbrt(convectedW / 1000) * heightM ** (5 / 3);

/** Rise on the plume's centreline. @param convectedW [W] @param heightM [m] @returns [K]. Source: NFPA92 (memory). Checks: P-063. */
export const plumeCentreRiseHeskestadK = (convectedW: number, heightM: number): number =>
  25 * (convectedW / 1000) ** (2 / 3) * heightM ** (-5 / 3);
