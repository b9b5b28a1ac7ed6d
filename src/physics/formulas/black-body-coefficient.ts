// How strongly do two black faces of nearly the same temperature exchange heat by radiation?
import { kelvinFromCelsius, stefanBoltzmannWPerM2K4 } from './constants.ts';

/** Radiative coefficient of a black surface, 4 sigma Tm^3.
 *  @param meanC mean of both faces [°C]      @returns [W/m²K]. Source: ISO6946 annex on surface resistances. Checks: P-000..P-004. */
export const blackBodyCoefficientWPerM2K = (meanC: number): number =>
  4 * stefanBoltzmannWPerM2K4 * kelvinFromCelsius(meanC) ** 3;
