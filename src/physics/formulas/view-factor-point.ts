// What share of what a small, all-round source radiates falls on a rectangle? Also the size of the rectangle on the
// sky of that point (solid angle). Leaves out reflectors and beams (cone-irradiance.ts).
import type { PlaneRectangle } from './view-factor-parallel.ts';

/** Share of isotropic radiation of a point (or a small sphere) that hits a rectangle.
 *  @param rectangle   its sides, measured from the foot of the perpendicular dropped from the point [m]
 *  @param distanceM   from the point to the rectangle's plane [m], > 0        @returns share [-]
 *  Source: FEINGOLD1970 for the corner piece (memory); exact by symmetry. Checks: P-090, P-091, closure. */
export function viewFactorPointToRectangle(rectangle: PlaneRectangle, distanceM: number): number {
  return solidAngleSr(rectangle, distanceM) / (4 * Math.PI);
}

/** Solid angle of a rectangle seen from a point. @param rectangle as above [m] @param distanceM [m] @returns [sr]. Checks: P-090. */
export function solidAngleSr(rectangle: PlaneRectangle, distanceM: number): number {
  const [x0, x1] = rectangle.x;
  const [y0, y1] = rectangle.y;
  const piece = (x: number, y: number) =>
    Math.atan2(x * y, distanceM * Math.sqrt(x * x + y * y + distanceM * distanceM));
  return piece(x1, y1) - piece(x0, y1) - piece(x1, y0) + piece(x0, y0);
}
