// The rows of logger files and proofs of one home, and whether what was read has changed. Leaves out what they mean (desk/,
// proving/) and typed readings (hand-readings.ts).
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import type { LogHints } from '../proving/files/understood.ts';
import type { InstrumentWriter } from './instruments.ts';
import type { Db } from './schema.ts';

export interface ReadingFileRow {
  readonly id: string;
  readonly name: string;
  readonly sha256: string;
  readonly at: Date;
  readonly by: string;
  readonly hints: LogHints;
}

export interface NewReadingFile {
  readonly enquiryId: string;
  readonly name: string;
  readonly bytes: Buffer;
  readonly sha256: string;
  readonly hints: LogHints;
}

/** Puts a file down, inside the caller's transaction; the same bytes twice are one file. @returns its id */
export async function insertReadingFile(tx: Db, file: NewReadingFile, writer: InstrumentWriter): Promise<string> {
  const { enquiryId, hints, ...rest } = file;
  await tx
    .insertInto('reading_file')
    .values({ id: randomUUID(), enquiry_id: enquiryId, ...rest, ...writer })
    .onConflict((clash) => clash.columns(['enquiry_id', 'sha256']).doNothing())
    .execute();
  const { id } = await tx
    .selectFrom('reading_file')
    .select('id')
    .where('enquiry_id', '=', enquiryId)
    .where('sha256', '=', file.sha256)
    .executeTakeFirstOrThrow();
  await tx
    .insertInto('reading_file_answer')
    .values({ file_id: id, hints: JSON.stringify(hints), ...writer })
    .execute();
  return id;
}

export async function answerReadingFile(
  db: Db,
  fileId: string,
  hints: LogHints,
  writer: InstrumentWriter,
): Promise<void> {
  await db
    .insertInto('reading_file_answer')
    .values({ file_id: fileId, hints: JSON.stringify(hints), ...writer })
    .execute();
}

/** Taken back by answerReadingFile. */
export async function withdrawReadingFile(
  db: Db,
  file: { readonly id: string; readonly hints: LogHints },
  why: string,
  writer: InstrumentWriter,
): Promise<void> {
  await db.transaction().execute(async (tx) => {
    await tx
      .insertInto('reading_file_withdrawal')
      .values({ file_id: file.id, why, ...writer })
      .onConflict((clash) => clash.column('file_id').doNothing())
      .execute();
    await tx
      .insertInto('reading_file_answer')
      .values({ file_id: file.id, hints: JSON.stringify({ ...file.hints, setAside: true }), ...writer })
      .execute();
  });
}

/** Files of a home that count, oldest first, each with the newest answers. */
export async function readingFilesOf(db: Db, enquiryId: string): Promise<ReadingFileRow[]> {
  return (await everyReadingFileOf(db, enquiryId)).filter((file) => !file.aside);
}

/** The same with those set aside. Whether a file counts is the last word said of it: it may be set aside, taken back and
 *  set aside again. */
export async function everyReadingFileOf(
  db: Db,
  enquiryId: string,
): Promise<(ReadingFileRow & { readonly aside: boolean })[]> {
  const rows = await db
    .selectFrom('reading_file as f')
    .leftJoin('reading_file_withdrawal as w', 'w.file_id', 'f.id')
    .innerJoin('reading_file_answer as a', 'a.file_id', 'f.id')
    .distinctOn('f.seq')
    .select(['f.id', 'f.name', 'f.sha256', 'f.at', 'f.by', 'a.hints', 'a.at as answeredAt', 'w.at as withdrawnAt'])
    .where('f.enquiry_id', '=', enquiryId)
    .orderBy('f.seq')
    .orderBy('a.seq', 'desc')
    .execute();
  return rows.map(({ answeredAt, withdrawnAt, ...r }) => {
    const { setAside, ...hints } = r.hints as LogHints & { readonly setAside?: true };
    return { ...r, hints, aside: setAside === true || (withdrawnAt !== null && withdrawnAt > answeredAt) };
  });
}

export async function readingFileBytes(
  db: Db,
  enquiryId: string,
  id: string,
): Promise<{ readonly name: string; readonly bytes: Buffer } | undefined> {
  return await db
    .selectFrom('reading_file')
    .select(['name', 'bytes'])
    .where('enquiry_id', '=', enquiryId)
    .where('id', '=', id)
    .executeTakeFirst();
}

