// How does heat soak into a thick body from its surface: surface held, heated evenly, or warmed by a film?
// Good until the heat reaches the far side (penetration-depth.ts).
import { erf, erfc, erfcScaled } from './error-function.ts';

/** Temperature inside after the surface is held at a new value. @param depthM [m] @param timeS [s] @param diffusivityM2PerS [m²/s]
 *  @param startC [°C] @param surfaceC [°C] @returns [°C]. Source: CARSLAW1959 ch. II. Checks: P-180, P-181. */
export const tempSurfaceHeldC = (
  depthM: number,
  timeS: number,
  diffusivityM2PerS: number,
  startC: number,
  surfaceC: number,
): number => surfaceC + (startC - surfaceC) * erf(depthM / (2 * Math.sqrt(diffusivityM2PerS * timeS)));

/** Depth at which a temperature is reached then, by halving. @param levelC between surface and start [°C] @returns [m]. Checks: P-180. */
export function depthOfLevelM(
  levelC: number,
  timeS: number,
  diffusivityM2PerS: number,
  startC: number,
  surfaceC: number,
): number {
  const wanted = (levelC - surfaceC) / (startC - surfaceC);
  let low = 0;
  let high = 6;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (erf(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) * Math.sqrt(diffusivityM2PerS * timeS);
}

/** Rise inside under an even flux. @param depthM [m] @param timeS [s] @param fluxWPerM2 [W/m²] @param conductivityWPerMK [W/mK]
 *  @param diffusivityM2PerS [m²/s] @returns [K]. Source: CARSLAW1959 ch. II. Checks: P-182. */
export function riseConstantFluxK(
  depthM: number,
  timeS: number,
  fluxWPerM2: number,
  conductivityWPerMK: number,
  diffusivityM2PerS: number,
): number {
  const reach = 2 * Math.sqrt(diffusivityM2PerS * timeS);
  const u = depthM / reach;
  return (fluxWPerM2 / conductivityWPerMK) * ((reach / Math.sqrt(Math.PI)) * Math.exp(-u * u) - depthM * erfc(u));
}

/** Share of the way from start to air temperature, under a film. @param depthM [m] @param timeS [s] @param filmWPerM2K [W/m²K]
 *  @param conductivityWPerMK [W/mK] @param diffusivityM2PerS [m²/s] @returns 0..1. Source: INCROPERA eq. 5.60. Checks: P-183. */
export function shareUnderFilm(
  depthM: number,
  timeS: number,
  filmWPerM2K: number,
  conductivityWPerMK: number,
  diffusivityM2PerS: number,
): number {
  const root = Math.sqrt(diffusivityM2PerS * timeS);
  const u = depthM / (2 * root);
  const b = (filmWPerM2K * root) / conductivityWPerMK;
  return erfc(u) - Math.exp(-u * u) * erfcScaled(u + b);
}
