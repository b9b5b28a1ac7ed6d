// How deep does a daily or a thermostat swing reach into a wall? Decides how finely a wall must be divided.

/** Depth at which a periodic swing has fallen to 1/e. @param diffusivityM2PerS [m²/s] @param periodS [s] @returns [m].
 *  Source: ISO13786. Checks: P-190. */
export const penetrationDepthM = (diffusivityM2PerS: number, periodS: number): number =>
  Math.sqrt((diffusivityM2PerS * periodS) / Math.PI);
