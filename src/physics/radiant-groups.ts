// Which inner surfaces exchange long wave and reflections as one, so that the exchange stays of one size however finely a
// box is cut: neighbours of one panel, layer and kind within one column of a coarser cut. Each keeps its own temperature,
// film and panel; it sends by its own temperature and gets its share, by area, of what falls on the group. A box cut no
// finer than the coarser cut has groups of one, and its exchange is the full one.
import type { Enclosure } from './enclosure.ts';
import type { Patch } from './grid.ts';
import { heaterBodies } from './heater-kinds.ts';
import { type Rect, rectArea } from './rectangle.ts';

export interface RadiantGroups {
  readonly count: number;
  /** The group of each patch, and the patch's share of its group's area. */
  readonly groupOf: Int32Array;
  readonly share: Float64Array;
  /** Each group as one patch. */
  readonly patches: readonly Patch[];
  /** Every patch is its own group. */
  readonly single: boolean;
}

/** @param fineEdgeM edges of the columns that the patches were cut by   @param coarseEdgeM edges of the coarser cut [m] */
export function radiantGroups(
  patches: readonly Patch[],
  fineEdgeM: readonly number[],
  coarseEdgeM: readonly number[],
): RadiantGroups {
  if (coarseEdgeM.length >= fineEdgeM.length) return singles(patches);
  const coarse = fineEdgeM.slice(1).map((to, i) => columnOf(coarseEdgeM, (fineEdgeM[i]! + to) / 2));
  const groups = new Map<string, number[]>();
  patches.forEach((p, s) => {
    const key = `${p.panel} ${p.role} ${p.heater} ${p.layer} ${coarse[p.column]}`;
    const found = groups.get(key);
    if (found) found.push(s);
    else groups.set(key, [s]);
  });
  const groupOf = new Int32Array(patches.length);
  const share = new Float64Array(patches.length);
  const whole = [...groups.values()].map((members, g) => {
    const areaM2 = members.reduce((sum, s) => sum + patches[s]!.areaM2, 0);
    for (const s of members) {
      groupOf[s] = g;
      share[s] = patches[s]!.areaM2 / areaM2;
    }
    const first = patches[members[0]!]!;
    const rect = members.reduce((r, s) => joined(r, patches[s]!.rect), first.rect);
    const holes = joinedHoles(members.flatMap((s) => patches[s]!.holes ?? []));
    return { ...first, rect, areaM2, share: areaM2 / rectArea(rect), holes };
  });
  return { count: whole.length, groupOf, share, patches: whole, single: false };
}

const singles = (patches: readonly Patch[]): RadiantGroups => ({
  count: patches.length,
  groupOf: Int32Array.from(patches, (_, s) => s),
  share: new Float64Array(patches.length).fill(1),
  patches,
  single: true,
});

function columnOf(edgeM: readonly number[], xM: number): number {
  let c = 0;
  while (c < edgeM.length - 2 && edgeM[c + 1]! <= xM) c++;
  return c;
}

/** Pieces that a fine cut makes of one hole are one again. */
function joinedHoles(holes: readonly Rect[]): Rect[] {
  const whole = new Map<string, Rect>();
  for (const h of holes) {
    const key = `${h.b0} ${h.b1}`;
    const found = whole.get(key);
    whole.set(key, found ? joined(found, h) : h);
  }
  return [...whole.values()];
}

const joined = (p: Rect, q: Rect): Rect => ({
  ...p,
  a0: Math.min(p.a0, q.a0),
  a1: Math.max(p.a1, q.a1),
  b0: Math.min(p.b0, q.b0),
  b1: Math.max(p.b1, q.b1),
});

/** A coarser cut: neighbouring columns are joined until so few are left, those first whose joint width is least beside
 *  how far a surface sees and how far they lie from the heat. Radiation blurs over about half the height of a box, and
 *  temperatures are steep only near a heater; the measure is our choice.
 *  @param fineEdgeM edges of the columns from the left wall [m]   @param most columns to be left */
export function coarserEdges(enclosure: Enclosure, fineEdgeM: readonly number[], most: number): readonly number[] {
  const edges = [...fineEdgeM];
  const heat = enclosure.heaters.map((h) => {
    const half = heaterBodies[h.kind].form === 'area' ? (h.lengthM ?? 0.3) / 2 : 0;
    return [h.xM - half, h.xM + half] as const;
  });
  const fromHeat = (from: number, to: number) =>
    heat.reduce((least, [a, b]) => Math.min(least, Math.max(0, a - to, from - b)), edges.at(-1)!);
  const blurM = enclosure.box.heightM / 2;
  while (edges.length - 1 > most) {
    let best = 1;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 1; k < edges.length - 1; k++) {
      const from = edges[k - 1]!;
      const to = edges[k + 1]!;
      const away = fromHeat(from, to);
      const measure = (to - from) / (blurM + away);
      // of equal ones the first: a mirrored box may be joined otherwise where both are as far from the heat
      if (measure < least - 1e-9) {
        least = measure;
        best = k;
      }
    }
    edges.splice(best, 1);
  }
  return edges;
}
