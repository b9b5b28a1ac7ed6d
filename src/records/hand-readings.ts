// The rows of readings that somebody typed, and whether each counts. Leaves out what they mean (proving/hand-readings.ts).
import { randomUUID } from 'node:crypto';
import type { HandReading } from '../proving/hand-readings.ts';
import type { InstrumentWriter } from './instruments.ts';
import type { Db } from './schema.ts';

export interface NewHandReading extends HandReading {
  readonly enquiryId: string;
  readonly linkId: string | null;
  /** Chosen by the sender: sent twice, written once. */
  readonly clientKey: string;
}

/** @returns whether it was new */
export async function insertHandReading(db: Db, reading: NewHandReading, writer: InstrumentWriter): Promise<boolean> {
  const done = await db
    .insertInto('hand_reading')
    .values({
      id: randomUUID(),
      enquiry_id: reading.enquiryId,
      link_id: reading.linkId,
      wall_s: reading.atS,
      values_c: JSON.stringify(reading.valuesC),
      client_key: reading.clientKey,
      ...writer,
    })
    .onConflict((clash) => clash.columns(['enquiry_id', 'client_key']).doNothing())
    .executeTakeFirst();
  return (done.numInsertedOrUpdatedRows ?? 0n) > 0n;
}

export interface SetAside {
  readonly why: string;
  readonly by: string;
  readonly at: Date;
}

export interface HandReadingRow extends HandReading {
  readonly id: string;
  readonly by: string;
  readonly at: Date;
  /** Whether it came through a keeper's link. */
  readonly fromKeeper: boolean;
  /** Null while it counts. */
  readonly aside: SetAside | null;
}

/** Those that count, in order of the time they were read. */
export async function handReadingsOf(db: Db, enquiryId: string): Promise<HandReadingRow[]> {
  return (await everyHandReadingOf(db, enquiryId)).filter((reading) => reading.aside === null);
}

/** The same with those set aside. */
export async function everyHandReadingOf(db: Db, enquiryId: string): Promise<HandReadingRow[]> {
  const rows = await db
    .selectFrom('hand_reading as h')
    .leftJoinLateral(
      (eb) =>
        eb
          .selectFrom('hand_reading_standing as s')
          .select(['s.counts', 's.why', 's.by as saidBy', 's.at as saidAt'])
          .whereRef('s.reading_id', '=', 'h.id')
          .orderBy('s.seq', 'desc')
          .limit(1)
          .as('said'),
      (join) => join.onTrue(),
    )
    .select(['h.id', 'h.link_id', 'h.wall_s', 'h.values_c', 'h.by', 'h.at'])
    .select(['said.counts', 'said.why', 'said.saidBy', 'said.saidAt'])
    .where('h.enquiry_id', '=', enquiryId)
    .orderBy('h.wall_s')
    .orderBy('h.at')
    .orderBy('h.id')
    .execute();
  return rows.map((r) => ({
    id: r.id,
    atS: Number(r.wall_s),
    valuesC: r.values_c as HandReading['valuesC'],
    by: r.by,
    at: r.at,
    fromKeeper: r.link_id !== null,
    aside:
      r.counts === false && r.why !== null && r.saidBy !== null && r.saidAt !== null
        ? { why: r.why, by: r.saidBy, at: r.saidAt }
        : null,
  }));
}

/** The last word said of a typed reading counts. */
export async function standHandReading(
  db: Db,
  readingId: string,
  said: { readonly counts: boolean; readonly why: string },
  writer: InstrumentWriter,
): Promise<void> {
  await db
    .insertInto('hand_reading_standing')
    .values({ reading_id: readingId, ...said, ...writer })
    .execute();
}
