// Natural convection at a vertical plate, a horizontal cylinder and a sphere, after Churchill and Chu.
// Leaves out forced flow, and the neighbourhood of other walls.
import type { FormulaRange } from './range.ts';

const plate = (high: number, formula: string): FormulaRange => ({
  formula,
  source: 'CHURCHILL1975',
  inputs: { rayleigh: { low: 0.1, high, unit: '' } },
});
export const verticalPlateRange = plate(1e12, 'Churchill and Chu, vertical plate');
export const verticalPlateLaminarRange = plate(1e9, 'Churchill and Chu, laminar vertical plate');
export const cylinderRange: FormulaRange = { ...plate(1e12, 'Churchill and Chu, cylinder'), source: 'CHURCHILL1975B' };
export const sphereRange: FormulaRange = { ...plate(1e11, 'Churchill, sphere'), source: 'CHURCHILL1983' };

/** Vertical plate, laminar and turbulent. @param rayleigh on the height [-] @param prandtl [-] @returns Nusselt on the height.
 *  Source: CHURCHILL1975. Checks: P-030, P-033, P-038. */
export const nusseltVerticalPlateChurchillChu = (rayleigh: number, prandtl: number): number =>
  (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;

/** Vertical plate, laminar only (Ra below 1e9). @param rayleigh [-] @param prandtl [-] @returns Nusselt on the height.
 *  Source: CHURCHILL1975. Checks: P-036, P-038. */
export const nusseltVerticalPlateLaminarChurchillChu = (rayleigh: number, prandtl: number): number =>
  0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);

/** Horizontal cylinder. @param rayleigh on the diameter [-] @param prandtl [-] @returns Nusselt on the diameter.
 *  Source: CHURCHILL1975B. Checks: P-032, P-034, P-160..P-165. */
export const nusseltCylinderChurchillChu = (rayleigh: number, prandtl: number): number =>
  (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;

/** Sphere, with the turbulent bracket, 2 + laminar (1 + turbulent)^(1/12). @param rayleigh on the diameter [-] @param prandtl [-]
 *  @returns Nusselt on the diameter. Powers are taken by roots, which are quicker. Source: CHURCHILL1983 (memory). Checks: P-100. */
export function nusseltSphereChurchill(rayleigh: number, prandtl: number): number {
  const half = Math.sqrt(0.469 / prandtl);
  // (1 + (0.469/Pr)^(9/16)), its power 4/9 and its power 16/9
  const ninth = Math.cbrt(Math.cbrt(1 + half * Math.sqrt(Math.sqrt(Math.sqrt(half)))));
  const fourNinths = ninth * ninth * (ninth * ninth);
  const laminar = (0.589 * Math.sqrt(Math.sqrt(rayleigh))) / fourNinths;
  const turbulent = (7.44e-8 * rayleigh) / (fourNinths * fourNinths * (fourNinths * fourNinths));
  return 2 + laminar * Math.sqrt(Math.sqrt(Math.cbrt(1 + turbulent)));
}
