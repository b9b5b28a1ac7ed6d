// How much of what one flat rectangle radiates falls on another at right angles to it? They may be anywhere
// along the line where their planes meet, and need not touch it. Leaves out whatever stands between them.

/** A rectangle seen from the line where the two planes meet: from and to along that line, and out from it, both [m].
 *  `out` must not be negative: the two face each other on one side only. */
export interface EdgeRectangle {
  readonly along: readonly [number, number];
  readonly out: readonly [number, number];
}

/** View factor between perpendicular rectangles, closed form by sixteen corners (contour integral).
 *  @param from  the one that radiates      @param to  the one that is hit, same `along` axis
 *  @returns share of what leaves `from` [-]
 *  Source: HOWELL C-14 generalised to offset rectangles. Checks: P-081..P-085, closure and Monte Carlo. */
export function viewFactorPerpendicular(from: EdgeRectangle, to: EdgeRectangle): number {
  const area = (from.along[1] - from.along[0]) * (from.out[1] - from.out[0]);
  let sum = 0;
  for (let i = 0; i < 2; i++)
    for (let j = 0; j < 2; j++)
      for (let k = 0; k < 2; k++)
        for (let l = 0; l < 2; l++) {
          const sign = (i + j + k + l) % 2 === 0 ? 1 : -1;
          sum += sign * corner((from.along[j] ?? 0) - (to.along[k] ?? 0), from.out[i] ?? 0, to.out[l] ?? 0);
        }
  return Math.max(0, sum / (2 * Math.PI * area));
}

function corner(v: number, x: number, xi: number): number {
  const c2 = x * x + xi * xi;
  const r2 = c2 + v * v;
  if (r2 === 0) return 0;
  const c = Math.sqrt(c2);
  const edge = c === 0 ? 0 : v * c * Math.atan(v / c);
  return edge - 0.25 * (c2 - v * v) * Math.log(r2);
}
