// The enquiry that readings belong to, with its home. Readings of another branch are not found.
import { type EnquiryRow, enquiryById } from '../records/enquiries.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryUnknown } from './enquiry-faults.ts';
import { readingFaults } from './reading-faults.ts';

/** Faults: "ENQUIRY_UNKNOWN". */
export async function enquiryFor(desk: DeskContext, id: string): Promise<Result<EnquiryRow>> {
  const row = await enquiryById(desk.db, desk.actor.branchId, id);
  return row === undefined ? bad([enquiryUnknown(id)]) : good(row);
}

/** The home as it was drawn. Faults: "PROOF_NO_HOME". */
export function homeOf(row: EnquiryRow): Result<Record<string, unknown>> {
  const { enclosure } = row.document;
  const drawn = typeof enclosure === 'object' && enclosure !== null && !Array.isArray(enclosure);
  return drawn ? good(enclosure as Record<string, unknown>) : bad([readingFaults.noHome]);
}
