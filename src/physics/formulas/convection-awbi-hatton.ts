// Film coefficients measured in a heated test room, after Awbi and Hatton; and Khalifa and Marshall's wall law.
// Both come from rooms about 2.8 m high: in a 0.6 m box take them as a band of +-40 %.
import type { FormulaRange } from './range.ts';

export const awbiHattonRange: FormulaRange = {
  formula: 'Awbi and Hatton films',
  source: 'AWBI1999',
  inputs: { deltaK: { low: 1, high: 60, unit: 'K' }, hydraulicDiameterM: { low: 0.5, high: 3, unit: 'm' } },
};
export const khalifaMarshallRange: FormulaRange = {
  formula: 'Khalifa and Marshall wall film',
  source: 'KHALIFA1990',
  inputs: { deltaK: { low: 1, high: 40, unit: 'K' } },
};

/** Heated wall. @param deltaK [K] @param hydraulicDiameterM 4 area / perimeter [m] @returns [W/m²K]. Source: AWBI1999 (memory). Checks: P-041. */
export const filmWallAwbiHatton = (deltaK: number, hydraulicDiameterM: number): number =>
  (1.823 * deltaK ** 0.293) / hydraulicDiameterM ** 0.121;

/** Heated floor. @param deltaK [K] @param hydraulicDiameterM [m] @returns [W/m²K]. Source: AWBI1999 (memory). Checks: P-041. */
export const filmFloorAwbiHatton = (deltaK: number, hydraulicDiameterM: number): number =>
  (2.175 * deltaK ** 0.308) / hydraulicDiameterM ** 0.076;

/** Heated ceiling. @param deltaK [K] @param hydraulicDiameterM [m] @returns [W/m²K]. Source: AWBI1999 (memory). Checks: P-041. */
export const filmCeilingAwbiHatton = (deltaK: number, hydraulicDiameterM: number): number =>
  (0.704 * deltaK ** 0.133) / hydraulicDiameterM ** 0.601;

/** Wall beside or opposite a heater. @param deltaK [K] @returns [W/m²K]. Source: KHALIFA1990 (memory). Checks: P-041. */
export const filmWallKhalifaMarshall = (deltaK: number): number => 1.98 * deltaK ** 0.32;

/** Horizontal surface that drives the air, as used by building programs. @param deltaK [K] @returns [W/m²K].
 *  Source: WALTON1983 (memory). Checks: P-217. */
export const filmDrivenWalton = (deltaK: number): number => 1.52 * Math.cbrt(Math.abs(deltaK));
