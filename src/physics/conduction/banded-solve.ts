// Solves the symmetric banded equations of conduction on a grid; the factors can be kept for many right sides.

/** Cholesky in LDL' form, in place. rows[r][0] is the diagonal, rows[r][d] the coefficient with unknown r - d.
 *  @param rows   lower half of a symmetric positive matrix; overwritten by its factors      @param band greatest d
 *  Checks: P-020 to P-022. */
export function factorBanded(rows: readonly Float64Array[], band: number): void {
  for (let r = 0; r < rows.length; r++) {
    const row = rows[r] as Float64Array;
    const reach = Math.min(band, r);
    for (let d = reach; d >= 1; d--) {
      const pivot = rows[r - d] as Float64Array;
      let value = row[d] as number;
      const depth = Math.min(reach, d + Math.min(band, r - d));
      for (let e = depth; e > d; e--) value -= (row[e] as number) * (pivot[e - d] as number);
      row[d] = value;
    }
    let diagonal = row[0] as number;
    for (let d = reach; d >= 1; d--) {
      const scaled = (row[d] as number) / ((rows[r - d] as Float64Array)[0] as number);
      diagonal -= scaled * (row[d] as number);
      row[d] = scaled;
    }
    row[0] = diagonal;
  }
}

/** Unknowns for one right side. @param rows factors from factorBanded @param right overwritten @param band as there
 *  @returns the unknowns (same array as right). Checks: P-020 to P-022. */
export function solveFactored(rows: readonly Float64Array[], right: Float64Array, band: number): Float64Array {
  const n = right.length;
  for (let r = 0; r < n; r++) {
    const row = rows[r] as Float64Array;
    let value = right[r] as number;
    for (let d = Math.min(band, r); d >= 1; d--) value -= (row[d] as number) * (right[r - d] as number);
    right[r] = value;
  }
  for (let r = 0; r < n; r++) right[r] = (right[r] as number) / ((rows[r] as Float64Array)[0] as number);
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r] as Float64Array;
    const value = right[r] as number;
    for (let d = Math.min(band, r); d >= 1; d--) right[r - d] = (right[r - d] as number) - (row[d] as number) * value;
  }
  return right;
}

/** Factors and solves at once. @param rows overwritten @param right overwritten @param band greatest d @returns the unknowns.
 *  Checks: P-020 to P-022. */
export function solveBanded(rows: readonly Float64Array[], right: Float64Array, band: number): Float64Array {
  factorBanded(rows, band);
  return solveFactored(rows, right, band);
}
