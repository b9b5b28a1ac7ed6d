// How moist is the air right at a damp substrate, and how hard is it for water to get out of it?
import { kelvinFromCelsius, vapourGasConstantJPerKgK } from './constants.ts';
import type { FormulaRange } from './range.ts';

export const soilResistanceRange: FormulaRange = {
  formula: 'van de Griend and Owe, bare soil',
  source: 'GRIEND1994',
  inputs: { waterVolumeFrac: { low: 0.02, high: 0.5, unit: '' } },
};

/** Resistance of a drying soil surface to vapour. @param waterVolumeFrac water per volume in the top centimetre, 0..1 @returns [s/m].
 *  Source: GRIEND1994 (memory); sandy loam, for bark or coir only an order of size. Checks: P-138. */
export const soilSurfaceResistanceSPerM = (waterVolumeFrac: number): number =>
  waterVolumeFrac >= 0.15 ? 10 : 10 * Math.exp(35.63 * (0.15 - waterVolumeFrac));

/** Relative humidity right over water held at a suction. @param potentialMPa water potential, negative [MPa] @param tempC [°C]
 *  @returns 0..1. Kelvin's equation, liquid 1 kg/l. Checks: P-139. */
export const kelvinHumidityFrac = (potentialMPa: number, tempC: number): number =>
  Math.exp((potentialMPa * 1e6) / (998 * vapourGasConstantJPerKgK * kelvinFromCelsius(tempC)));
