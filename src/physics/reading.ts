// Readings as weights: what a probe, a strip of floor or a perch feels is a weighted sum of air and surface temperatures
// plus direct radiation from the heaters. Worked out once per box, so that reading costs one pass over the weights.
import type { Enclosure } from './enclosure.ts';
import type { Grid } from './grid.ts';
import { type Point, solidAngle } from './rectangle.ts';

export interface Reading {
  readonly air: Float64Array;
  readonly surface: Float64Array;
  /** Nodes within panels (mats): patch, node behind its surface (0 = first), weight. */
  readonly behind: readonly { readonly patch: number; readonly node: number; readonly weight: number }[];
  /** Rise per watt that each heater radiates, long-wave and short-wave [K/W]. */
  readonly perRadiatedW: Float64Array;
  readonly perShortWaveW: Float64Array;
}

/** Temperatures of a box in one row, and where air, surfaces and the nodes behind them lie in it. */
export interface ReadableState {
  readonly row: Float64Array;
  readonly layout: { readonly airNodes: number; readonly patches: number; readonly first: Int32Array };
}

export const emptyReading = (
  grid: Grid,
  heaters: number,
): Reading & { behind: { patch: number; node: number; weight: number }[] } => ({
  air: new Float64Array(grid.columns * grid.layers),
  surface: new Float64Array(grid.patches.length),
  behind: [],
  perRadiatedW: new Float64Array(heaters),
  perShortWaveW: new Float64Array(heaters),
});

/** Value of a reading [degC]. */
export function readingValue(
  r: Reading,
  state: ReadableState,
  now: readonly { readonly radiatedW: number; readonly shortWaveW: number }[],
): number {
  const { air, surface, behind } = r;
  const { row, layout } = state;
  const { airNodes, patches, first } = layout;
  let v = 0;
  for (let a = 0; a < airNodes; a++) v += air[a]! * row[a]!;
  for (let s = 0; s < patches; s++) v += surface[s]! * row[airNodes + s]!;
  for (const b of behind) v += b.weight * row[airNodes + patches + first[b.patch]! + b.node]!;
  for (let h = 0; h < now.length; h++)
    v += r.perRadiatedW[h]! * now[h]!.radiatedW + r.perShortWaveW[h]! * now[h]!.shortWaveW;
  return v;
}

/** Add the air at a point: linear between columns, and between layers carried on to floor and lid. */
export function addAir(r: Reading, grid: Grid, xM: number, zM: number, weight: number): void {
  const x = between(grid.columnXM, xM, false);
  const z = between(grid.layerZM, zM, true);
  for (const [k, wz] of z)
    for (const [i, wx] of x) r.air[k * grid.columns + i] = r.air[k * grid.columns + i]! + weight * wz * wx;
}

/** Indices and weights of linear interpolation. */
export function between(at: readonly number[], x: number, carryOn: boolean): readonly (readonly [number, number])[] {
  const last = at.length - 1;
  if (last === 0) return [[0, 1]];
  let i = 0;
  while (i < last - 1 && at[i + 1]! < x) i++;
  let f = (x - at[i]!) / (at[i + 1]! - at[i]!);
  if (!carryOn) f = Math.max(0, Math.min(1, f));
  return [
    [i, 1 - f],
    [i + 1, f],
  ];
}

/** Add the mean of some patches by area, clipped to a strip of the length. */
export function addPatches(
  r: Reading,
  grid: Grid,
  fromM: number,
  toM: number,
  weight: number,
  which: (patch: Grid['patches'][number]) => boolean,
): void {
  const areas = grid.patches.map((p) => {
    if (!which(p)) return 0;
    if (p.rect.axis === 'x') return p.areaM2;
    const x = Math.min(toM, p.rect.a1) - Math.max(fromM, p.rect.a0);
    return x > 0 ? (p.areaM2 * x) / (p.rect.a1 - p.rect.a0) : 0;
  });
  const total = areas.reduce((s, a) => s + a, 0);
  if (total <= 0) return;
  areas.forEach((a, s) => {
    r.surface[s] = r.surface[s]! + (weight * a) / total;
  });
}

/** Add what a small body at a point sees: surfaces by solid angle (linear mean; within 0.1 K of the fourth-power mean here). */
export function addSeen(r: Reading, grid: Grid, at: Point, weight: number): void {
  const omega = grid.patches.map((p) => solidAngle(p.rect, at) * p.share);
  const total = omega.reduce((s, o) => s + o, 0);
  omega.forEach((o, s) => {
    r.surface[s] = r.surface[s]! + (weight * o) / total;
  });
}

/** Keep a point a little inside the box, where solid angles are defined. */
export function insidePoint(enclosure: Enclosure, p: Point): Point {
  const { lengthM, depthM, heightM } = enclosure.box;
  const keep = (v: number, top: number) => Math.max(0.005, Math.min(top - 0.005, v));
  return { xM: keep(p.xM, lengthM), yM: keep(p.yM, depthM), zM: keep(p.zM, heightM) };
}
