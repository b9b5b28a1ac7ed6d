// How do relative humidity, vapour pressure, humidity ratio, enthalpy, volume and density of moist air hang
// together? Ideal gas, as in the handbook's equations; real air holds 0.4 % more (see check P-128).
import { dryAirGasConstantJPerKgK, kelvinFromCelsius, standardPressurePa, waterToAirMassRatio } from './constants.ts';
import { dewPointC } from './dew-point.ts';
import { saturationPressurePa } from './saturation-pressure.ts';

/** Vapour pressure from relative humidity. @param tempC [°C] @param rhFrac 0..1 @returns [Pa]. Source: ASHRAE2017 ch. 1 eq. 22. Checks: P-110. */
export const vapourPressurePa = (tempC: number, rhFrac: number): number => rhFrac * saturationPressurePa(tempC);

/** Relative humidity from vapour pressure. @param tempC [°C] @param vapourPa [Pa] @returns fraction, above 1 when oversaturated.
 *  Source: ASHRAE2017 ch. 1 eq. 22. Checks: P-136. */
export const relativeHumidityFrac = (tempC: number, vapourPa: number): number => vapourPa / saturationPressurePa(tempC);

/** Humidity ratio from vapour pressure. @param vapourPa [Pa] @param pressurePa air pressure [Pa]
 *  @returns [kg water / kg dry air]. Source: ASHRAE2017 ch. 1 eq. 20. Checks: P-110, P-128. */
export const humidityRatio = (vapourPa: number, pressurePa = standardPressurePa): number =>
  (waterToAirMassRatio * vapourPa) / (pressurePa - vapourPa);

/** Vapour pressure from humidity ratio. @param ratio [kg/kg] @param pressurePa [Pa] @returns [Pa]. Source: ASHRAE2017 ch. 1 eq. 20. Checks: P-136. */
export const vapourPressurePaFromRatio = (ratio: number, pressurePa = standardPressurePa): number =>
  (pressurePa * ratio) / (waterToAirMassRatio + ratio);

/** Relative humidity of the same air brought to another temperature without gain or loss of water.
 *  @param fromC [°C] @param rhFrac 0..1 @param toC [°C] @returns fraction, above 1 means that it would wet. Checks: P-136. */
export const relativeHumidityFracAt = (fromC: number, rhFrac: number, toC: number): number =>
  relativeHumidityFrac(toC, vapourPressurePa(fromC, rhFrac));

/** Dew point from temperature and relative humidity. @param tempC [°C] @param rhFrac 0..1 @returns [°C]. Checks: P-110, P-111. */
export const dewPointCFromRh = (tempC: number, rhFrac: number): number => dewPointC(vapourPressurePa(tempC, rhFrac));

/** Absolute humidity: water in a cubic metre of air. @param tempC [°C] @param vapourPa [Pa] @returns [g/m³]. Ideal gas. Checks: P-170. */
export const vapourDensityGPerM3 = (tempC: number, vapourPa: number): number =>
  (1000 * vapourPa * waterToAirMassRatio) / (dryAirGasConstantJPerKgK * kelvinFromCelsius(tempC));

/** Specific enthalpy of moist air above dry air and liquid water at 0 °C. @param tempC [°C] @param ratio [kg/kg]
 *  @returns [J/kg dry air]. Source: ASHRAE2017 ch. 1 eq. 30. Checks: P-110, P-111. */
export const enthalpyJPerKg = (tempC: number, ratio: number): number =>
  1006 * tempC + ratio * (2_501_000 + 1860 * tempC);

/** Volume of moist air per kilogram of dry air. @param tempC [°C] @param ratio [kg/kg] @param pressurePa [Pa]
 *  @returns [m³/kg]. Source: ASHRAE2017 ch. 1 eq. 26. Checks: P-110, P-111. */
export const specificVolumeM3PerKg = (tempC: number, ratio: number, pressurePa = standardPressurePa): number =>
  (dryAirGasConstantJPerKgK * kelvinFromCelsius(tempC) * (1 + ratio / waterToAirMassRatio)) / pressurePa;

/** Density of moist air. @param tempC [°C] @param ratio [kg/kg] @param pressurePa [Pa] @returns [kg moist air / m³].
 *  Source: ASHRAE2017 ch. 1 eq. 27. Checks: P-110, P-111. */
export const moistAirDensityKgPerM3 = (tempC: number, ratio: number, pressurePa = standardPressurePa): number =>
  (1 + ratio) / specificVolumeM3PerKg(tempC, ratio, pressurePa);

/** Virtual temperature: dry air of this temperature would have the same density; buoyancy of damp air goes by it.
 *  @param tempC [°C] @param ratio [kg/kg] @returns [K]. Derived from the ideal gas law. Checks: P-133. */
export const virtualTempK = (tempC: number, ratio: number): number =>
  (kelvinFromCelsius(tempC) * (1 + ratio / waterToAirMassRatio)) / (1 + ratio);

/** Heat of evaporation of liquid water. @param tempC [°C], 0..60 @returns [J/kg]. Source: ASHRAE2017 ch. 1 (memory, linear fit). Checks: P-133. */
export const evaporationHeatJPerKg = (tempC: number): number => 2_501_000 - 2361 * tempC;
