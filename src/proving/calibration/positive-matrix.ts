// Symmetric positive matrices: factor, solve, invert, draw. Small (below 60), row-major, full storage.

/** Lower Cholesky factor. Throws only when the matrix is not positive definite, which a prior rules out.
 *  @param a n x n, row-major, symmetric */
export function choleskyFactor(a: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let s = a[i * n + j]!;
      for (let k = 0; k < j; k++) s -= l[i * n + k]! * l[j * n + k]!;
      if (i === j) {
        if (!(s > 0)) throw new Error('a matrix that should be positive definite is not');
        l[i * n + i] = Math.sqrt(s);
      } else l[i * n + j] = s / l[j * n + j]!;
    }
  }
  return l;
}

/** Solve L L^T x = b. */
export function choleskySolve(l: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = b.slice();
  for (let i = 0; i < n; i++) {
    let s = x[i]!;
    for (let k = 0; k < i; k++) s -= l[i * n + k]! * x[k]!;
    x[i] = s / l[i * n + i]!;
  }
  return backSolve(l, n, x);
}

/** Solve L^T x = b: turns independent standard normals into a draw whose precision is L L^T. */
export function backSolve(l: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = b.slice();
  for (let i = n - 1; i >= 0; i--) {
    let s = x[i]!;
    for (let k = i + 1; k < n; k++) s -= l[k * n + i]! * x[k]!;
    x[i] = s / l[i * n + i]!;
  }
  return x;
}

/** Diagonal of (L L^T)^-1: the variances. */
export function inverseDiagonal(l: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const unit = new Float64Array(n);
    unit[i] = 1;
    out[i] = choleskySolve(l, n, unit)[i]!;
  }
  return out;
}
