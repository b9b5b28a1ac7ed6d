// How fast does a small body follow its surroundings, and is it small enough to be treated as one temperature?

/** Time constant of a bead. @param diameterM [m] @param volumetricJPerM3K density times specific heat [J/m³K]
 *  @param filmWPerM2K convection and radiation [W/m²K] @returns [s]. Source: INCROPERA eq. 5.7. Checks: P-157, P-185. */
export const beadTimeConstantS = (diameterM: number, volumetricJPerM3K: number, filmWPerM2K: number): number =>
  (volumetricJPerM3K * diameterM) / (6 * filmWPerM2K);

/** Bead for a wanted time constant. @returns diameter [m]. Inverse of the above. Checks: P-185. */
export const beadDiameterM = (timeConstantS: number, volumetricJPerM3K: number, filmWPerM2K: number): number =>
  (6 * filmWPerM2K * timeConstantS) / volumetricJPerM3K;

/** Time for a lumped body to go from one temperature to another. @param timeConstantS [s] @param fromC [°C] @param toC [°C]
 *  @param surroundingsC [°C] @returns [s]. Source: INCROPERA eq. 5.5. Checks: P-185. */
export const timeToReachS = (timeConstantS: number, fromC: number, toC: number, surroundingsC: number): number =>
  timeConstantS * Math.log((fromC - surroundingsC) / (toC - surroundingsC));

/** Biot number: resistance inside over resistance of the film; below 0.1 one temperature is enough.
 *  @param filmWPerM2K [W/m²K] @param lengthM volume / area [m] @param conductivityWPerMK [W/mK] @returns [-].
 *  Source: INCROPERA ch. 5.2. Checks: P-160..P-165, P-174. */
export const biotNumber = (filmWPerM2K: number, lengthM: number, conductivityWPerMK: number): number =>
  (filmWPerM2K * lengthM) / conductivityWPerMK;
