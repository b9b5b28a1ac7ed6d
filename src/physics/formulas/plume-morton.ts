// How much air does a warm source carry upwards, and how warm is that air? Morton, Taylor and Turner's point plume,
// closed form and integrated. A real heater is no point, and small plumes are transitional: take +-30 %.
import { airHeatCapacityJPerKgK, gravityMPerS2 } from './constants.ts';
import type { FormulaRange } from './range.ts';

export const plumeMortonRange: FormulaRange = {
  formula: 'Morton, Taylor and Turner point plume',
  source: 'MTT1956',
  inputs: { heightM: { low: 0.1, high: 20, unit: 'm' }, convectedW: { low: 1, high: 1e6, unit: 'W' } },
};

/** Top-hat entrainment coefficient [-], published values 0.10 to 0.13. Source: MTT1956 (memory). */
export const entrainmentTopHat = 0.1;

export interface Plume {
  /** Buoyancy flux [m⁴/s³]. */
  readonly buoyancyM4PerS3: number;
  readonly flowM3PerS: number;
  readonly meanSpeedMPerS: number;
  /** Mean rise above the surrounding air [K]. */
  readonly meanRiseK: number;
}

/** Buoyancy flux of a source. @param convectedW [W] @param densityKgPerM3 [kg/m³] @param airK [K] @returns [m⁴/s³]. Checks: P-060. */
export const buoyancyFlux = (convectedW: number, densityKgPerM3: number, airK: number): number =>
  (gravityMPerS2 * convectedW) / (densityKgPerM3 * airHeatCapacityJPerKgK * airK);

/** Plume of a point source, similarity solution.
 *  @param convectedW      heat given to the air, without the radiated part [W]
 *  @param heightM         above the source [m]      @param airK surrounding air [K]      @param densityKgPerM3 [kg/m³]
 *  @param entrainment     top-hat coefficient [-]
 *  Source: MTT1956. Checks: P-060, P-061. */
export function plumeMorton(
  convectedW: number,
  heightM: number,
  airK: number,
  densityKgPerM3: number,
  entrainment = entrainmentTopHat,
): Plume {
  const b = buoyancyFlux(convectedW, densityKgPerM3, airK);
  const flowM3PerS =
    ((6 * entrainment) / 5) *
    Math.cbrt((9 * entrainment) / 10) *
    Math.PI ** (2 / 3) *
    Math.cbrt(b) *
    heightM ** (5 / 3);
  const radiusM = (6 * entrainment * heightM) / 5;
  return {
    buoyancyM4PerS3: b,
    flowM3PerS,
    meanSpeedMPerS: flowM3PerS / (Math.PI * radiusM ** 2),
    meanRiseK: convectedW / (densityKgPerM3 * airHeatCapacityJPerKgK * flowM3PerS),
  };
}

/** The same flow by stepping the two conservation equations up from near the source: dq/dz = 2 a sqrt(m), dm/dz = F q / m
 *  (q, m per pi; fourth-order Runge-Kutta). @returns flow [m³/s]. Source: MTT1956. Checks: P-061. */
export function plumeFlowIntegratedM3PerS(
  buoyancyM4PerS3: number,
  heightM: number,
  entrainment = entrainmentTopHat,
  startM = 0.01,
  steps = 4000,
): number {
  const f = buoyancyM4PerS3 / Math.PI;
  const radius = (6 * entrainment * startM) / 5;
  const speed = ((5 / (6 * entrainment)) * Math.cbrt((9 * entrainment * f) / 10)) / Math.cbrt(startM);
  let q = radius ** 2 * speed;
  let m = (radius * speed) ** 2;
  const h = (heightM - startM) / steps;
  const dq = (_q: number, mm: number) => 2 * entrainment * Math.sqrt(mm);
  const dm = (qq: number, mm: number) => (f * qq) / mm;
  for (let i = 0; i < steps; i++) {
    const q1 = dq(q, m);
    const m1 = dm(q, m);
    const q2 = dq(q + (h * q1) / 2, m + (h * m1) / 2);
    const m2 = dm(q + (h * q1) / 2, m + (h * m1) / 2);
    const q3 = dq(q + (h * q2) / 2, m + (h * m2) / 2);
    const m3 = dm(q + (h * q2) / 2, m + (h * m2) / 2);
    const q4 = dq(q + h * q3, m + h * m3);
    const m4 = dm(q + h * q3, m + h * m3);
    q += (h * (q1 + 2 * q2 + 2 * q3 + q4)) / 6;
    m += (h * (m1 + 2 * m2 + 2 * m3 + m4)) / 6;
  }
  return Math.PI * q;
}
