// How strong is a lamp's radiation on its axis, when it spreads evenly over a cone? Real lamps are stronger in the
// middle: the same watts differed twofold between lenses in one published series, so the beam is an input.

/** Irradiance on the axis of an even cone. @param radiatedW [W] @param fullAngleDeg 0..360 @param distanceM [m] @returns [W/m²].
 *  Geometry. Checks: P-098; 360° equals a point source. */
export const coneIrradianceWPerM2 = (radiatedW: number, fullAngleDeg: number, distanceM: number): number =>
  radiatedW / (2 * Math.PI * (1 - Math.cos((fullAngleDeg * Math.PI) / 360)) * distanceM ** 2);
