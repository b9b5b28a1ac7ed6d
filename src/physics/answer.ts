// What a simulation answers: temperatures at the named places, watts, moisture, and its own balances.
import type { Fault } from '../shared/fault.ts';
import type { RoomDay } from './enclosure.ts';

export const placeIds = [
  'basking-surface',
  'basking-spot',
  'warm-air',
  'warm-hide',
  'cool-hide',
  'cool-air',
  'cool-floor',
  'perch',
  'probe',
  'front-glass',
  'hottest-reachable',
  'heater-surface',
] as const;
/** basking-surface: mean of the floor strip under the heater; basking-spot: its hottest hand-sized patch. */
export type PlaceId = (typeof placeIds)[number];

/** Seen from the heat: the end where the heater is, and the other one. */
export type WarmEnd = 'left' | 'right';

export interface Balance {
  /** Heat put in by heaters and sun [W for steady, J for a day]. */
  readonly heatIn: number;
  readonly heatOut: number;
  /** Change of stored heat [J]; 0 for steady. */
  readonly stored: number;
  /** (in - out - stored) / max(in, 1 unit). */
  readonly relative: number;
  /** Water put in by bowl, substrate, misting, less what left, less stored; relative to what moved, or over time
   *  to what the box held if that is more. */
  readonly waterInGPerH: number;
  readonly waterOutGPerH: number;
  readonly waterRelative: number;
}

/** A field of air and floor temperature, column by column from the left wall. */
export interface Columns {
  /** Centre of each column from the left wall [m]. */
  readonly xM: readonly number[];
  readonly floorC: readonly number[];
  /** airC[layer][column], bottom layer first. */
  readonly airC: readonly (readonly number[])[];
  readonly ceilingC: readonly number[];
  readonly rhPct: readonly number[];
}

export interface SteadyAnswer {
  readonly places: Readonly<Record<PlaceId, number | null>>;
  readonly operativeC: Readonly<Partial<Record<PlaceId, number>>>;
  readonly warmEnd: WarmEnd;
  readonly columns: Columns;
  /** Mean electrical power of each heater [W], same order as enclosure.heaters. */
  readonly heaterW: readonly number[];
  /** Share of the installed power in use, 0..1; 1 means flat out. */
  readonly dutyFrac: number;
  readonly roomC: number;
  readonly warmRhPct: number;
  readonly coolRhPct: number;
  readonly dewOnGlass: boolean;
  readonly glassDewMarginK: number;
  readonly evaporationGPerH: number;
  readonly condensationGPerH: number;
  readonly airChangePerH: number;
  readonly lossByPanelW: Readonly<Record<string, number>>;
  readonly balance: Balance;
  readonly iterations: number;
  /** Formulas used outside their published range, unusual input, non-convergence. */
  readonly notes: readonly Fault[];
}

export interface DayAnswer {
  /** Time of each row, hours since midnight of the day shown [h]. */
  readonly hours: readonly number[];
  readonly places: Readonly<Record<PlaceId, readonly number[] | null>>;
  readonly warmEnd: WarmEnd;
  /** Centre of each column from the left wall [m]. */
  readonly columnXM: readonly number[];
  /** floorC[row][column] and airC[row][column] (lowest layer). */
  readonly floorC: readonly (readonly number[])[];
  readonly airC: readonly (readonly number[])[];
  /** Mean power in each row, all heaters together [W]. */
  readonly heaterW: readonly number[];
  readonly roomC: readonly number[];
  readonly warmRhPct: readonly number[];
  readonly coolRhPct: readonly number[];
  readonly dewOnGlass: readonly boolean[];
  readonly kWhPerDay: number;
  readonly dutyFrac: number;
  readonly switchesPerDay: number;
  readonly balance: Balance;
  readonly roomDay: RoomDay;
  readonly notes: readonly Fault[];
}
