// What would a thermometer in a wet wick show? Psychrometric wet bulb of moving air.
import { standardPressurePa } from './constants.ts';
import { humidityRatio, vapourPressurePa } from './moist-air.ts';
import { saturationPressurePa } from './saturation-pressure.ts';

/** Humidity ratio from dry and wet bulb. @param tempC dry bulb [°C] @param wetBulbC [°C] @param pressurePa [Pa]
 *  @returns [kg/kg]. Source: ASHRAE2017 ch. 1 eq. 33 (water) and 35 (ice). Checks: P-110, psychrolib grid. */
export function humidityRatioFromWetBulb(tempC: number, wetBulbC: number, pressurePa = standardPressurePa): number {
  const saturated = humidityRatio(saturationPressurePa(wetBulbC), pressurePa);
  return wetBulbC >= 0
    ? ((2501 - 2.326 * wetBulbC) * saturated - 1.006 * (tempC - wetBulbC)) / (2501 + 1.86 * tempC - 4.186 * wetBulbC)
    : ((2830 - 0.24 * wetBulbC) * saturated - 1.006 * (tempC - wetBulbC)) / (2830 + 1.86 * tempC - 2.1 * wetBulbC);
}

/** Wet bulb temperature, by halving. Just around freezing two readings are possible, of a wet and of an iced wick;
 *  the wet one is returned.
 *  @param tempC dry bulb [°C] @param rhFrac 0..1 @param pressurePa [Pa] @returns [°C]. Source: ASHRAE2017 ch. 1 eq. 33, 35. Checks: P-110, P-111. */
export function wetBulbC(tempC: number, rhFrac: number, pressurePa = standardPressurePa): number {
  const wanted = humidityRatio(vapourPressurePa(tempC, rhFrac), pressurePa);
  const isWet = tempC >= 0 && humidityRatioFromWetBulb(tempC, 0, pressurePa) <= wanted;
  let low = isWet ? 0 : -100;
  let high = isWet ? tempC : Math.min(tempC, 0);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (humidityRatioFromWetBulb(tempC, middle, pressurePa) > wanted) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
