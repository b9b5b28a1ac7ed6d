// Density, conductivity, viscosity and Prandtl number of dry air, for films and plumes.
import {
  airHeatCapacityJPerKgK,
  dryAirGasConstantJPerKgK,
  kelvinFromCelsius,
  standardPressurePa,
} from './constants.ts';
import type { FormulaRange } from './range.ts';

export const dryAirRange: FormulaRange = {
  formula: 'Dry air properties',
  source: 'USSA1976',
  inputs: { tempC: { low: -50, high: 400, unit: '°C' } },
};

export interface DryAir {
  readonly densityKgPerM3: number;
  readonly conductivityWPerMK: number;
  readonly kinematicViscosityM2PerS: number;
  readonly diffusivityM2PerS: number;
  readonly prandtl: number;
  /** Volume expansion of an ideal gas [1/K]. */
  readonly expansionPerK: number;
}

/** Dry air at one temperature. cp is held at 1006 J/kgK (0.5 % low at 150 °C).
 *  @param tempC film temperature [°C] @param pressurePa [Pa]
 *  Source: USSA1976 (viscosity and conductivity laws, memory). Checks: P-037. */
export function dryAir(tempC: number, pressurePa = standardPressurePa): DryAir {
  const t = kelvinFromCelsius(tempC);
  const densityKgPerM3 = pressurePa / (dryAirGasConstantJPerKgK * t);
  const threeHalves = t * Math.sqrt(t);
  const viscosityPaS = (1.458e-6 * threeHalves) / (t + 110.4);
  const conductivityWPerMK = (2.64638e-3 * threeHalves) / (t + 245.4 * Math.exp((-12 * Math.LN10) / t));
  return {
    densityKgPerM3,
    conductivityWPerMK,
    kinematicViscosityM2PerS: viscosityPaS / densityKgPerM3,
    diffusivityM2PerS: conductivityWPerMK / (densityKgPerM3 * airHeatCapacityJPerKgK),
    prandtl: (viscosityPaS * airHeatCapacityJPerKgK) / conductivityWPerMK,
    expansionPerK: 1 / t,
  };
}
