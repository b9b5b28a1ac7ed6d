// How strongly does warm air want to rise past a surface? The Rayleigh number that the film laws start from.
import { gravityMPerS2 } from './constants.ts';
import type { DryAir } from './dry-air.ts';

/** Rayleigh number. @param air properties at film temperature @param deltaK surface minus air, sign ignored [K]
 *  @param lengthM the law's own length [m] @returns [-]. Source: INCROPERA ch. 9. Checks: P-030, P-038. */
export const rayleighNumber = (air: DryAir, deltaK: number, lengthM: number): number =>
  (gravityMPerS2 * air.expansionPerK * Math.abs(deltaK) * (lengthM * lengthM * lengthM)) /
  (air.kinematicViscosityM2PerS * air.diffusivityM2PerS);

/** Film coefficient from a Nusselt number. @param lengthM the law's own length [m] @returns [W/m²K]. Checks: P-030. */
export const filmWPerM2K = (nusselt: number, air: DryAir, lengthM: number): number =>
  (nusselt * air.conductivityWPerMK) / lengthM;
