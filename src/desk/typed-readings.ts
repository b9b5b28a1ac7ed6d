// Readings that somebody typed in a home: which there are, and setting a mistyped one aside, with its reason, and back.
// Leaves out typing them (keeper-page.ts).
import { everyHandReadingOf, type HandReadingRow, standHandReading } from '../records/hand-readings.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { readingFaults } from './reading-faults.ts';
import { writerOf } from './take-reading-file.ts';

/** Newest first, those set aside too. Faults: "ENQUIRY_UNKNOWN". */
export async function typedReadings(desk: DeskContext, enquiryId: string): Promise<Result<HandReadingRow[]>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  return enquiry.ok ? good((await everyHandReadingOf(desk.db, enquiryId)).reverse()) : enquiry;
}

/** It stays to be read, and no longer counts. Faults: "ENQUIRY_UNKNOWN", "HAND_UNKNOWN", "HAND_WHY". */
export async function setReadingAside(
  desk: DeskContext,
  enquiryId: string,
  readingId: string,
  why: string,
): Promise<Result<{ readonly id: string }>> {
  const found = await typedReading(desk, enquiryId, readingId);
  const faults: Fault[] = [];
  if (!found.ok) faults.push(...found.faults);
  if (why.trim() === '') faults.push(readingFaults.readingWhy(why));
  if (!found.ok || faults.length > 0) return bad(faults);
  if (found.value.aside === null) {
    await standHandReading(desk.db, readingId, { counts: false, why: why.trim() }, writerOf(desk));
  }
  return good({ id: readingId });
}

/** A reading set aside counts again. Faults: "ENQUIRY_UNKNOWN", "HAND_UNKNOWN". */
export async function takeReadingBack(
  desk: DeskContext,
  enquiryId: string,
  readingId: string,
): Promise<Result<{ readonly id: string }>> {
  const found = await typedReading(desk, enquiryId, readingId);
  if (!found.ok) return found;
  if (found.value.aside !== null) {
    await standHandReading(desk.db, readingId, { counts: true, why: '' }, writerOf(desk));
  }
  return good({ id: readingId });
}

async function typedReading(desk: DeskContext, enquiryId: string, id: string): Promise<Result<HandReadingRow>> {
  const all = await typedReadings(desk, enquiryId);
  if (!all.ok) return all;
  const found = all.value.find((one) => one.id === id);
  return found === undefined ? bad([readingFaults.readingUnknown(id)]) : good(found);
}
