// The floor of one day as a small regular grid of cells, each with how far it is from what the animal wants there.
// Straight lines between the simulated rows and columns. Leaves out: drawing (gradient-map.ts).
import type { ClimateNeeds } from '../husbandry/climate.ts';
import { kelvinOutside, wantedFloorAt } from '../husbandry/wanted-floor.ts';
import type { DayAnswer } from '../physics/answer.ts';
import type { DayPeriod } from '../physics/enclosure.ts';

/** Below this outside the band a cell still counts as wanted, and from this on it counts as far outside [K]; our choice. */
export const mapStepsK = { slack: 0.1, far: 3 } as const;

export type CellKind = 'cold2' | 'cold1' | 'wanted' | 'basking' | 'warm1' | 'warm2';

export interface Cell {
  readonly tempC: number;
  /** null when no animal is known. */
  readonly kind: CellKind | null;
}

export interface FloorMap {
  /** 24 rows, one an hour; cells from the left wall. */
  readonly rows: readonly (readonly Cell[])[];
  /** Mean heater power and room temperature of each hour. */
  readonly heaterW: readonly number[];
  readonly roomC: readonly number[];
}

export type Part = 'warm' | 'middle' | 'cool';
export interface Trouble {
  readonly part: Part;
  readonly kind: 'cold' | 'warm';
  readonly fromH: number;
  readonly hours: number;
}

const hoursADay = 24;

/** @param width cells along the box */
export function floorMap(
  day: DayAnswer,
  lengthM: number,
  period: DayPeriod,
  climate: ClimateNeeds | null,
  width: number,
): FloorMap {
  const hours = Array.from({ length: hoursADay }, (_, hour) => hour + 0.5);
  const rows = hours.map((hour) => {
    const isDay = hour >= period.startH && hour < period.endH;
    const across = day.columnXM.map((_, c) =>
      at(
        day.hours,
        day.floorC.map((row) => row[c] ?? Number.NaN),
        hour,
      ),
    );
    return Array.from({ length: width }, (_, cell): Cell => {
      const xM = ((cell + 0.5) / width) * lengthM;
      const tempC = at(day.columnXM, across, xM);
      const fromWarm = day.warmEnd === 'left' ? xM / lengthM : 1 - xM / lengthM;
      return { tempC, kind: climate && kindOf(tempC, fromWarm, isDay, climate) };
    });
  });
  return {
    rows,
    heaterW: hours.map((hour) => at(day.hours, day.heaterW, hour)),
    roomC: hours.map((hour) => at(day.hours, day.roomC, hour)),
  };
}

function kindOf(tempC: number, fromWarmFrac: number, isDay: boolean, climate: ClimateNeeds): CellKind {
  const outsideK = kelvinOutside(tempC, wantedFloorAt(fromWarmFrac, isDay, climate));
  if (outsideK <= -mapStepsK.far) return 'cold2';
  if (outsideK < -mapStepsK.slack) return 'cold1';
  if (outsideK >= mapStepsK.far) return 'warm2';
  if (outsideK > mapStepsK.slack) return 'warm1';
  return tempC >= climate.baskingSurfaceC.low ? 'basking' : 'wanted';
}

/** Value at x on the broken line through (xs, ys), level outside; xs rise. */
function at(xs: readonly number[], ys: readonly number[], x: number): number {
  const upper = xs.findIndex((value) => value >= x);
  if (upper === 0) return ys[0] ?? Number.NaN;
  if (upper < 0) return ys.at(-1) ?? Number.NaN;
  const [x0, x1, y0, y1] = [xs[upper - 1] ?? 0, xs[upper] ?? 0, ys[upper - 1] ?? Number.NaN, ys[upper] ?? Number.NaN];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** Longest stretches in which most of a third of the floor is too cold or too warm, the longest first. */
export function troublesOf(map: FloorMap, warmEnd: 'left' | 'right'): readonly Trouble[] {
  const parts: readonly Part[] = warmEnd === 'left' ? ['warm', 'middle', 'cool'] : ['cool', 'middle', 'warm'];
  const found: Trouble[] = [];
  parts.forEach((part, third) => {
    for (const kind of ['cold', 'warm'] as const) {
      const flags = map.rows.map((row) => {
        const cells = row.slice(Math.round((row.length * third) / 3), Math.round((row.length * (third + 1)) / 3));
        return 2 * cells.filter((cell) => cell.kind?.startsWith(kind)).length > cells.length;
      });
      const run = longestRun(flags);
      if (run.length > 0) found.push({ part, kind, fromH: run.start, hours: run.length });
    }
  });
  return found.sort((a, b) => b.hours - a.hours);
}

/** Longest run of true in a list that closes on itself: the night goes on after midnight. */
export function longestRun(flags: readonly boolean[]): { readonly start: number; readonly length: number } {
  if (flags.every(Boolean)) return { start: 0, length: flags.length };
  let best = { start: 0, length: 0 };
  flags.forEach((_, start) => {
    if (flags[start] !== true || flags.at(start - 1) === true) return;
    let length = 0;
    while (flags[(start + length) % flags.length]) length++;
    if (length > best.length) best = { start, length };
  });
  return best;
}
