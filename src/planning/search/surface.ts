// How one version of a box answers to watts at the moments that decide a plan: a straight line between two solved states.
// Solved exactly where the thermostat holds the wanted warmth; the line serves heaters that are too weak for that and
// thermostats whose band shifts the power a little. Error against solving each kit: surface.test.ts.
import type { PlaceId } from '../../physics/answer.ts';

/** What is read off each state, in this order. Temperatures in degC. */
export const linePlaces = [
  'basking-surface',
  'warm-hide',
  'warm-air',
  'cool-hide',
  'cool-air',
  'hottest-reachable',
] as const satisfies readonly PlaceId[];
export const lineExtras = [
  'coolRhPct',
  'glassDewMarginK',
  'evaporationGPerH',
  'probeC',
  'otherProbe0C',
  'otherProbe1C',
] as const;
export type LineQuantity = (typeof linePlaces)[number] | (typeof lineExtras)[number];
export const lineQuantities: readonly LineQuantity[] = [...linePlaces, ...lineExtras];
const indexOf = Object.fromEntries(lineQuantities.map((q, i) => [q, i])) as Readonly<Record<LineQuantity, number>>;

/** States at two powers; NaN stands for a place that is not there (no hide). */
export interface WattLine {
  readonly roomC: number;
  readonly lowW: number;
  readonly highW: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export interface MemberSurface {
  /** True power over rated power in this version. */
  readonly heaterPower: number;
  /** The strongest heater reaches the wanted basking surface; else the upper state of the day is that heater flat out. */
  readonly reaches: boolean;
  /** Winter day: the upper state holds the wanted basking surface, or is the strongest heater flat out. */
  readonly day: WattLine;
  /** Coldest night, with the heater that works at night. */
  readonly night: WattLine;
  /** Hottest day, the basking surface held there too (who can trim does so in every season); the winter day's slopes. */
  readonly summer: WattLine;
  /** Hottest night. */
  readonly summerNight: WattLine;
  /** Mid-season day, the basking surface held anew; the winter day's slopes. */
  readonly mid: WattLine;
  readonly midNight: WattLine;
}

/** Value at a power [W]. */
export function onLine(line: WattLine, quantity: LineQuantity, powerW: number): number {
  const i = indexOf[quantity];
  const a = line.low[i] ?? Number.NaN;
  const b = line.high[i] ?? Number.NaN;
  return a + ((powerW - line.lowW) / (line.highW - line.lowW)) * (b - a);
}

/** Rise of a quantity for each watt. */
export function perWatt(line: WattLine, quantity: LineQuantity): number {
  const i = indexOf[quantity];
  return ((line.high[i] ?? Number.NaN) - (line.low[i] ?? Number.NaN)) / (line.highW - line.lowW);
}

/** Power at which a proportional thermostat and its probe agree [W]: duty = 1/2 + (set - probe)/band, clipped.
 *  @param ratedW power of the heater at full duty, tolerance included */
export function heldPowerW(line: WattLine, setC: number, bandK: number, ratedW: number): number {
  if (ratedW <= 0) return 0;
  const slope = perWatt(line, 'probeC');
  const off = onLine(line, 'probeC', 0);
  const duty = (0.5 + (setC - off) / bandK) / (1 + (slope * ratedW) / bandK);
  return ratedW * Math.max(0, Math.min(1, duty));
}
