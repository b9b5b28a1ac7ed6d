// How does a heat film become a moisture film? Chilton and Colburn's analogy.
import { airHeatCapacityJPerKgK, kelvinFromCelsius } from './constants.ts';

/** Diffusivity of water vapour in air. @param tempC [°C] @returns [m²/s].
 *  Source: INCROPERA tab. A.8, 2.6e-5 at 298 K scaled with T^1.81 (memory). Checks: P-133, P-134. */
export const vapourDiffusivityM2PerS = (tempC: number): number => 2.6e-5 * (kelvinFromCelsius(tempC) / 298) ** 1.81;

/** Mass transfer coefficient from a heat film. @param filmWPerM2K [W/m²K] @param densityKgPerM3 [kg/m³]
 *  @param lewis thermal over vapour diffusivity [-] @returns [m/s]. Source: CHILTON1934 (memory). Checks: P-134. */
export const massTransferMPerS = (filmWPerM2K: number, densityKgPerM3: number, lewis: number): number =>
  filmWPerM2K / (densityKgPerM3 * airHeatCapacityJPerKgK * Math.cbrt(lewis * lewis));
