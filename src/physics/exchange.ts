// Long-wave exchange between the inner surfaces: view factors, closure, and grey exchange with all reflections.
// Depends on geometry and emissivity only, so it is worked out once per box and shared by every run.

import { factorInPlace, solveInPlace } from './dense.ts';
import { type Patch, partsOf } from './grid.ts';
import type { RadiantGroups } from './radiant-groups.ts';
import { rectangleExchangeArea } from './rectangle.ts';

/** Areas times view factors, A_i F_ij [m2], symmetric, rows summing to A_i. */
export function directExchangeAreas(patches: readonly Patch[]): Float64Array {
  const n = patches.length;
  const s = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const p = patches[i]!;
      const q = patches[j]!;
      if (p.panel === q.panel) continue;
      const area = seenArea(p, q);
      s[i * n + j] = area;
      s[j * n + i] = area;
    }
  }
  closeRows(
    s,
    patches.map((p) => p.areaM2),
  );
  return s;
}

/** Area times view factor of two patches; what is cut out of a rectangle is taken off it. */
function seenArea(p: Patch, q: Patch): number {
  let area = 0;
  for (const a of partsOf(p))
    for (const b of partsOf(q)) area += a.weight * b.weight * rectangleExchangeArea(a.rect, b.rect);
  return Math.max(0, area);
}

/** Scale a symmetric matrix so that every row sums to its area; mats and mesh are smeared over their column, so rows may start a little off. */
function closeRows(s: Float64Array, areas: readonly number[]): void {
  const n = areas.length;
  const scale = new Float64Array(n).fill(1);
  const next = new Float64Array(n);
  for (let pass = 0; pass < 200; pass++) {
    let worst = 0;
    for (let i = 0; i < n; i++) {
      const from = i * n;
      let seen = 0;
      for (let j = 0; j < n; j++) seen += s[from + j]! * scale[j]!;
      const part = (seen * scale[i]!) / areas[i]!;
      worst = Math.max(worst, Math.abs(part - 1));
      next[i] = scale[i]! / Math.sqrt(part);
    }
    if (worst < 1e-12) break;
    scale.set(next);
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) s[i * n + j] = s[i * n + j]! * scale[i]! * scale[j]!;
}

/** Shares of what each patch emits that each patch finally absorbs, all reflections counted: row i, column j.
 *  absorb_j + reflect_j + through_j = 1; what goes through is lost to the room.
 *  Source: grey enclosure with diffuse reflection (Gebhart factors), INCROPERA ch. 13. */
export function absorbedShares(
  direct: Float64Array,
  areas: readonly number[],
  absorb: readonly number[],
  reflect: readonly number[],
): Float64Array {
  const n = areas.length;
  // B = F (I - R F)^-1 A  with F row-normalised; solve B^T columns: (I - F R) B = F A
  const m = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) m[i * n + j] = (i === j ? 1 : 0) - (direct[i * n + j]! / areas[i]!) * reflect[j]!;
  }
  factorInPlace(m, n);
  const b = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < n; i++) column[i] = (direct[i * n + j]! / areas[i]!) * absorb[j]!;
    solveInPlace(m, n, column);
    for (let i = 0; i < n; i++) b[i * n + j] = column[i]!;
  }
  return b;
}

/** Where radiation that first falls on the patches in shares `first` is finally absorbed; the rest of the sum is lost through clear panels.
 *  @param shares from absorbedShares   @param absorb and reflect, of the groups as `shares` */
export function settledShares(
  first: Float64Array,
  { count, groupOf, share }: RadiantGroups,
  shares: Float64Array,
  absorb: readonly number[],
  reflect: readonly number[],
): Float64Array {
  const reflected = new Float64Array(count);
  first.forEach((f, i) => {
    const g = groupOf[i]!;
    reflected[g] = reflected[g]! + f * reflect[g]!;
  });
  const later = new Float64Array(count);
  reflected.forEach((r, g) => {
    if (r === 0) return;
    for (let j = 0; j < count; j++) later[j] = later[j]! + r * shares[g * count + j]!;
  });
  return first.map((f, i) => f * absorb[groupOf[i]!]! + share[i]! * later[groupOf[i]!]!);
}

/** emissivity_i A_i B_ij [m2] of all pairs, symmetric. What a patch sends back to itself is no exchange; what a group of
 *  several sends back to itself goes from one member to another. @param shares from absorbedShares */
export function greyExchangeAreas(
  { count, patches, single }: RadiantGroups,
  shares: Float64Array,
  emissivity: readonly number[],
): Float64Array {
  const n = count;
  const sent = patches.map((p, i) => emissivity[i]! * p.areaM2);
  const grey = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    if (!single) grey[i * n + i] = sent[i]! * shares[i * n + i]!;
    for (let j = i + 1; j < n; j++) {
      const g = 0.5 * (sent[i]! * shares[i * n + j]! + sent[j]! * shares[j * n + i]!);
      grey[i * n + j] = g;
      grey[j * n + i] = g;
    }
  }
  return grey;
}
