// Take a logger file in, say how it was understood, take answers to what it leaves open, set it aside. The bytes are kept
// as they came; what they mean is worked out from them each time.
import type { LogHints } from '../proving/files/understood.ts';
import {
  answerReadingFile,
  everyReadingFileOf,
  insertReadingFile,
  type ReadingFileRow,
  readingFileBytes,
  readingFilesOf,
  withdrawReadingFile,
} from '../records/readings.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { type LoggerFile, readLoggerFile } from './logger-file.ts';
import { readingFaults } from './reading-faults.ts';
import { keepOutcome, type Stoppable } from './stop-work.ts';

/** What the page shows of a file: everything but the readings themselves and the bytes. */
export interface ShownFile {
  readonly id: string;
  readonly name: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly at: Date;
  readonly by: string;
  readonly hints: LogHints;
  readonly understood: object;
}

/** Faults: those of readLoggerFile, "ENQUIRY_UNKNOWN", "WORK_STOPPED". A file that cannot be understood is not kept. */
export async function takeReadingFile(
  desk: DeskContext,
  enquiryId: string,
  file: { readonly name: string; readonly chunks: AsyncIterable<Uint8Array>; readonly hints: LogHints },
  wait: Stoppable = {},
): Promise<Result<ShownFile>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const hints = { ...file.hints, latestS: file.hints.latestS ?? latestWallS(desk) };
  const read = await readLoggerFile(file.chunks, hints);
  if (!read.ok) return read;
  const writer = writerOf(desk);
  const row = {
    enquiryId,
    name: file.name.slice(0, 200),
    bytes: Buffer.from(read.value.raw),
    sha256: read.value.sha256,
    hints,
  };
  const id = await keepOutcome(desk, wait, async (tx) => await insertReadingFile(tx, row, writer));
  if (!id.ok) return id;
  return good(
    shown({ id: id.value, name: row.name, sha256: row.sha256, at: writer.at, by: writer.by, hints }, read.value),
  );
}

/** Answers what a file left open; the newest answers count. Faults: "LOG_UNKNOWN", those of readLoggerFile. */
export async function answerFile(
  desk: DeskContext,
  enquiryId: string,
  fileId: string,
  hints: LogHints,
): Promise<Result<ShownFile>> {
  const files = await filesOf(desk, enquiryId);
  if (!files.ok) return files;
  const row = files.value.find((f) => f.id === fileId);
  if (row === undefined) return bad([readingFaults.fileUnknown(fileId)]);
  const all = {
    ...row.hints,
    ...hints,
    places: { ...row.hints.places, ...hints.places },
    instruments: { ...row.hints.instruments, ...hints.instruments },
  };
  const read = await understoodFile(desk, enquiryId, { ...row, hints: all });
  if (!read.ok) return read;
  await answerReadingFile(desk.db, fileId, all, writerOf(desk));
  return good(shown({ ...row, hints: all }, read.value));
}

/** Faults: "ENQUIRY_UNKNOWN", "LOG_UNKNOWN". */
export async function setFileAside(
  desk: DeskContext,
  enquiryId: string,
  fileId: string,
  why: string,
): Promise<Result<{ readonly id: string }>> {
  const files = await filesOf(desk, enquiryId);
  if (!files.ok) return files;
  const row = files.value.find((f) => f.id === fileId);
  if (row === undefined) return bad([readingFaults.fileUnknown(fileId)]);
  await withdrawReadingFile(desk.db, row, why, writerOf(desk));
  return good({ id: fileId });
}

/** A file set aside counts again, with the answers it had. Faults: "ENQUIRY_UNKNOWN", "LOG_UNKNOWN". */
export async function takeFileBack(
  desk: DeskContext,
  enquiryId: string,
  fileId: string,
): Promise<Result<{ readonly id: string }>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const row = (await everyReadingFileOf(desk.db, enquiryId)).find((f) => f.id === fileId);
  if (row === undefined) return bad([readingFaults.fileUnknown(fileId)]);
  if (row.aside) await answerReadingFile(desk.db, fileId, row.hints, writerOf(desk));
  return good({ id: fileId });
}

/** Names of the files of a home that were set aside. Faults: "ENQUIRY_UNKNOWN". */
export async function filesSetAside(
  desk: DeskContext,
  enquiryId: string,
): Promise<Result<{ readonly id: string; readonly name: string }[]>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const files = await everyReadingFileOf(desk.db, enquiryId);
  return good(files.filter((f) => f.aside).map(({ id, name }) => ({ id, name })));
}

/** Files of a home as they are understood now. Faults: "ENQUIRY_UNKNOWN". */
export async function showFiles(desk: DeskContext, enquiryId: string): Promise<Result<ShownFile[]>> {
  const files = await filesOf(desk, enquiryId);
  if (!files.ok) return files;
  const out: ShownFile[] = [];
  for (const row of files.value) {
    const read = await understoodFile(desk, enquiryId, row);
    if (read.ok) out.push(shown(row, read.value));
  }
  return good(out);
}

/** Faults: "LOG_UNKNOWN", those of readLoggerFile. */
export async function understoodFile(
  desk: DeskContext,
  enquiryId: string,
  row: ReadingFileRow,
): Promise<Result<LoggerFile>> {
  const kept = await readingFileBytes(desk.db, enquiryId, row.id);
  if (kept === undefined) return bad([readingFaults.fileUnknown(row.id)]);
  return await readLoggerFile(once(kept.bytes), row.hints);
}

async function filesOf(desk: DeskContext, enquiryId: string): Promise<Result<ReadingFileRow[]>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  return enquiry.ok ? good(await readingFilesOf(desk.db, enquiryId)) : enquiry;
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

function shown(row: Omit<ReadingFileRow, 'at'> & { readonly at: Date }, file: LoggerFile): ShownFile {
  const { log, ...rest } = file.understood;
  const { timesS } = log;
  const channels = log.channels.map(({ values, ...c }) => ({
    ...c,
    readings: values.filter((v) => v !== null).length,
  }));
  const understood = { ...rest, fromS: timesS[0], toS: timesS.at(-1), channels };
  return {
    id: row.id,
    name: row.name,
    sha256: row.sha256,
    bytes: file.bytes,
    at: row.at,
    by: row.by,
    hints: row.hints,
    understood,
  };
}

/** No logger can have measured later than this, whatever its zone [wall-clock s]. */
const latestWallS = (desk: DeskContext): number => Math.floor(desk.clock.now().getTime() / 1000) + 15 * 3600;

export const writerOf = (desk: DeskContext): { at: Date; by: string } => ({
  at: desk.clock.now(),
  by: desk.actor.name,
});
