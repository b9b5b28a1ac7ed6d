// How a box is cut: columns along the length, layers of air, and the surface patches around them.
// Mats and panels snap the column edges; the basking spot under a heater is a patch of its own.
// Leaves out: heat conduction from patch to patch along a panel (thin panels carry little, docs/theory).
import type { Enclosure, Heater, PanelName } from './enclosure.ts';
import { heaterBodies } from './heater-kinds.ts';
import { type Rect, rectArea } from './rectangle.ts';

export type Facing = 'floor' | 'ceiling' | 'wall';
export type PatchRole = 'plain' | 'mesh' | 'mat' | 'panel' | 'spot';

export interface Patch {
  readonly panel: PanelName;
  readonly role: PatchRole;
  readonly facing: Facing;
  readonly rect: Rect;
  /** Share of the rectangle that this patch covers; the rest belongs to its siblings. */
  readonly share: number;
  /** What is cut out of the rectangle by siblings that have a place of their own: a basking spot, a panel. */
  readonly holes?: readonly Rect[];
  readonly areaM2: number;
  readonly column: number;
  readonly layer: number;
  /** Which heater warms it from within (mats and panels), -1 for none. */
  readonly heater: number;
}

export interface Grid {
  readonly columns: number;
  readonly layers: number;
  /** columns + 1 edges from the left wall [m]. */
  readonly edgeM: readonly number[];
  readonly columnXM: readonly number[];
  readonly layerEdgeM: readonly number[];
  readonly layerZM: readonly number[];
  readonly patches: readonly Patch[];
}

/** Side of the square that stands for the hottest hand-sized patch under a heater [m]; our choice. */
export const spotSideM = 0.12;

/** Layers of air for a box of this height: about 0.3 m each, at least two; our choice. */
export const layersForHeight = (heightM: number): number => Math.max(2, Math.min(6, Math.round(heightM / 0.3)));

/** Seen from the heat: the end at which the main heater is. */
export function warmEndOf(enclosure: Enclosure): 'left' | 'right' {
  const main = mainHeater(enclosure);
  const x = main < 0 ? 0 : enclosure.heaters[main]!.xM;
  return x <= enclosure.box.lengthM / 2 ? 'left' : 'right';
}

/** Cut the box.
 *  @param columns number of columns along the length, 4..64 */
export function cutBox(enclosure: Enclosure, columns: number): Grid {
  const { lengthM: L, depthM: D, heightM: H, panels } = enclosure.box;
  const layers = layersForHeight(H);
  const edgeM = columnEdges(enclosure, columns);
  const columnXM = middles(edgeM);
  const layerEdgeM = Array.from({ length: layers + 1 }, (_, k) => (H * k) / layers);
  const layerZM = middles(layerEdgeM);
  const patches: Patch[] = [];

  const add = (panel: PanelName, facing: Facing, rect: Rect, column: number, layer: number) => {
    const whole = rectArea(rect);
    const p = panels[panel];
    const meshFrac = clamp01((p.meshShareFrac ?? 0) * (1 - (p.meshCoveredFrac ?? 0)));
    let plain = 1;
    const holes: Rect[] = [];
    for (const cover of coveringSheets(enclosure, panel, rect)) {
      const share = Math.min(plain, cover.share);
      if (share <= 1e-6) continue;
      plain -= share;
      // a panel is seen from the spot below it where it hangs, not smeared over the depth of its strip of ceiling
      const own = cover.role === 'panel' && share === cover.share;
      if (own) holes.push(cover.rect);
      patches.push({
        panel,
        role: cover.role,
        facing,
        rect: own ? cover.rect : rect,
        share: own ? 1 : share,
        areaM2: whole * share,
        column,
        layer,
        heater: cover.heater,
      });
    }
    const mesh = Math.min(plain, meshFrac);
    if (mesh > 1e-6) {
      plain -= mesh;
      patches.push({
        panel,
        role: 'mesh',
        facing,
        rect,
        share: mesh,
        holes,
        areaM2: whole * mesh,
        column,
        layer,
        heater: -1,
      });
    }
    if (plain > 1e-6)
      patches.push({
        panel,
        role: 'plain',
        facing,
        rect,
        share: plain,
        holes,
        areaM2: whole * plain,
        column,
        layer,
        heater: -1,
      });
  };

  for (let i = 0; i < columns; i++) {
    const a0 = edgeM[i]!;
    const a1 = edgeM[i + 1]!;
    add('bottom', 'floor', { axis: 'z', atM: 0, a0, a1, b0: 0, b1: D }, i, 0);
    add('top', 'ceiling', { axis: 'z', atM: H, a0, a1, b0: 0, b1: D }, i, layers - 1);
    for (let k = 0; k < layers; k++) {
      const b0 = layerEdgeM[k]!;
      const b1 = layerEdgeM[k + 1]!;
      add('front', 'wall', { axis: 'y', atM: 0, a0, a1, b0, b1 }, i, k);
      add('back', 'wall', { axis: 'y', atM: D, a0, a1, b0, b1 }, i, k);
    }
  }
  for (let k = 0; k < layers; k++) {
    const b0 = layerEdgeM[k]!;
    const b1 = layerEdgeM[k + 1]!;
    add('left', 'wall', { axis: 'x', atM: 0, a0: 0, a1: D, b0, b1 }, 0, k);
    add('right', 'wall', { axis: 'x', atM: L, a0: 0, a1: D, b0, b1 }, columns - 1, k);
  }
  return { columns, layers, edgeM, columnXM, layerEdgeM, layerZM, patches: withSpots(enclosure, patches, edgeM) };
}

