// How much of what one flat rectangle radiates falls on another that faces it, anywhere in the opposite plane?
// Both lie parallel to the axes. Leaves out whatever stands between them.

/** A rectangle in its plane: from and to along two axes [m]. */
export interface PlaneRectangle {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

/** View factor between parallel rectangles, closed form by sixteen corners (contour integral).
 *  @param from       the one that radiates; coordinates shared with `to` [m]
 *  @param to         the one that is hit
 *  @param distanceM  between the planes [m], > 0        @returns share of what leaves `from` [-]
 *  Source: HOWELL C-11 generalised to offset rectangles. Checks: P-080, P-082, P-083, P-084, closure and Monte Carlo. */
export function viewFactorParallel(from: PlaneRectangle, to: PlaneRectangle, distanceM: number): number {
  const area = (from.x[1] - from.x[0]) * (from.y[1] - from.y[0]);
  let sum = 0;
  for (let i = 0; i < 2; i++)
    for (let j = 0; j < 2; j++)
      for (let k = 0; k < 2; k++)
        for (let l = 0; l < 2; l++) {
          const sign = (i + j + k + l) % 2 === 0 ? 1 : -1;
          sum += sign * corner((from.x[i] ?? 0) - (to.x[k] ?? 0), (from.y[j] ?? 0) - (to.y[l] ?? 0), distanceM);
        }
  return Math.max(0, sum / (2 * Math.PI * area));
}

function corner(u: number, v: number, z: number): number {
  const p = Math.sqrt(u * u + z * z);
  const q = Math.sqrt(v * v + z * z);
  return v * p * Math.atan(v / p) + u * q * Math.atan(u / q) - 0.5 * z * z * Math.log(u * u + v * v + z * z);
}
