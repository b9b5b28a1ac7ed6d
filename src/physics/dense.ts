// Small dense linear algebra on flat Float64Arrays: factor once, solve many times.
// The matrices of a heated box are diagonally dominant (every row loses at least what it gains), so no pivoting.

/** LU factors in place, row-major n x n; throws only on a zero pivot, which a valid box cannot give. */
export function factorInPlace(a: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const pivot = a[k * n + k]!;
    if (pivot === 0) throw new Error('zero pivot in a heat balance');
    const inverse = 1 / pivot;
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      const f = a[row + k]! * inverse;
      if (f === 0) continue;
      a[row + k] = f;
      const top = k * n;
      for (let j = k + 1; j < n; j++) a[row + j] = a[row + j]! - f * a[top + j]!;
    }
  }
}

/** Solve LU x = b in place. */
export function solveInPlace(lu: Float64Array, n: number, b: Float64Array): void {
  for (let i = 1; i < n; i++) {
    const row = i * n;
    let s = b[i]!;
    for (let j = 0; j < i; j++) s -= lu[row + j]! * b[j]!;
    b[i] = s;
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    let s = b[i]!;
    for (let j = i + 1; j < n; j++) s -= lu[row + j]! * b[j]!;
    b[i] = s / lu[row + i]!;
  }
}
