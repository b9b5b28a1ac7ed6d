// The rows of live sources and what they said. Only hashes of secrets are kept.
import { randomUUID } from 'node:crypto';
import type { LogPlace, Quantity } from '../proving/reading-log.ts';
import type { InstrumentWriter } from './instruments.ts';
import { ensureReadingMonths } from './reading-months.ts';
import type { Db } from './schema.ts';

export interface LiveSource {
  readonly id: string;
  readonly enquiryId: string;
  readonly label: string;
  readonly place: LogPlace;
  readonly quantity: Quantity;
  readonly intervalS: number;
  readonly topic: string | null;
  readonly valueKey: string | null;
  readonly instrumentId: string | null;
}

const columns = [
  'id',
  'enquiry_id as enquiryId',
  'label',
  'place',
  'quantity',
  'interval_s as intervalS',
  'topic',
  'value_key as valueKey',
  'instrument_id as instrumentId',
] as const;

export async function insertLiveSource(
  db: Db,
  source: Omit<LiveSource, 'id'>,
  secretSha256: string,
  writer: InstrumentWriter,
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('live_source')
    .values({
      id,
      enquiry_id: source.enquiryId,
      label: source.label,
      place: source.place,
      quantity: source.quantity,
      interval_s: source.intervalS,
      secret_sha256: secretSha256,
      topic: source.topic,
      value_key: source.valueKey,
      instrument_id: source.instrumentId,
      ...writer,
    })
    .execute();
  return id;
}

export async function liveSourceBySecret(db: Db, secretSha256: string): Promise<LiveSource | undefined> {
  const row = await db
    .selectFrom('live_source')
    .select(columns)
    .where('secret_sha256', '=', secretSha256)
    .executeTakeFirst();
  return row as LiveSource | undefined;
}

export async function liveSourcesOf(db: Db, enquiryId: string): Promise<LiveSource[]> {
  return (await db
    .selectFrom('live_source')
    .select(columns)
    .where('enquiry_id', '=', enquiryId)
    .orderBy('at')
    .orderBy('id')
    .execute()) as LiveSource[];
}

/** Sources that listen to a topic of a broker; all of them when none is named. */
export async function liveSourcesWithTopic(db: Db, topic?: string): Promise<LiveSource[]> {
  const all = db.selectFrom('live_source').select(columns).where('topic', 'is not', null);
  return (await (topic === undefined ? all : all.where('topic', '=', topic)).execute()) as LiveSource[];
}

export interface LiveReading {
  readonly measuredAt: Date;
  readonly value: number;
}

/** @returns how many were new */
export async function insertLiveReadings(
  db: Db,
  sourceId: string,
  readings: readonly LiveReading[],
  receivedAt: Date,
): Promise<number> {
  if (readings.length === 0) return 0;
  await ensureReadingMonths(
    db,
    readings.map((r) => r.measuredAt),
  );
  const done = await db
    .insertInto('live_reading')
    .values(
      readings.map((r) => ({
        source_id: sourceId,
        measured_at: r.measuredAt,
        value: r.value,
        received_at: receivedAt,
      })),
    )
    .onConflict((clash) => clash.columns(['source_id', 'measured_at']).doNothing())
    .executeTakeFirst();
  return Number(done.numInsertedOrUpdatedRows ?? 0n);
}

/** In order of time, from a moment on. */
export async function liveReadingsOf(db: Db, sourceId: string, from: Date): Promise<LiveReading[]> {
  return await db
    .selectFrom('live_reading')
    .select(['measured_at as measuredAt', 'value'])
    .where('source_id', '=', sourceId)
    .where('measured_at', '>=', from)
    .orderBy('measured_at')
    .execute();
}

export async function newestLiveReading(db: Db, sourceId: string): Promise<LiveReading | undefined> {
  return await db
    .selectFrom('live_reading')
    .select(['measured_at as measuredAt', 'value'])
    .where('source_id', '=', sourceId)
    .orderBy('measured_at', 'desc')
    .limit(1)
    .executeTakeFirst();
}
