// Was each need held by the readings, with what the instrument may be off? Held: inside by at least its error. Failed:
// outside by at least its error. Between the two nothing is proven.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { DayPeriod } from '../../physics/enclosure.ts';
import { isDayAt } from '../../physics/room-day.ts';
import { settleAfterH, sinceChangeH } from '../calibration/settled-windows.ts';
import { hourOfDay, type LogPlace, type Quantity, type ReadingLog } from '../reading-log.ts';

export type ProofNeedId = 'basking-surface' | 'night-warmth' | 'cool-end' | 'hottest-surface' | 'humidity';

export interface ReadNeed {
  readonly id: ProofNeedId;
  readonly state: 'held' | 'failed' | 'open' | 'not-read';
  readonly place: LogPlace | null;
  readonly quantity: Quantity;
  readonly low: number | null;
  readonly high: number | null;
  /** Worst settled value, corrected; null when not read. */
  readonly worst: number | null;
  /** Which side is nearer to being passed. */
  readonly side: 'low' | 'high';
  /** Inside the limit by this much; negative = outside. */
  readonly margin: number | null;
  /** Error of the instrument, half-width of 95 %. */
  readonly error: number;
  readonly checked: boolean;
}

export interface Trusted {
  readonly error: number;
  readonly checked: boolean;
}

interface Asked {
  readonly id: ProofNeedId;
  readonly places: readonly LogPlace[];
  readonly quantity: Quantity;
  readonly when: 'day' | 'night' | 'always';
  /** level: the mean of each settled day or night; extreme: the worst half hour. */
  readonly by: 'level' | 'extreme';
  readonly low: number | null;
  readonly high: number | null;
}

const askedOf = (climate: ClimateNeeds): Asked[] => [
  {
    id: 'basking-surface',
    places: ['basking-surface'],
    quantity: 'tempC',
    when: 'day',
    by: 'level',
    low: climate.baskingSurfaceC.low,
    high: climate.baskingSurfaceC.high,
  },
  {
    id: 'night-warmth',
    places: ['warm-hide', 'warm-air', 'basking-surface'],
    quantity: 'tempC',
    when: 'night',
    by: 'extreme',
    low: climate.nightMinC.low,
    high: null,
  },
  {
    id: 'cool-end',
    places: ['cool-air', 'cool-hide', 'cool-floor'],
    quantity: 'tempC',
    when: 'day',
    by: 'level',
    low: climate.coolAirC.low,
    high: climate.coolAirC.high,
  },
  {
    id: 'hottest-surface',
    places: ['basking-surface'],
    quantity: 'tempC',
    when: 'always',
    by: 'extreme',
    low: null,
    high: climate.reachableMaxC.alarm,
  },
  {
    id: 'humidity',
    places: ['cool-air', 'warm-air', 'warm-hide'],
    quantity: 'rhPct',
    when: 'always',
    by: 'level',
    low: climate.rhPct.low,
    high: climate.rhPct.high,
  },
];

/** Judge every need by a corrected log. Where several instruments read a place, one that fails decides, else the one
 *  with the smallest error; our choice: a rough reading cannot weaken a good one, but can contradict it. @param trust error of a channel by its index */
export function readNeeds(
  log: ReadingLog,
  climate: ClimateNeeds,
  day: DayPeriod,
  lagH: number,
  trust: (channel: number) => Trusted,
): ReadNeed[] {
  return askedOf(climate).map((asked): ReadNeed => {
    for (const place of asked.places) {
      const here = log.channels.flatMap((c, i) =>
        c.place === place && c.quantity === asked.quantity
          ? [needBy(log, i, asked, levelsOf(log, i, asked, day, lagH), trust(i))]
          : [],
      );
      const read = here.filter((n) => n !== null).sort((a, b) => a.error - b.error);
      const first = read.find((n) => n.state === 'failed') ?? read[0];
      if (first !== undefined) return first;
    }
    return notRead(asked);
  });
}

const notRead = (asked: Asked): ReadNeed => ({
  id: asked.id,
  quantity: asked.quantity,
  low: asked.low,
  high: asked.high,
  state: 'not-read',
  place: null,
  worst: null,
  side: asked.low === null ? 'high' : 'low',
  margin: null,
  error: Number.NaN,
  checked: false,
});

/** A need by one channel; null when it has no settled reading. */
function needBy(
  log: ReadingLog,
  channel: number,
  asked: Asked,
  values: readonly number[],
  { error, checked }: Trusted,
): ReadNeed | null {
  if (values.length === 0) return null;
  const { id, quantity, low, high } = asked;
  const below = low === null ? Number.POSITIVE_INFINITY : Math.min(...values) - low;
  const above = high === null ? Number.POSITIVE_INFINITY : high - Math.max(...values);
  const side = below <= above ? 'low' : 'high';
  const margin = Math.min(below, above);
  const worst = side === 'low' ? Math.min(...values) : Math.max(...values);
  const state = margin >= error ? 'held' : margin <= -error ? 'failed' : 'open';
  return { id, quantity, low, high, state, place: log.channels[channel]!.place, worst, side, margin, error, checked };
}

/** Means of each settled day or night, or of each half hour. */
function levelsOf(log: ReadingLog, channel: number, asked: Asked, day: DayPeriod, lagH: number): number[] {
  const wait = asked.by === 'level' ? Math.min(2, settleAfterH(lagH)) : Math.min(1, settleAfterH(lagH));
  const buckets = new Map<number, { sum: number; n: number }>();
  log.timesS.forEach((t, i) => {
    const v = log.channels[channel]!.values[i];
    const hour = hourOfDay(t);
    if (v === null || v === undefined) return;
    if (asked.when !== 'always' && isDayAt(day, hour) !== (asked.when === 'day')) return;
    if (asked.when !== 'always' && sinceChangeH(day, hour) < wait) return;
    const key = asked.by === 'level' ? Math.floor((t - day.startH * 3600) / 86400) : Math.floor(t / 1800);
    const b = buckets.get(key) ?? { sum: 0, n: 0 };
    b.sum += v;
    b.n++;
    buckets.set(key, b);
  });
  return [...buckets.values()].map((b) => b.sum / b.n);
}
