// How much air does warmth drive through vents, gaps, doors and lids? Low and high vent (stack), one upright opening
// with flow both ways (Brown and Solvason), one flat opening with cold above (Epstein). Leaves out wind and fans.
import { airHeatCapacityJPerKgK, gravityMPerS2 } from './constants.ts';
import type { FormulaRange } from './range.ts';

/** Discharge coefficient of a sharp-edged opening with flow one way [-]. Source: CIBSEAM10 (memory); 0.6 to 0.65 in use. */
export const dischargeSharpEdged = 0.6;

export const epsteinRange: FormulaRange = {
  formula: 'Epstein, flat opening in a thin lid',
  source: 'EPSTEIN1988',
  inputs: { lengthToDiameter: { low: 0, high: 0.15, unit: '' } },
};

/** Discharge coefficient for flow both ways in one opening. @param deltaK [K] @returns [-].
 *  Source: ASHRAE-INF (memory). Checks: P-071. */
export const dischargeTwoWayAshrae = (deltaK: number): number => 0.4 + 0.0045 * Math.abs(deltaK);

/** Effective area of two openings in series, low and high. @param areaLowM2 [m²] @param areaHighM2 [m²] @returns [m²]. Checks: P-068. */
export const seriesAreaM2 = (areaLowM2: number, areaHighM2: number): number =>
  areaLowM2 <= 0 || areaHighM2 <= 0 ? 0 : (areaLowM2 * areaHighM2) / Math.hypot(areaLowM2, areaHighM2);

/** Air driven in at a low and out at a high vent. @param areaM2 seriesAreaM2 of both [m²] @param heightM between their middles [m]
 *  @param deltaK inside minus outside [K] @param airK mean [K] @param discharge [-] @returns [m³/s], 0 when nothing drives it.
 *  Source: CIBSEAM10, ASHRAE-INF (memory). Checks: P-068, P-069. */
export const stackFlowM3PerS = (
  areaM2: number,
  heightM: number,
  deltaK: number,
  airK: number,
  discharge = dischargeSharpEdged,
): number => discharge * areaM2 * Math.sqrt((2 * gravityMPerS2 * Math.abs(heightM * deltaK)) / airK);

/** Exchange each way through one upright opening. @param widthM [m] @param heightM [m] @param deltaK [K] @param airK [K]
 *  @param discharge [-] @returns [m³/s] each way. Source: BROWN1962 (memory). Checks: P-065, P-066. */
export const uprightExchangeM3PerS = (
  widthM: number,
  heightM: number,
  deltaK: number,
  airK: number,
  discharge = dischargeSharpEdged,
): number => (discharge / 3) * widthM * heightM * Math.sqrt((gravityMPerS2 * heightM * Math.abs(deltaK)) / airK);

/** Exchange each way through a flat opening with the colder air above. For other shapes use the round opening of equal area.
 *  A whole mesh lid is so large that the plume below limits it; cap with the plume flow.
 *  @param diameterM [m] @param deltaK inside minus above [K]; 0 or less: stable, no exchange @param airK [K]
 *  @returns [m³/s] each way. Source: EPSTEIN1988 (0.055 from memory). Checks: P-067. */
export const flatExchangeEpsteinM3PerS = (diameterM: number, deltaK: number, airK: number): number =>
  deltaK <= 0 ? 0 : 0.055 * Math.sqrt((gravityMPerS2 * deltaK) / airK) * diameterM ** 2.5;

/** Rise of a box that loses heat only through two vents. @param powerW [W] @param densityKgPerM3 [kg/m³] @param areaM2 seriesAreaM2 [m²]
 *  @param heightM [m] @param airK [K] @param discharge [-] @returns [K]. Derived from the stack flow. Checks: P-069. */
export const adiabaticBoxRiseK = (
  powerW: number,
  densityKgPerM3: number,
  areaM2: number,
  heightM: number,
  airK: number,
  discharge = dischargeSharpEdged,
): number =>
  (powerW / (densityKgPerM3 * airHeatCapacityJPerKgK * discharge * areaM2)) ** (2 / 3) *
  Math.cbrt(airK / (2 * gravityMPerS2 * heightM));
