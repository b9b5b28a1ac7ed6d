// View factors by closed form against ray casting, and their sums and reciprocity over many random boxes.
import { viewFactorParallel } from '../../src/physics/formulas/view-factor-parallel.ts';
import { viewFactorPerpendicular } from '../../src/physics/formulas/view-factor-perpendicular.ts';
import { viewFactorPointToRectangle } from '../../src/physics/formulas/view-factor-point.ts';
import type { CheckKind, CheckRow } from '../check-row.ts';
import { seededRandom } from '../seeded-random.ts';

const rays = 400_000;
const boxes = 500;

function row(
  id: string,
  title: string,
  kind: CheckKind,
  expected: number,
  ours: number,
  abs: number,
  why: string,
): CheckRow {
  const quantity = kind === 'two-methods' ? 'share' : 'largest error';
  return {
    id,
    title,
    quantity,
    kind,
    source: 'OWN',
    at: kind === 'two-methods' ? `${rays} rays, seed 7` : `${boxes} random boxes, seed 11`,
    provenance: 'derived',
    expected,
    ours,
    unit: '-',
    tolerance: { abs },
    why,
  };
}

/** Share of cosine-law rays from a rectangle in the plane z = 0 that hit what `hits` says. */
function cast(
  x: readonly [number, number],
  y: readonly [number, number],
  hits: (px: number, py: number, dx: number, dy: number, dz: number) => boolean,
): number {
  const random = seededRandom(7);
  let count = 0;
  for (let n = 0; n < rays; n++) {
    const px = x[0] + (x[1] - x[0]) * random();
    const py = y[0] + (y[1] - y[0]) * random();
    const s2 = random();
    const s = Math.sqrt(s2);
    const turn = 2 * Math.PI * random();
    if (hits(px, py, s * Math.cos(turn), s * Math.sin(turn), Math.sqrt(1 - s2))) count++;
  }
  return count / rays;
}

const inside = (v: number, [low, high]: readonly [number, number]) => v >= low && v <= high;

function raysAgainstForms(): CheckRow[] {
  const why = 'Four standard errors of the ray count.';
  const four = (share: number) => 4 * Math.sqrt((share * (1 - share)) / rays);
  const rows: CheckRow[] = [];
  const from = { x: [0.1, 0.5], y: [0, 0.3] } as const;
  const patches = [
    { x: [0.6, 1.1], y: [0.2, 0.6], z: 0.45 },
    { x: [0, 0.2], y: [0, 0.6], z: 0.2 },
    { x: [0.1, 0.5], y: [0, 0.3], z: 0.05 },
  ] as const;
  patches.forEach((to, n) => {
    const seen = cast(from.x, from.y, (px, py, dx, dy, dz) => {
      const t = to.z / dz;
      return inside(px + t * dx, to.x) && inside(py + t * dy, to.y);
    });
    const ours = viewFactorParallel(from, to, to.z);
    rows.push(
      row(`VF-RAYS-${n + 1}`, `Offset parallel patches, ${to.z} m apart`, 'two-methods', seen, ours, four(seen), why),
    );
  });
  const walls = [
    { along: [0, 0.3], out: [0, 0.6] },
    { along: [0.4, 0.9], out: [0.1, 0.5] },
    { along: [0.1, 0.2], out: [0.02, 0.12] },
  ] as const;
  walls.forEach((wall, n) => {
    const seen = cast(from.x, from.y, (px, py, dx, dy, dz) => {
      if (dx >= 0) return false;
      const t = px / -dx;
      return inside(py + t * dy, wall.along) && inside(t * dz, wall.out);
    });
    const ours = viewFactorPerpendicular({ along: from.y, out: from.x }, wall);
    rows.push(
      row(
        `VF-RAYS-${n + 4}`,
        `Floor patch and wall patch ${n + 1}, apart from the edge`,
        'two-methods',
        seen,
        ours,
        four(seen),
        why,
      ),
    );
  });
  return rows;
}

type Span = readonly [number, number];

/** Largest closure and reciprocity errors of split faces in random boxes, and of a point source inside. */
function sums(): CheckRow[] {
  const random = seededRandom(11);
  const between = (low: number, high: number) => low + (high - low) * random();
  let closure = 0;
  let reciprocity = 0;
  let point = 0;
  for (let n = 0; n < boxes; n++) {
    const [l, w, h] = [between(0.2, 2), between(0.2, 1), between(0.15, 1.2)];
    const a = between(0, 0.8) * l;
    const b = between(0, 0.8) * w;
    const patch = { x: [a, a + between(0.05, 0.2) * l] as Span, y: [b, b + between(0.05, 0.2) * w] as Span };
    const mirrored = (span: Span, size: number): Span => [size - span[1], size - span[0]];
    const toWall = (along: Span, out: Span, wall: Span) =>
      viewFactorPerpendicular({ along, out }, { along: wall, out: [0, h] });
    const total =
      viewFactorParallel(patch, { x: [0, l], y: [0, w] }, h) +
      toWall(patch.x, patch.y, [0, l]) +
      toWall(patch.x, mirrored(patch.y, w), [0, l]) +
      toWall(patch.y, patch.x, [0, w]) +
      toWall(patch.y, mirrored(patch.x, l), [0, w]);
    closure = Math.max(closure, Math.abs(total - 1));
    const area = (s: Span, t: Span) => (s[1] - s[0]) * (t[1] - t[0]);
    const there = viewFactorPerpendicular({ along: patch.x, out: patch.y }, { along: [0, l], out: [0, h] });
    const back = viewFactorPerpendicular({ along: [0, l], out: [0, h] }, { along: patch.x, out: patch.y });
    reciprocity = Math.max(reciprocity, Math.abs(area(patch.x, patch.y) * there - l * h * back));
    const [px, py, pz] = [between(0.05, 0.95) * l, between(0.05, 0.95) * w, between(0.05, 0.95) * h];
    const xs: Span = [-px, l - px];
    const ys: Span = [-py, w - py];
    const zs: Span = [-pz, h - pz];
    const six =
      viewFactorPointToRectangle({ x: xs, y: ys }, pz) +
      viewFactorPointToRectangle({ x: xs, y: ys }, h - pz) +
      viewFactorPointToRectangle({ x: xs, y: zs }, py) +
      viewFactorPointToRectangle({ x: xs, y: zs }, w - py) +
      viewFactorPointToRectangle({ x: ys, y: zs }, px) +
      viewFactorPointToRectangle({ x: ys, y: zs }, l - px);
    point = Math.max(point, Math.abs(six - 1));
  }
  const why = 'Rounding of sixteen corner terms on a small patch.';
  return [
    row(
      'VF-CLOSURE',
      'Floor patch to all other faces: shares must add to one',
      'self-consistency',
      0,
      closure,
      1e-10,
      why,
    ),
    row(
      'VF-RECIPROCITY',
      'Floor patch and whole wall: exchange area both ways',
      'self-consistency',
      0,
      reciprocity,
      1e-10,
      why,
    ),
    row(
      'VF-POINT',
      'Point source to all six faces: shares must add to one',
      'self-consistency',
      0,
      point,
      1e-12,
      'Rounding only.',
    ),
  ];
}

export async function cases(): Promise<CheckRow[]> {
  return [...raysAgainstForms(), ...sums()];
}
