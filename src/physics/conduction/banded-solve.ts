// Solves the symmetric banded equations of conduction on a grid.

/** Cholesky in LDL' form, in place. rows[r][0] is the diagonal, rows[r][d] the coefficient with unknown r - d.
 *  @param rows   lower half of a symmetric positive matrix; overwritten      @param right right side; overwritten
 *  @param band   greatest d      @returns the unknowns (same array as right)
 *  Checks: P-020 to P-022. */
export function solveBanded(rows: readonly Float64Array[], right: Float64Array, band: number): Float64Array {
  const n = right.length;
  for (let r = 0; r < n; r++) {
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
    let rightSide = right[r] as number;
    for (let d = reach; d >= 1; d--) {
      const scaled = (row[d] as number) / ((rows[r - d] as Float64Array)[0] as number);
      diagonal -= scaled * (row[d] as number);
      row[d] = scaled;
      rightSide -= scaled * (right[r - d] as number);
    }
    row[0] = diagonal;
    right[r] = rightSide;
  }
  for (let r = 0; r < n; r++) right[r] = (right[r] as number) / ((rows[r] as Float64Array)[0] as number);
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r] as Float64Array;
    for (let d = 1; d <= Math.min(band, r); d++)
      right[r - d] = (right[r - d] as number) - (row[d] as number) * (right[r] as number);
  }
  return right;
}
