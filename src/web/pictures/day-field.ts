// The floor of the box over one day as a fine regular grid: what the gradient map colours and contours.
// Straight-line interpolation between the simulated rows and columns; adds nothing to them.
import type { DayAnswer } from '../../physics/answer.ts';
import type { DayPeriod } from '../../physics/enclosure.ts';
import { fromWarmFrac, isDayAt } from './readings.ts';
import { kelvinOutside, type Level, levelOf, type WantedClimate, wantedAt } from './wanted.ts';

export interface DayField {
  readonly rows: number;
  readonly columns: number;
  /** tempC[row * columns + column]; row 0 begins at midnight, column 0 at the left wall. */
  readonly tempC: Float64Array;
  readonly level: readonly Level[];
}

/** Where `at` falls in a rising list: index below and share of the way to the next. */
function bracket(list: readonly number[], at: number): { index: number; share: number } {
  const last = list.length - 1;
  if (last < 1 || at <= (list[0] ?? 0)) return { index: 0, share: 0 };
  if (at >= (list[last] ?? 0)) return { index: last - 1, share: 1 };
  let index = 0;
  while (index < last - 1 && (list[index + 1] ?? 0) <= at) index++;
  const from = list[index] ?? 0;
  const to = list[index + 1] ?? from;
  return { index, share: to > from ? (at - from) / (to - from) : 0 };
}

const mix = (a: number, b: number, share: number): number => a + (b - a) * share;

export function dayField(
  day: DayAnswer,
  lengthM: number,
  period: DayPeriod,
  climate: WantedClimate | null,
  rows = 96,
  columns = 48,
): DayField {
  const tempC = new Float64Array(rows * columns);
  const level: Level[] = new Array(rows * columns).fill(0);
  const across = Array.from({ length: columns }, (_, c) => bracket(day.columnXM, ((c + 0.5) / columns) * lengthM));
  for (let r = 0; r < rows; r++) {
    const hour = ((r + 0.5) / rows) * 24;
    const down = bracket(day.hours, hour);
    const upper = day.floorC[down.index] ?? [];
    const lower = day.floorC[down.index + 1] ?? upper;
    for (let c = 0; c < columns; c++) {
      const { index, share } = across[c] ?? { index: 0, share: 0 };
      const above = mix(upper[index] ?? Number.NaN, upper[index + 1] ?? upper[index] ?? Number.NaN, share);
      const below = mix(lower[index] ?? Number.NaN, lower[index + 1] ?? lower[index] ?? Number.NaN, share);
      const value = mix(above, below, down.share);
      tempC[r * columns + c] = value;
      if (climate) {
        const frac = fromWarmFrac(((c + 0.5) / columns) * lengthM, lengthM, day.warmEnd);
        level[r * columns + c] = levelOf(kelvinOutside(value, wantedAt(frac, isDayAt(hour, period), climate)));
      }
    }
  }
  return { rows, columns, tempC, level };
}

/** SVG path of all cells for which `pick` is true, merged along each row; one unit is one cell. */
export function cellPath(field: DayField, pick: (level: Level) => boolean): string {
  let path = '';
  for (let r = 0; r < field.rows; r++) {
    let start = -1;
    for (let c = 0; c <= field.columns; c++) {
      const inside = c < field.columns && pick(field.level[r * field.columns + c] ?? 0);
      if (inside && start < 0) start = c;
      if (!inside && start >= 0) {
        path += `M${start} ${r}H${c}V${r + 1}H${start}Z`;
        start = -1;
      }
    }
  }
  return path;
}

export type Part = 'warm' | 'middle' | 'cool';
export interface Trouble {
  readonly part: Part;
  readonly kind: 'cold' | 'warm';
  readonly fromH: number;
  readonly toH: number;
  readonly hours: number;
}

/** Stretches of the day in which most of a third of the floor is too cold or too warm, the longest first. */
export function troublesOf(field: DayField, warmEnd: 'left' | 'right'): readonly Trouble[] {
  const third = field.columns / 3;
  const parts: readonly Part[] = warmEnd === 'left' ? ['warm', 'middle', 'cool'] : ['cool', 'middle', 'warm'];
  const found: Trouble[] = [];
  const hoursPerRow = 24 / field.rows;
  parts.forEach((part, index) => {
    for (const kind of ['cold', 'warm'] as const) {
      const bad: boolean[] = [];
      for (let r = 0; r < field.rows; r++) {
        let count = 0;
        for (let c = Math.round(index * third); c < Math.round((index + 1) * third); c++) {
          const level = field.level[r * field.columns + c] ?? 0;
          if (kind === 'cold' ? level < 0 : level > 0) count++;
        }
        bad.push(count > third / 2);
      }
      const run = longestRun(bad);
      if (run.length > 0) {
        const fromH = run.start * hoursPerRow;
        found.push({
          part,
          kind,
          fromH,
          toH: (fromH + run.length * hoursPerRow) % 24,
          hours: run.length * hoursPerRow,
        });
      }
    }
  });
  return found.sort((a, b) => b.hours - a.hours);
}

/** Longest run of true in a list that closes on itself (the day goes on after midnight). */
export function longestRun(flags: readonly boolean[]): { start: number; length: number } {
  if (flags.every(Boolean)) return { start: 0, length: flags.length };
  let best = { start: 0, length: 0 };
  const count = flags.length;
  for (let start = 0; start < count; start++) {
    if (!flags[start] || flags[(start - 1 + count) % count]) continue;
    let length = 0;
    while (flags[(start + length) % count]) length++;
    if (length > best.length) best = { start, length };
  }
  return best;
}
