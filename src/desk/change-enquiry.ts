// Go on with an enquiry. A change says which version it was made from, so that two people at two screens
// never overwrite each other; the earlier versions stay.
import { type EnquiryDocument, type EnquiryRow, enquiryById, updateEnquiry } from '../records/enquiries.ts';
import { erasureOf } from '../records/erasures.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { documentFaults, enquiryChanged, enquiryUnknown } from './enquiry-faults.ts';
import { privacyFaults } from './privacy/privacy-faults.ts';

export interface EnquiryChange {
  readonly id: string;
  readonly fromVersion: number;
  readonly document: EnquiryDocument;
}

/** Faults: those of documentFaults, "ENQUIRY_UNKNOWN", "ENQUIRY_CHANGED", "ERASURE_DONE". */
export async function changeEnquiry(desk: DeskContext, change: EnquiryChange): Promise<Result<EnquiryRow>> {
  const faults = documentFaults(change.document);
  if (faults.length > 0) return bad(faults);
  const { actor, clock, db } = desk;
  const before = await enquiryById(db, actor.branchId, change.id);
  if (before === undefined) return bad([enquiryUnknown(change.id)]);
  // What another screen still holds must not bring the words back.
  if (await erasureOf(db, change.id)) return bad([privacyFaults.done(change.id)]);
  const row = { ...change, branchId: actor.branchId, at: clock.now(), by: actor.name };
  const changed = await updateEnquiry(db, row);
  if (changed !== undefined) return good(changed);
  const present = await enquiryById(db, actor.branchId, change.id);
  return bad([present === undefined ? enquiryUnknown(change.id) : enquiryChanged(change.fromVersion, present.version)]);
}