/** The heater whose basking site counts: the strongest one, a free body before a sheet when equal. */
export function mainHeater(enclosure: Enclosure): number {
  let best = -1;
  let most = -1;
  enclosure.heaters.forEach((h, i) => {
    const weight = h.powerW + (heaterBodies[h.kind].form === 'body' ? 0.001 : 0);
    if (weight > most) {
      most = weight;
      best = i;
    }
  });
  return best;
}

/** Half width of the basking strip on the floor under a free-hanging heater [m]; our choice. */
const baskingHalfM = 0.1;

/** The floor strip that counts as the basking surface of a heater: from, to [m from the left wall]. */
export function baskingStrip(enclosure: Enclosure, heater: Heater): readonly [number, number] {
  const L = enclosure.box.lengthM;
  const sheet = heaterBodies[heater.kind].form === 'area';
  const half = Math.min(sheet ? Math.max(baskingHalfM, (heater.lengthM ?? 0.3) / 4) : baskingHalfM, L / 6);
  const middle = Math.max(half, Math.min(L - half, heater.xM));
  return [middle - half, middle + half];
}

/** Columns with edges on the ends of mats, panels, basking strips and a cool end that is warmed, so that none is blurred,
 *  and for the rest as even as they can be: each further edge halves or thirds the widest stretch. */
function columnEdges(enclosure: Enclosure, columns: number): number[] {
  const L = enclosure.box.lengthM;
  const wanted = enclosure.heaters.flatMap((h) => {
    const half = (h.lengthM ?? 0.3) / 2;
    return heaterBodies[h.kind].form === 'area' ? [h.xM - half, h.xM + half] : [...baskingStrip(enclosure, h)];
  });
  const main = mainHeater(enclosure);
  const first = main < 0 ? [] : baskingStrip(enclosure, enclosure.heaters[main]!);
  const stops = [0, L];
  for (const x of [...first, ...wanted, ...coolEdge(enclosure, main)]) {
    if (stops.length <= columns && stops.every((s) => Math.abs(s - x) > closestEdgesM) && x > 0 && x < L) stops.push(x);
  }
  stops.sort((a, b) => a - b);
  const cells = stops.slice(1).map(() => 1);
  const heatM = main < 0 ? 0 : enclosure.heaters[main]!.xM;
  const fromHeat = (k: number) => Math.abs((stops[k]! + stops[k + 1]!) / 2 - heatM);
  const widthOf = (k: number) => (stops[k + 1]! - stops[k]!) / cells[k]!;
  for (let left = columns - cells.length; left > 0; left--) {
    let widest = 0;
    for (let k = 1; k < cells.length; k++) {
      const more = widthOf(k) - widthOf(widest);
      // of equally wide stretches the one nearer to the heat, so that a mirrored box is cut in the mirrored way
      if (more > 1e-9 || (more > -1e-9 && fromHeat(k) < fromHeat(widest) - 1e-9)) widest = k;
    }
    cells[widest] = cells[widest]! + 1;
  }
  const edges = [0];
  cells.forEach((n, k) => {
    for (let c = 1; c <= n; c++) edges.push(stops[k]! + c * widthOf(k));
  });
  return edges;
}

/** Share of the length at each end over which floor and air of that end are read; our choice. */
export const endShareFrac = 1 / 8;

/** Where another heater warms the end that is read as cool, the floor rises across the edge of what is read [m]. */
function coolEdge(enclosure: Enclosure, main: number): number[] {
  const L = enclosure.box.lengthM;
  const edge = (warmEndOf(enclosure) === 'left' ? 1 - endShareFrac : endShareFrac) * L;
  return enclosure.heaters.some((h, i) => i !== main && Math.abs(h.xM - edge) < 2 * endShareFrac * L) ? [edge] : [];
}

