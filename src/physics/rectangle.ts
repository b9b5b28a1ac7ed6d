// An axis-aligned rectangle inside the box: position, area, centre, solid angle from a point.
import { viewFactorParallel } from './formulas/view-factor-parallel.ts';
import { viewFactorPerpendicular } from './formulas/view-factor-perpendicular.ts';
import { solidAngleSr } from './formulas/view-factor-point.ts';

export type Axis = 'x' | 'y' | 'z';

/** Rectangle normal to `axis` at coordinate `atM`; a and b span the two other axes in x, y, z order [m]. */
export interface Rect {
  readonly axis: Axis;
  readonly atM: number;
  readonly a0: number;
  readonly a1: number;
  readonly b0: number;
  readonly b1: number;
}

export interface Point {
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
}

export const rectArea = (r: Rect): number => (r.a1 - r.a0) * (r.b1 - r.b0);

/** A point of the rectangle at shares u, v (0..1) of its two sides. */
export function rectPoint(r: Rect, u: number, v: number): Point {
  const a = r.a0 + u * (r.a1 - r.a0);
  const b = r.b0 + v * (r.b1 - r.b0);
  if (r.axis === 'x') return { xM: r.atM, yM: a, zM: b };
  if (r.axis === 'y') return { xM: a, yM: r.atM, zM: b };
  return { xM: a, yM: b, zM: r.atM };
}

/** Coordinates of a point in the rectangle's own frame: distance along its normal and the two in-plane ones. */
export function inFrame(r: Rect, p: Point): { d: number; a: number; b: number } {
  if (r.axis === 'x') return { d: p.xM - r.atM, a: p.yM, b: p.zM };
  if (r.axis === 'y') return { d: p.yM - r.atM, a: p.xM, b: p.zM };
  return { d: p.zM - r.atM, a: p.xM, b: p.yM };
}

/** Extent of the rectangle along one of its own two axes [m]. */
export function extent(r: Rect, axis: Axis): readonly [number, number] {
  const first = r.axis === 'x' ? 'y' : 'x';
  return axis === first ? [r.a0, r.a1] : [r.b0, r.b1];
}

/** Solid angle of the rectangle seen from a point [sr], 0 when the point lies in its plane. */
export function solidAngle(r: Rect, p: Point): number {
  const f = inFrame(r, p);
  const d = Math.abs(f.d);
  if (d < 1e-9) return 0;
  return Math.abs(solidAngleSr({ x: [r.a0 - f.a, r.a1 - f.a], y: [r.b0 - f.b, r.b1 - f.b] }, d));
}

/** Area times view factor between two rectangles of one box [m2]; 0 when they lie in one plane. */
export function rectangleExchangeArea(p: Rect, q: Rect): number {
  if (p.axis === q.axis) {
    const gap = Math.abs(p.atM - q.atM);
    if (gap < 1e-9) return 0;
    return (
      rectArea(p) * viewFactorParallel({ x: [p.a0, p.a1], y: [p.b0, p.b1] }, { x: [q.a0, q.a1], y: [q.b0, q.b1] }, gap)
    );
  }
  const shared = (['x', 'y', 'z'] as const).find((a) => a !== p.axis && a !== q.axis)!;
  return (
    rectArea(p) *
    viewFactorPerpendicular(
      { along: extent(p, shared), out: awayFrom(extent(p, q.axis), q.atM) },
      { along: extent(q, shared), out: awayFrom(extent(q, p.axis), p.atM) },
    )
  );
}

/** Distances of an extent from a plane, near end first. */
function awayFrom(range: readonly [number, number], atM: number): readonly [number, number] {
  const a = Math.abs(range[0] - atM);
  const b = Math.abs(range[1] - atM);
  return a < b ? [a, b] : [b, a];
}
