// View factors from a small patch to a rectangle and between discs: for a basking spot, a probe, a round heater.

/** Small patch to a rectangle parallel to it, one corner of which lies on the patch's normal.
 *  @param xRatio side / distance [-] @param yRatio other side / distance [-] @returns share [-].
 *  Source: HOWELL B-3 (memory). Checks: P-086. */
export function viewFactorElementParallel(xRatio: number, yRatio: number): number {
  const p = Math.sqrt(1 + xRatio ** 2);
  const q = Math.sqrt(1 + yRatio ** 2);
  return ((xRatio / p) * Math.atan(yRatio / p) + (yRatio / q) * Math.atan(xRatio / q)) / (2 * Math.PI);
}

/** Small patch to a rectangle at right angles to it that stands on the patch's plane, one corner opposite the patch.
 *  @param heightRatio height / width of the rectangle [-] @param distanceRatio distance / width [-], > 0 @returns share [-].
 *  Source: HOWELL B-4 (memory). Checks: P-087. */
export function viewFactorElementPerpendicular(heightRatio: number, distanceRatio: number): number {
  const r = Math.hypot(heightRatio, distanceRatio);
  return (Math.atan(1 / distanceRatio) - (distanceRatio / r) * Math.atan(1 / r)) / (2 * Math.PI);
}

/** Disc to a parallel disc on the same axis. @param fromRadiusM [m] @param toRadiusM [m] @param distanceM [m] @returns share [-].
 *  Source: HOWELL C-41. Checks: P-088. */
export function viewFactorDisks(fromRadiusM: number, toRadiusM: number, distanceM: number): number {
  const r1 = fromRadiusM / distanceM;
  const r2 = toRadiusM / distanceM;
  const x = 1 + (1 + r2 ** 2) / r1 ** 2;
  return 0.5 * (x - Math.sqrt(x ** 2 - 4 * (r2 / r1) ** 2));
}
