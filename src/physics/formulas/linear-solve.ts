// Solves small full systems of linear equations. Leaves out banded and large ones.

/** Gaussian elimination with row exchange; the inputs are left as they were.
 *  @param matrix n rows of n      @param right n values      @returns x with matrix x = right
 *  Throws RangeError when the matrix is singular to working precision (a bug of the caller). Checks: radiosity closure. */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i] as number]);
  for (let col = 0; col < n; col++) {
    let best = col;
    for (let row = col + 1; row < n; row++) if (Math.abs(at(a, row, col)) > Math.abs(at(a, best, col))) best = row;
    if (Math.abs(at(a, best, col)) < 1e-300) throw new RangeError('singular matrix');
    const swap = a[best] as number[];
    a[best] = a[col] as number[];
    a[col] = swap;
    for (let row = col + 1; row < n; row++) {
      const factor = at(a, row, col) / at(a, col, col);
      if (factor === 0) continue;
      const target = a[row] as number[];
      for (let k = col; k <= n; k++) target[k] = (target[k] as number) - factor * at(a, col, k);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    let sum = at(a, row, n);
    for (let k = row + 1; k < n; k++) sum -= at(a, row, k) * (x[k] as number);
    x[row] = sum / at(a, row, row);
  }
  return x;
}

const at = (a: readonly (readonly number[])[], row: number, col: number): number =>
  (a[row] as readonly number[])[col] as number;
