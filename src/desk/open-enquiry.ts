// Somebody comes to the counter: put down a new enquiry, however little of it is known yet.
import { randomUUID } from 'node:crypto';
import { type EnquiryDocument, type EnquiryRow, insertEnquiry } from '../records/enquiries.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { documentFaults } from './enquiry-faults.ts';

export async function openEnquiry(desk: DeskContext, document: EnquiryDocument): Promise<Result<EnquiryRow>> {
  const faults = documentFaults(document);
  if (faults.length > 0) return bad(faults);
  const { actor, clock, db } = desk;
  const row = { id: randomUUID(), branchId: actor.branchId, document, at: clock.now(), by: actor.name };
  return good(await insertEnquiry(db, row));
}