/** When the readings of a home last changed: a file or a typed reading came, was answered or set aside. Live readings
 *  come all the time and are left out. Null when nothing was ever read. */
export async function readingsChangedAt(db: Db, enquiryId: string): Promise<Date | null> {
  const newest = await sql<{ at: Date | null }>`
    select max(at) as at from (
      select at from reading_file where enquiry_id = ${enquiryId}
      union all select a.at from reading_file_answer a join reading_file f on f.id = a.file_id where f.enquiry_id = ${enquiryId}
      union all select w.at from reading_file_withdrawal w join reading_file f on f.id = w.file_id where f.enquiry_id = ${enquiryId}
      union all select at from hand_reading where enquiry_id = ${enquiryId}
      union all select s.at from hand_reading_standing s join hand_reading h on h.id = s.reading_id where h.enquiry_id = ${enquiryId}
    ) changes`.execute(db);
  return newest.rows[0]?.at ?? null;
}

/** What of a home's readings there is: changes with every file, answer, typed reading and what is set aside, and never by
 *  a clock. Live readings come all the time and are left out. Its last part is missing where no typed reading was ever set
 *  aside, as in proofs kept before that could be. */
export async function readingsState(db: Db, enquiryId: string): Promise<string> {
  const counted = await sql<{ state: string }>`
    select concat_ws('/',
      (select coalesce(max(a.seq), 0) from reading_file_answer a join reading_file f on f.id = a.file_id
        where f.enquiry_id = ${enquiryId}),
      (select count(*) from reading_file_withdrawal w join reading_file f on f.id = w.file_id
        where f.enquiry_id = ${enquiryId}),
      (select count(*) from hand_reading where enquiry_id = ${enquiryId}),
      (select max(s.seq) from hand_reading_standing s join hand_reading h on h.id = s.reading_id
        where h.enquiry_id = ${enquiryId})) as state`.execute(db);
  return counted.rows[0]?.state ?? '';
}

/** Whether anything of a home's readings was set aside since they were in this state. */
export async function setAsideSince(db: Db, enquiryId: string, state: string): Promise<boolean> {
  const [answers = '0', , , standings = '0'] = state.split('/');
  const found = await sql<{ found: boolean }>`
    select exists (
      select 1 from hand_reading_standing s join hand_reading h on h.id = s.reading_id
        where h.enquiry_id = ${enquiryId} and not s.counts and s.seq > ${standings}::bigint
      union all select 1 from reading_file_answer a join reading_file f on f.id = a.file_id
        where f.enquiry_id = ${enquiryId} and (a.hints ->> 'setAside')::boolean and a.seq > ${answers}::bigint
    ) as found`.execute(db);
  return found.rows[0]?.found === true;
}

export interface NewProofResult {
  readonly enquiryId: string;
  readonly enquiryVersion: number;
  readonly answer: object;
  readonly inputs: object;
  readonly modelVersion: string;
  readonly dataVersion: string;
}

export async function insertProofResult(db: Db, result: NewProofResult, writer: InstrumentWriter): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('proof_result')
    .values({
      id,
      enquiry_id: result.enquiryId,
      enquiry_version: result.enquiryVersion,
      answer: JSON.stringify(result.answer),
      inputs: JSON.stringify(result.inputs),
      model_version: result.modelVersion,
      data_version: result.dataVersion,
      ...writer,
    })
    .execute();
  return id;
}

export interface ProofResultRow {
  readonly id: string;
  readonly enquiryVersion: number;
  readonly answer: Record<string, unknown>;
  readonly inputs: Record<string, unknown>;
  readonly modelVersion: string;
  readonly dataVersion: string;
  readonly at: Date;
  readonly by: string;
}

/** The newest proof of a home, or of one version of it. */
export async function newestProof(db: Db, enquiryId: string): Promise<ProofResultRow | undefined> {
  return await db
    .selectFrom('proof_result')
    .select([
      'id',
      'enquiry_version as enquiryVersion',
      'answer',
      'inputs',
      'model_version as modelVersion',
      'data_version as dataVersion',
      'at',
      'by',
    ])
    .where('enquiry_id', '=', enquiryId)
    .orderBy('seq', 'desc')
    .limit(1)
    .executeTakeFirst();
}
