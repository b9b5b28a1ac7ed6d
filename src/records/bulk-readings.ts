// Many live readings at once: as quick as the database takes them in, each still written once.

import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';

export interface BulkReading {
  readonly sourceId: string;
  readonly measuredAt: Date;
  readonly value: number;
}

export interface BulkTaken {
  /** How many came. */
  readonly read: number;
  /** How many were new. */
  readonly written: number;
  /** Whether they were kept. */
  readonly kept: boolean;
}

/** Lines are sent in parcels of about this many characters. */
const parcelChars = 64_000;

/** All or nothing. @param mayKeep  asked once when all have come: false takes everything back */
export async function takeBulkReadings(
  pool: pg.Pool,
  readings: AsyncIterable<BulkReading> | Iterable<BulkReading>,
  receivedAt: Date,
  mayKeep: () => boolean = () => true,
): Promise<BulkTaken> {
  const client = await pool.connect();
  try {
    await client.query('begin');
    await client.query(
      'create temp table incoming (source_id uuid, measured_at timestamptz, value double precision) on commit drop',
    );
    const into = client.query(copyFrom('copy incoming from stdin'));
    await pipeline(Readable.from(linesOf(readings), { objectMode: false }), into);
    if (!mayKeep()) {
      await client.query('rollback');
      return { read: into.rowCount ?? 0, written: 0, kept: false };
    }
    await client.query(`select make_reading_month(month) from (
      select distinct date_trunc('month', measured_at at time zone 'UTC') at time zone 'UTC' as month from incoming) months`);
    const done = await client.query(
      `insert into live_reading (source_id, measured_at, value, received_at)
       select source_id, measured_at, value, $1 from incoming on conflict do nothing`,
      [receivedAt],
    );
    await client.query('commit');
    return { read: into.rowCount ?? 0, written: done.rowCount ?? 0, kept: true };
  } catch (error) {
    await client.query('rollback').catch(() => undefined);
    throw error;
  } finally {
    client.release();
  }
}

async function* linesOf(readings: AsyncIterable<BulkReading> | Iterable<BulkReading>): AsyncIterable<string> {
  let parcel = '';
  for await (const one of readings) {
    parcel += `${one.sourceId}\t${one.measuredAt.toISOString()}\t${one.value}\n`;
    if (parcel.length >= parcelChars) {
      yield parcel;
      parcel = '';
    }
  }
  if (parcel !== '') yield parcel;
}
