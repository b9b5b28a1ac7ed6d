// Live readings: sources that speak by HTTP or by a message broker, what they said, and what is known of them now.
// A source that has been silent for three of its intervals is unknown; its last value is never shown as the present one.
import type { LogPlace, Quantity } from '../proving/reading-log.ts';
import { instrumentsOf } from '../records/instruments.ts';
import {
  insertLiveReadings,
  insertLiveSource,
  type LiveReading,
  type LiveSource,
  liveSourceBySecret,
  liveSourcesOf,
  newestLiveReading,
} from '../records/live-sources.ts';
import type { Db } from '../records/schema.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Clock, DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { readingFaults } from './reading-faults.ts';
import { newSecret, secretHash } from './secrets.ts';
import { writerOf } from './take-reading-file.ts';

export interface NewSource {
  readonly label: string;
  readonly place: LogPlace;
  readonly quantity: Quantity;
  readonly intervalS: number;
  readonly topic: string | null;
  readonly valueKey: string | null;
  readonly instrumentId: string | null;
}

/** Adds a source. The secret is told once. Faults: "ENQUIRY_UNKNOWN", "INSTRUMENT_UNKNOWN". */
export async function addLiveSource(
  desk: DeskContext,
  enquiryId: string,
  source: NewSource,
): Promise<Result<{ readonly id: string; readonly secret: string }>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  if (source.instrumentId !== null) {
    const known = await instrumentsOf(desk.db, desk.actor.branchId);
    if (!known.some((i) => i.id === source.instrumentId))
      return bad([readingFaults.instrumentUnknown(source.instrumentId)]);
  }
  const secret = newSecret();
  const id = await insertLiveSource(desk.db, { ...source, enquiryId }, secretHash(secret), writerOf(desk));
  return good({ id, secret });
}

export interface SaidReading {
  readonly value: number;
  /** ISO time; measured now when it is missing. */
  readonly at?: string;
}

/** Readings of a source that knows its secret. Faults: "LIVE_SOURCE", "LIVE_VALUE", "LIVE_TIME". */
export async function hearSource(
  db: Db,
  clock: Clock,
  secret: string,
  readings: readonly SaidReading[],
): Promise<Result<{ readonly written: number }>> {
  const source = await liveSourceBySecret(db, secretHash(secret));
  if (source === undefined) return bad([readingFaults.sourceUnknown]);
  return await keepSaid(db, clock, source, readings);
}

/** Limits of what a sensor in a home can say [degC, %, W]. */
export const quantityLimits: Readonly<Record<Quantity, readonly [number, number]>> = {
  tempC: [-30, 110],
  rhPct: [0, 100.5],
  powerW: [0, 5000],
};
const oldestMs = 30 * 86_400_000;
const aheadMs = 120_000;

export async function keepSaid(
  db: Db,
  clock: Clock,
  source: LiveSource,
  readings: readonly SaidReading[],
): Promise<Result<{ readonly written: number }>> {
  const now = clock.now();
  const [low, high] = quantityLimits[source.quantity];
  const faults = readings.flatMap((r) => {
    if (!Number.isFinite(r.value) || r.value < low || r.value > high)
      return [readingFaults.liveValue(String(r.value).slice(0, 40))];
    const ms = r.at === undefined ? now.getTime() : Date.parse(r.at);
    const usable = ms <= now.getTime() + aheadMs && ms >= now.getTime() - oldestMs;
    return usable ? [] : [readingFaults.liveTime(String(r.at).slice(0, 40))];
  });
  if (faults.length > 0) return bad(faults);
  const kept: LiveReading[] = readings.map((r) => ({
    measuredAt: r.at === undefined ? now : new Date(r.at),
    value: r.value,
  }));
  return good({ written: await insertLiveReadings(db, source.id, kept, now) });
}

export interface LiveState {
  readonly id: string;
  readonly label: string;
  readonly place: LogPlace;
  readonly quantity: Quantity;
  /** Null unless fresh. */
  readonly value: number | null;
  readonly state: 'fresh' | 'stale' | 'never';
  /** When it last spoke. */
  readonly lastAt: string | null;
  readonly intervalS: number;
}

/** Silent for more than this many intervals is unknown. */
const silentIntervals = 3;

/** What each source of a home says at this moment. Faults: "ENQUIRY_UNKNOWN". */
export async function liveStates(desk: DeskContext, enquiryId: string): Promise<Result<LiveState[]>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const now = desk.clock.now().getTime();
  const sources = await liveSourcesOf(desk.db, enquiryId);
  const states = sources.map(async (s): Promise<LiveState> => {
    const last = await newestLiveReading(desk.db, s.id);
    const fresh = last !== undefined && now - last.measuredAt.getTime() <= silentIntervals * s.intervalS * 1000;
    return {
      id: s.id,
      label: s.label,
      place: s.place,
      quantity: s.quantity,
      value: fresh ? last.value : null,
      state: last === undefined ? 'never' : fresh ? 'fresh' : 'stale',
      lastAt: last?.measuredAt.toISOString() ?? null,
      intervalS: s.intervalS,
    };
  });
  return good(await Promise.all(states));
}
