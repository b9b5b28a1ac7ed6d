// Lines of equal temperature through a regular grid, by marching squares, chained into paths with a place for the label.
import type { DayField } from './day-field.ts';

export interface Isoline {
  readonly tempC: number;
  /** SVG path in cells, through the centres of the grid. */
  readonly path: string;
  /** A point on the longest piece, for the label. */
  readonly label: { readonly x: number; readonly y: number };
  /** Length of the longest piece in cells. */
  readonly reach: number;
}

type Point = readonly [number, number];

/** All line pieces of one temperature as point pairs. */
function pieces(field: DayField, tempC: number): (readonly [Point, Point])[] {
  const found: (readonly [Point, Point])[] = [];
  const at = (r: number, c: number): number => field.tempC[r * field.columns + c] ?? Number.NaN;
  for (let r = 0; r < field.rows - 1; r++) {
    for (let c = 0; c < field.columns - 1; c++) {
      const [a, b, d, e] = [at(r, c), at(r, c + 1), at(r + 1, c + 1), at(r + 1, c)];
      const cut = (from: number, to: number, x0: number, y0: number, x1: number, y1: number): Point | null => {
        if (from < tempC === to < tempC) return null;
        const share = (tempC - from) / (to - from);
        return [c + 0.5 + x0 + (x1 - x0) * share, r + 0.5 + y0 + (y1 - y0) * share];
      };
      const cuts = [cut(a, b, 0, 0, 1, 0), cut(b, d, 1, 0, 1, 1), cut(d, e, 1, 1, 0, 1), cut(e, a, 0, 1, 0, 0)];
      const met = cuts.filter((point): point is Point => point !== null);
      for (let i = 0; i + 1 < met.length; i += 2) found.push([met[i] as Point, met[i + 1] as Point]);
    }
  }
  return found;
}

const key = ([x, y]: Point): string => `${x.toFixed(3)},${y.toFixed(3)}`;

/** Joins pieces that share an end into chains. */
function chains(all: readonly (readonly [Point, Point])[]): Point[][] {
  const ends = new Map<string, number[]>();
  all.forEach(([from, to], index) => {
    for (const end of [key(from), key(to)]) ends.set(end, [...(ends.get(end) ?? []), index]);
  });
  const used = new Set<number>();
  const grow = (chain: Point[]): void => {
    for (;;) {
      const tip = chain[chain.length - 1] as Point;
      const next = (ends.get(key(tip)) ?? []).find((index) => !used.has(index));
      if (next === undefined) return;
      used.add(next);
      const [from, to] = all[next] as readonly [Point, Point];
      chain.push(key(from) === key(tip) ? to : from);
    }
  };
  const result: Point[][] = [];
  all.forEach(([from, to], index) => {
    if (used.has(index)) return;
    used.add(index);
    const chain: Point[] = [from, to];
    grow(chain);
    chain.reverse();
    grow(chain);
    result.push(chain);
  });
  return result;
}

export function isolines(field: DayField, temperaturesC: readonly number[]): readonly Isoline[] {
  const lines: Isoline[] = [];
  for (const tempC of temperaturesC) {
    const all = chains(pieces(field, tempC));
    const longest = all.reduce<Point[]>((best, chain) => (chain.length > best.length ? chain : best), []);
    if (longest.length < 6) continue;
    const [x, y] = longest[Math.floor(longest.length / 2)] as Point;
    const path = all
      .map((chain) => `M${chain.map(([px, py]) => `${px.toFixed(2)} ${py.toFixed(2)}`).join('L')}`)
      .join('');
    lines.push({ tempC, path, label: { x, y }, reach: longest.length });
  }
  return lines;
}

/** Whole temperatures between the least and the most of the field, every `stepK`. */
export function contourTemperatures(field: DayField, stepK: number): readonly number[] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of field.tempC) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const list: number[] = [];
  for (let at = Math.ceil(least / stepK) * stepK; at <= most && list.length < 40; at += stepK) list.push(at);
  return list;
}
