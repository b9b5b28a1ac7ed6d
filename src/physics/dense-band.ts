// Linear equations whose matrix reaches only a few places either side of its diagonal: the air of a box, column by column.
// Stored row by row, 2 w + 1 numbers each, diagonal in the middle. Not symmetric, since air that flows carries heat one way.
// No pivoting: every row loses at least what it gains.

/** LU factors in place, with the inverse of each pivot on the diagonal. @param w places either side of the diagonal */
export function factorBandInPlace(a: Float64Array, n: number, w: number): void {
  const wide = 2 * w + 1;
  for (let k = 0; k < n; k++) {
    const top = k * wide + w;
    const pivot = a[top]!;
    if (pivot === 0) throw new Error('zero pivot in a heat balance');
    const inverse = 1 / pivot;
    a[top] = inverse;
    const reach = Math.min(w, n - 1 - k);
    for (let d = 1; d <= reach; d++) {
      const row = (k + d) * wide + w - d;
      const f = a[row]! * inverse;
      a[row] = f;
      for (let e = 1; e <= reach; e++) a[row + e] = a[row + e]! - f * a[top + e]!;
    }
  }
}

/** Solve in place. @param from place in b of the first unknown   @param start first unknown with a right side that is not 0 */
export function solveBandInPlace(a: Float64Array, n: number, w: number, b: Float64Array, from = 0, start = 0): void {
  const wide = 2 * w + 1;
  for (let i = start + 1; i < n; i++) {
    const row = i * wide + w;
    let s = b[from + i]!;
    for (let d = Math.min(w, i - start); d >= 1; d--) s -= a[row - d]! * b[from + i - d]!;
    b[from + i] = s;
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * wide + w;
    let s = b[from + i]!;
    const reach = Math.min(w, n - 1 - i);
    for (let d = 1; d <= reach; d++) s -= a[row + d]! * b[from + i + d]!;
    b[from + i] = s * a[row]!;
  }
}

/** Solve for many right sides at once, in place: row i of b holds the i-th unknown of all of them.
 *  Places of the band that are zero cost nothing. @param many how many right sides */
export function solveBandRows(a: Float64Array, n: number, w: number, b: Float64Array, many: number): void {
  const wide = 2 * w + 1;
  const take = (to: number, from: number, f: number) => {
    if (f === 0) return;
    for (let k = 0; k < many; k++) b[to * many + k] = b[to * many + k]! - f * b[from * many + k]!;
  };
  for (let i = 1; i < n; i++) for (let d = Math.min(w, i); d >= 1; d--) take(i, i - d, a[i * wide + w - d]!);
  for (let i = n - 1; i >= 0; i--) {
    const reach = Math.min(w, n - 1 - i);
    for (let d = 1; d <= reach; d++) take(i, i + d, a[i * wide + w + d]!);
    const inverse = a[i * wide + w]!;
    for (let k = 0; k < many; k++) b[i * many + k] = b[i * many + k]! * inverse;
  }
}
