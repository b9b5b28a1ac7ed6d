// The numbers a drawing shows at one moment: of a steady answer, or of one hour of a simulated day.
import type { DayAnswer, PlaceId, SteadyAnswer, WarmEnd } from '../../physics/answer.ts';
import type { DayPeriod } from '../../physics/enclosure.ts';
import type { Interval } from '../../planning/plan-answer.ts';

export interface Readings {
  /** settled: what the box comes to in this room; hour: that hour of the simulated day. */
  readonly kind: 'settled' | 'hour';
  readonly hour: number | null;
  readonly isDay: boolean;
  readonly roomC: number;
  readonly heaterW: number;
  readonly warmEnd: WarmEnd;
  readonly places: Readonly<Partial<Record<PlaceId, number | null>>>;
  readonly interval: Readonly<Partial<Record<PlaceId, Interval>>>;
  readonly xM: readonly number[];
  readonly floorC: readonly number[];
  /** Bottom layer first. */
  readonly airC: readonly (readonly number[])[];
  readonly warmRhPct: number;
  readonly coolRhPct: number;
}

export function isDayAt(hour: number, period: DayPeriod): boolean {
  return hour >= period.startH && hour < period.endH;
}

export function readingsFromSteady(
  steady: SteadyAnswer,
  isDay: boolean,
  interval: Readonly<Partial<Record<PlaceId, Interval>>>,
): Readings {
  return {
    kind: 'settled',
    hour: null,
    isDay,
    roomC: steady.roomC,
    heaterW: steady.heaterW.reduce((sum, watts) => sum + watts, 0),
    warmEnd: steady.warmEnd,
    places: steady.places,
    interval,
    xM: steady.columns.xM,
    floorC: steady.columns.floorC,
    airC: steady.columns.airC,
    warmRhPct: steady.warmRhPct,
    coolRhPct: steady.coolRhPct,
  };
}

/** Index of the row of a day nearest to an hour. */
export function rowAtHour(day: DayAnswer, hour: number): number {
  let best = 0;
  for (let row = 1; row < day.hours.length; row++) {
    if (Math.abs((day.hours[row] ?? 0) - hour) < Math.abs((day.hours[best] ?? 0) - hour)) best = row;
  }
  return best;
}

export function readingsFromDay(day: DayAnswer, hour: number, period: DayPeriod): Readings {
  const row = rowAtHour(day, hour);
  const places: Partial<Record<PlaceId, number | null>> = {};
  for (const [place, series] of Object.entries(day.places)) places[place as PlaceId] = series?.[row] ?? null;
  return {
    kind: 'hour',
    hour,
    isDay: isDayAt(day.hours[row] ?? hour, period),
    roomC: day.roomC[row] ?? Number.NaN,
    heaterW: day.heaterW[row] ?? Number.NaN,
    warmEnd: day.warmEnd,
    places,
    interval: {},
    xM: day.columnXM,
    floorC: day.floorC[row] ?? [],
    airC: [day.airC[row] ?? []],
    warmRhPct: day.warmRhPct[row] ?? Number.NaN,
    coolRhPct: day.coolRhPct[row] ?? Number.NaN,
  };
}

/** Share of the way from the warm end wall, 0..1, of a place x from the left. */
export function fromWarmFrac(xM: number, lengthM: number, warmEnd: WarmEnd): number {
  const share = xM / lengthM;
  return warmEnd === 'left' ? share : 1 - share;
}
