// Where and when is the floor too cold, as wanted or too warm for this animal? The day of a plan as a coarse grid for a
// printed map. Straight lines between the simulated rows and columns; adds nothing to them.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import { kelvinOutside, wantedFloorAt } from '../husbandry/wanted-floor.ts';
import type { DayAnswer } from '../physics/answer.ts';
import type { DayPeriod } from '../physics/enclosure.ts';
import { isDayAt } from '../physics/room-day.ts';

export interface FloorLevels {
  readonly rows: number;
  readonly columns: number;
  /** Kelvin outside the wanted band at [row * columns + column]; row 0 begins at midnight, column 0 at the left wall. */
  readonly outsideK: readonly number[];
  /** Share of the cells that are as wanted, 0..1. */
  readonly wantedFrac: number;
}

/** Less than this outside the band still counts as wanted [K]; our choice. */
export const floorSlackK = 0.1;

export function floorLevels(
  day: DayAnswer,
  lengthM: number,
  period: DayPeriod,
  climate: ClimateNeeds,
  rows = 48,
  columns = 36,
): FloorLevels {
  const outsideK: number[] = [];
  for (let r = 0; r < rows; r++) {
    const hour = ((r + 0.5) / rows) * 24;
    const down = between(day.hours, hour);
    for (let c = 0; c < columns; c++) {
      const xM = ((c + 0.5) / columns) * lengthM;
      const across = between(day.columnXM, xM);
      const row = (index: number): number => mix(day.floorC[index] ?? [], across);
      const tempC = row(down.index) + down.share * (row(down.index + 1) - row(down.index));
      const share = xM / lengthM;
      const fromWarmFrac = day.warmEnd === 'left' ? share : 1 - share;
      outsideK.push(kelvinOutside(tempC, wantedFloorAt(fromWarmFrac, isDayAt(period, hour), climate)));
    }
  }
  const wanted = outsideK.filter((k) => Math.abs(k) <= floorSlackK).length;
  return { rows, columns, outsideK, wantedFrac: wanted / outsideK.length };
}

interface Between {
  readonly index: number;
  readonly share: number;
}

/** Where `at` falls in a rising list: index below, and share of the way to the next; level beyond its ends. */
function between(list: readonly number[], at: number): Between {
  const last = list.length - 1;
  if (last < 1 || at <= list[0]!) return { index: 0, share: 0 };
  if (at >= list[last]!) return { index: last - 1, share: 1 };
  const index = Math.max(0, list.findIndex((value) => value > at) - 1);
  const [from, to] = [list[index]!, list[index + 1]!];
  return { index, share: (at - from) / (to - from) };
}

function mix(values: readonly number[], { index, share }: Between): number {
  const from = values[index] ?? Number.NaN;
  return from + share * ((values[index + 1] ?? from) - from);
}
