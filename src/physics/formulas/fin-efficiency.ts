// How well does a thin metal plate or strip spread heat away from its warm edge?

/** Efficiency of a straight fin with films on both faces and an adiabatic tip. @param conductivityWPerMK [W/mK] @param thicknessM [m]
 *  @param lengthM [m] @param filmWPerM2K [W/m²K] @returns 0..1. Source: INCROPERA ch. 3.6. Checks: P-191. */
export function finEfficiency(
  conductivityWPerMK: number,
  thicknessM: number,
  lengthM: number,
  filmWPerM2K: number,
): number {
  const ml = Math.sqrt((2 * filmWPerM2K) / (conductivityWPerMK * thicknessM)) * lengthM;
  return Math.tanh(ml) / ml;
}
