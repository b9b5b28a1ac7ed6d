// Small dense linear algebra on flat Float64Arrays: factor once, solve many times.
// The matrices of a heated box are diagonally dominant (every row loses at least what it gains), so no pivoting.

/** LU factors in place, row-major n x n, with the inverse of each pivot on the diagonal; for solveInPlace only.
 *  Two pivots at a time, so that each row is walked half as often. Throws only on a zero pivot, which a valid box cannot give. */
export function factorInPlace(a: Float64Array, n: number): void {
  let k = 0;
  for (; k + 1 < n; k += 2) {
    const top = k * n;
    const under = top + n;
    const inverse = invertedPivot(a, top + k);
    const first = a[under + k]! * inverse;
    a[under + k] = first;
    for (let j = k + 1; j < n; j++) a[under + j] = a[under + j]! - first * a[top + j]!;
    const inverseUnder = invertedPivot(a, under + k + 1);
    const across = a[top + k + 1]!;
    for (let i = k + 2; i < n; i++) {
      const row = i * n;
      const f = a[row + k]! * inverse;
      const g = (a[row + k + 1]! - f * across) * inverseUnder;
      if (f === 0 && g === 0) continue;
      a[row + k] = f;
      a[row + k + 1] = g;
      for (let j = k + 2; j < n; j++) a[row + j] = a[row + j]! - f * a[top + j]! - g * a[under + j]!;
    }
  }
  if (k < n) invertedPivot(a, k * n + k);
}

function invertedPivot(a: Float64Array, at: number): number {
  const pivot = a[at]!;
  if (pivot === 0) throw new Error('zero pivot in a heat balance');
  const inverse = 1 / pivot;
  a[at] = inverse;
  return inverse;
}

/** Solve LU x = b in place, four rows at a time so that their sums do not wait for each other.
 *  @param lu from factorInPlace   @param from place in b of the first unknown */
export function solveInPlace(lu: Float64Array, n: number, b: Float64Array, from = 0): void {
  const whole = n & ~3;
  for (let i = 0; i < whole; i += 4) {
    const r0 = i * n;
    const r1 = r0 + n;
    const r2 = r1 + n;
    const r3 = r2 + n;
    let s0 = b[from + i]!;
    let s1 = b[from + i + 1]!;
    let s2 = b[from + i + 2]!;
    let s3 = b[from + i + 3]!;
    for (let j = 0; j < i; j++) {
      const v = b[from + j]!;
      s0 -= lu[r0 + j]! * v;
      s1 -= lu[r1 + j]! * v;
      s2 -= lu[r2 + j]! * v;
      s3 -= lu[r3 + j]! * v;
    }
    s1 -= lu[r1 + i]! * s0;
    s2 -= lu[r2 + i]! * s0;
    s3 -= lu[r3 + i]! * s0;
    s2 -= lu[r2 + i + 1]! * s1;
    s3 -= lu[r3 + i + 1]! * s1;
    s3 -= lu[r3 + i + 2]! * s2;
    b[from + i] = s0;
    b[from + i + 1] = s1;
    b[from + i + 2] = s2;
    b[from + i + 3] = s3;
  }
  for (let i = whole; i < n; i++) {
    const row = i * n;
    let s = b[from + i]!;
    for (let j = 0; j < i; j++) s -= lu[row + j]! * b[from + j]!;
    b[from + i] = s;
  }
  for (let i = n - 1; i >= whole; i--) {
    const row = i * n;
    let s = b[from + i]!;
    for (let j = i + 1; j < n; j++) s -= lu[row + j]! * b[from + j]!;
    b[from + i] = s * lu[row + i]!;
  }
  for (let i = whole - 4; i >= 0; i -= 4) {
    const r0 = i * n;
    const r1 = r0 + n;
    const r2 = r1 + n;
    const r3 = r2 + n;
    let s0 = b[from + i]!;
    let s1 = b[from + i + 1]!;
    let s2 = b[from + i + 2]!;
    let s3 = b[from + i + 3]!;
    for (let j = i + 4; j < n; j++) {
      const v = b[from + j]!;
      s0 -= lu[r0 + j]! * v;
      s1 -= lu[r1 + j]! * v;
      s2 -= lu[r2 + j]! * v;
      s3 -= lu[r3 + j]! * v;
    }
    s3 *= lu[r3 + i + 3]!;
    s2 = (s2 - lu[r2 + i + 3]! * s3) * lu[r2 + i + 2]!;
    s1 = (s1 - lu[r1 + i + 2]! * s2 - lu[r1 + i + 3]! * s3) * lu[r1 + i + 1]!;
    s0 = (s0 - lu[r0 + i + 1]! * s1 - lu[r0 + i + 2]! * s2 - lu[r0 + i + 3]! * s3) * lu[r0 + i]!;
    b[from + i] = s0;
    b[from + i + 1] = s1;
    b[from + i + 2] = s2;
    b[from + i + 3] = s3;
  }
}
