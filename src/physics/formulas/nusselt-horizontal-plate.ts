// Natural convection at a flat plate: one that drives the air (warm facing up, cool facing down) and one under a stable
// layer (warm facing down, cool facing up). Length is area over perimeter.
import type { FormulaRange } from './range.ts';

const range = (formula: string, low: number, high: number): FormulaRange => ({
  formula,
  source: 'INCROPERA',
  inputs: { rayleigh: { low, high, unit: '' } },
});
export const plateDrivenRange = range('Horizontal plate that drives the air', 1e4, 1e11);
export const plateStableRange = range('Horizontal plate under a stable layer', 1e5, 1e10);
export const plateStableFifthRange = range('Horizontal plate under a stable layer, fifth-power law', 1e4, 1e9);

/** Plate that drives the air. @param rayleigh on area / perimeter [-] @returns Nusselt; changes law at 1e7 with a step of 6 %, as published.
 *  Source: INCROPERA eq. 9.30 and 9.31 (memory). Checks: P-133. */
export const nusseltPlateDriven = (rayleigh: number): number =>
  rayleigh <= 1e7 ? 0.54 * rayleigh ** 0.25 : 0.15 * Math.cbrt(rayleigh);

/** The same without the step: the larger of both laws, which meet at 4.7e6. @param rayleigh on area / perimeter [-] @returns Nusselt.
 *  Source: INCROPERA eq. 9.30 and 9.31 (memory), joined without a step (our choice). Checks: P-133, unit. */
export const nusseltPlateDrivenSmooth = (rayleigh: number): number =>
  Math.max(0.54 * rayleigh ** 0.25, 0.15 * Math.cbrt(rayleigh));

/** Plate under a stable layer, older quarter-power law. @param rayleigh [-] @returns Nusselt. Source: INCROPERA 5th ed. eq. 9.32 (memory). Checks: unit. */
export const nusseltPlateStableQuarter = (rayleigh: number): number => 0.27 * rayleigh ** 0.25;

/** Plate under a stable layer, fifth-power law. @param rayleigh [-] @returns Nusselt. Source: INCROPERA 7th ed. eq. 9.32 (memory). Checks: P-133. */
export const nusseltPlateStableFifth = (rayleigh: number): number => 0.52 * rayleigh ** 0.2;
