// How fast does a still water surface evaporate, after the pool engineers? Handbook law (Carrier) and Shah's two laws.
// All were tested on pools of 0.07 m² and more; a bowl is 4 to 10 times smaller, see evaporation-bowl.ts.
import { standardPressurePa } from './constants.ts';
import { humidityRatio, specificVolumeM3PerKg, vapourPressurePa } from './moist-air.ts';
import type { FormulaRange } from './range.ts';
import { saturationPressurePa } from './saturation-pressure.ts';

export const shahRange: FormulaRange = {
  formula: 'Shah, undisturbed pool',
  source: 'SHAH2014',
  inputs: {
    waterC: { low: 7, high: 94, unit: '°C' },
    airC: { low: 6, high: 35, unit: '°C' },
    rhFrac: { low: 0.28, high: 0.95, unit: '' },
    areaM2: { low: 0.07, high: 425, unit: 'm²' },
  },
};

/** Heat of evaporation that the handbook's law is written with [J/kg]; the true value at 25 °C is 2.44e6. Source: ASHRAE-APP (memory). */
export const poolHeatJPerKg = 2_400_000;

/** Handbook law for an undisturbed pool without activity factor. @param waterC [°C] @param airC [°C] @param rhFrac 0..1
 *  @param speedMPerS air speed over the water [m/s] @param heatJPerKg [J/kg] @returns [kg/m²h].
 *  Source: ASHRAE-APP (Carrier 1918, memory). Checks: P-130..P-132. */
export const evaporationPoolAshraeKgPerM2H = (
  waterC: number,
  airC: number,
  rhFrac: number,
  speedMPerS: number,
  heatJPerKg = poolHeatJPerKg,
): number =>
  (3600 * (saturationPressurePa(waterC) - vapourPressurePa(airC, rhFrac)) * (0.089 + 0.0782 * speedMPerS)) / heatJPerKg;

/** Shah's law for air that rises from the water by itself; 0 when the air over the water is the heavier.
 *  Density is the author's: dry air in a cubic metre of damp air (his table follows it to the last digit; full density does not).
 *  @param waterC [°C] @param airC [°C] @param rhFrac 0..1 @param pressurePa [Pa] @returns [kg/m²h].
 *  Source: SHAH2014 eq. with C = 35. Checks: shah-table; P-130, P-131 disagree and are listed. */
export function evaporationNaturalShahKgPerM2H(
  waterC: number,
  airC: number,
  rhFrac: number,
  pressurePa = standardPressurePa,
): number {
  const waterRatio = humidityRatio(saturationPressurePa(waterC), pressurePa);
  const airRatio = humidityRatio(vapourPressurePa(airC, rhFrac), pressurePa);
  const lift = shahLiftKgPerM3(waterC, airC, rhFrac, pressurePa);
  const atWater = 1 / specificVolumeM3PerKg(waterC, waterRatio, pressurePa);
  return lift <= 0 ? 0 : 35 * atWater * Math.cbrt(lift) * (waterRatio - airRatio);
}

/** Difference of the dry-air densities of room air and of saturated air at the water. @param waterC [°C] @param airC [°C]
 *  @param rhFrac 0..1 @param pressurePa [Pa] @returns [kg/m³], positive when the air over the water rises. Source: SHAH2014. Checks: shah-table. */
export function shahLiftKgPerM3(waterC: number, airC: number, rhFrac: number, pressurePa = standardPressurePa): number {
  const waterRatio = humidityRatio(saturationPressurePa(waterC), pressurePa);
  const airRatio = humidityRatio(vapourPressurePa(airC, rhFrac), pressurePa);
  return (
    1 / specificVolumeM3PerKg(airC, airRatio, pressurePa) - 1 / specificVolumeM3PerKg(waterC, waterRatio, pressurePa)
  );
}

/** Shah's lower limit, driven by the room's own air movement. @param waterC [°C] @param airC [°C] @param rhFrac 0..1
 *  @returns [kg/m²h]. Source: SHAH2014 (memory). Checks: P-130..P-132, P-225. */
export const evaporationForcedShahKgPerM2H = (waterC: number, airC: number, rhFrac: number): number =>
  5e-5 * (saturationPressurePa(waterC) - vapourPressurePa(airC, rhFrac));