/** Edges are not put closer together than this [m]. */
const closestEdgesM = 0.02;

interface Cover {
  readonly role: 'mat' | 'panel';
  readonly heater: number;
  /** What of it lies over the rectangle, and its share of that. */
  readonly rect: Rect;
  readonly share: number;
}

function coveringSheets(enclosure: Enclosure, panel: PanelName, rect: Rect): Cover[] {
  const covers: Cover[] = [];
  enclosure.heaters.forEach((h, heater) => {
    if (heaterBodies[h.kind].form !== 'area') return;
    const onFloor = h.kind === 'heat-mat';
    if (panel !== (onFloor ? 'bottom' : 'top')) return;
    const over = overlap(h, rect);
    if (over)
      covers.push({ role: onFloor ? 'mat' : 'panel', heater, rect: over, share: rectArea(over) / rectArea(rect) });
  });
  return covers;
}

/** What of a sheet heater lies over this floor or ceiling rectangle. */
function overlap(h: Heater, r: Rect): Rect | null {
  const halfX = (h.lengthM ?? 0.3) / 2;
  const halfY = (h.depthM ?? 0.3) / 2;
  const a0 = Math.max(h.xM - halfX, r.a0);
  const a1 = Math.min(h.xM + halfX, r.a1);
  const b0 = Math.max(h.yM - halfY, r.b0);
  const b1 = Math.min(h.yM + halfY, r.b1);
  return a1 > a0 && b1 > b0 ? { ...r, a0, a1, b0, b1 } : null;
}

/** Narrower pieces of a spot are left to their column [m]: a hole as thin as rounding has no view of anything. */
const leastPieceM = 1e-3;

/** Carve the basking spot out of the floor under the main heater, where that hangs free or on the ceiling. */
function withSpots(enclosure: Enclosure, patches: readonly Patch[], edgeM: readonly number[]): Patch[] {
  const { lengthM: L, depthM: D } = enclosure.box;
  let out = [...patches];
  enclosure.heaters.forEach((h, heater) => {
    if (h.kind === 'heat-mat' || heater !== mainHeater(enclosure)) return;
    const side = Math.min(spotSideM, L / 3, D / 2);
    const a0 = Math.min(Math.max(h.xM - side / 2, 0), L - side);
    const b0 = Math.min(Math.max(h.yM - side / 2, 0), D - side);
    const rect: Rect = { axis: 'z', atM: 0, a0, a1: a0 + side, b0, b1: b0 + side };
    out = out.map((p) => {
      if (p.facing !== 'floor' || p.role !== 'plain') return p;
      const x = Math.min(p.rect.a1, rect.a1) - Math.max(p.rect.a0, rect.a0);
      const y = Math.min(p.rect.b1, rect.b1) - Math.max(p.rect.b0, rect.b0);
      if (x < leastPieceM || y <= 0) return p;
      const hole = { ...rect, a0: Math.max(p.rect.a0, rect.a0), a1: Math.min(p.rect.a1, rect.a1) };
      const share = Math.max(0.02, p.share - (x * y) / rectArea(p.rect));
      return { ...p, share, holes: [...(p.holes ?? []), hole], areaM2: rectArea(p.rect) * share };
    });
    for (let column = 0; column < edgeM.length - 1; column++) {
      const from = Math.max(rect.a0, edgeM[column]!);
      const to = Math.min(rect.a1, edgeM[column + 1]!);
      if (to - from < leastPieceM) continue;
      const part = { ...rect, a0: from, a1: to };
      out.push({
        panel: 'bottom',
        role: 'spot',
        facing: 'floor',
        rect: part,
        share: 1,
        areaM2: rectArea(part),
        column,
        layer: 0,
        heater: -1,
      });
    }
  });
  return out;
}

/** A patch as rectangles with weights: its own, less what is cut out of it. */
export function partsOf(p: Patch): readonly { readonly rect: Rect; readonly weight: number }[] {
  const { holes = [], rect, share } = p;
  if (holes.length === 0) return [{ rect, weight: share }];
  const left = rectArea(rect) - holes.reduce((s, h) => s + rectArea(h), 0);
  if (left < 1e-6) return [{ rect, weight: share }];
  const weight = p.areaM2 / left;
  return [{ rect, weight }, ...holes.map((h) => ({ rect: h, weight: -weight }))];
}

const middles = (edges: readonly number[]): number[] => edges.slice(1).map((e, i) => (e + edges[i]!) / 2);
const clamp01 = (v: number): number => Math.max(0, Math.min(1, v));
