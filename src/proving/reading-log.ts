// What readings look like once they are understood: times, and channels that each measure one quantity at one place.
// Times are wall-clock seconds of the home (seconds since 1970-01-01 00:00 on its own clock), so that the hour of the
// day is what the keeper's clock showed. Leaves out how a file becomes a log (understand-log.ts).
import type { PlaceId } from '../physics/answer.ts';

/** Places a keeper can put a sensor, and the room itself. */
export const logPlaces = [
  'basking-surface',
  'warm-air',
  'warm-hide',
  'cool-hide',
  'cool-air',
  'cool-floor',
  'perch',
  'probe',
  'room',
] as const satisfies readonly (PlaceId | 'room')[];
export type LogPlace = (typeof logPlaces)[number];

/** tempC [degC], rhPct [%], powerW: mean electrical power of all heaters together [W]. */
export type Quantity = 'tempC' | 'rhPct' | 'powerW';

export interface Channel {
  /** Stable within the log. */
  readonly id: string;
  /** As the file or the person called it. */
  readonly label: string;
  readonly quantity: Quantity;
  /** Null while nobody has said where the sensor lies. */
  readonly place: LogPlace | null;
  /** Instrument that measured it; null when not registered: taken as unchecked. */
  readonly instrumentId: string | null;
  /** Typed by a person beside a logger: single readings, judged for cover by the rule for hands. */
  readonly byHand?: boolean;
  /** One for each time of the log; null = no reading. */
  readonly values: readonly (number | null)[];
}

export interface ReadingLog {
  /** Ascending, wall-clock seconds. */
  readonly timesS: readonly number[];
  readonly channels: readonly Channel[];
  /** logger: taken by an instrument at an interval; hand: typed by a person. */
  readonly kind: 'logger' | 'hand';
}

/** Hour of the day, 0..24, of a wall-clock time. */
export const hourOfDay = (timeS: number): number => (((timeS % 86400) + 86400) % 86400) / 3600;

/** Usual time between two readings: the median [s]; 0 with fewer than two. */
export function usualIntervalS(timesS: readonly number[]): number {
  const gaps = timesS
    .slice(1)
    .map((t, i) => t - timesS[i]!)
    .sort((a, b) => a - b);
  return gaps.length === 0 ? 0 : gaps[Math.floor(gaps.length / 2)]!;
}

/** The log without what was typed beside a logger; a log of hand readings alone stays as it is. */
export const loggerPart = (log: ReadingLog): ReadingLog => {
  if (log.kind === 'hand' || !log.channels.some((c) => c.byHand)) return log;
  const channels = log.channels.filter((c) => !c.byHand);
  const keep = log.timesS.map((_, i) => channels.some((c) => typeof c.values[i] === 'number'));
  const kept = channels.map((c) => ({ ...c, values: c.values.filter((_, i) => keep[i]) }));
  return { kind: log.kind, timesS: log.timesS.filter((_, i) => keep[i]), channels: kept };
};

export const channelAt = (log: ReadingLog, place: LogPlace, quantity: Quantity): Channel | undefined =>
  log.channels.find((c) => c.place === place && c.quantity === quantity);

/** The log without readings outside [fromS, toS). */
export function logBetween(log: ReadingLog, fromS: number, toS: number): ReadingLog {
  const keep = log.timesS.map((t) => t >= fromS && t < toS);
  return {
    kind: log.kind,
    timesS: log.timesS.filter((_, i) => keep[i]),
    channels: log.channels.map((c) => ({ ...c, values: c.values.filter((_, i) => keep[i]) })),
  };
}
