// Find an enquiry again: the list of this branch, one of them, what it said before, what was computed for it.
import {
  type EnquiryRow,
  type EnquiryVersionRow,
  enquiriesOf,
  enquiryById,
  enquiryVersions,
} from '../records/enquiries.ts';
import { type PlanResultRow, planResultsOf } from '../records/plan-results.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryUnknown } from './enquiry-faults.ts';

/** More than a shop keeps open at once (our choice); older ones need a search. */
const longestList = 500;

export async function listEnquiries(desk: DeskContext): Promise<EnquiryRow[]> {
  return await enquiriesOf(desk.db, desk.actor.branchId, longestList);
}

/** Faults: "ENQUIRY_UNKNOWN". */
export async function readEnquiry(desk: DeskContext, id: string): Promise<Result<EnquiryRow>> {
  const row = await enquiryById(desk.db, desk.actor.branchId, id);
  return row === undefined ? bad([enquiryUnknown(id)]) : good(row);
}

export async function readEnquiryHistory(desk: DeskContext, id: string): Promise<Result<EnquiryVersionRow[]>> {
  const found = await readEnquiry(desk, id);
  return found.ok ? good(await enquiryVersions(desk.db, id)) : found;
}

export async function readPlanResults(
  desk: DeskContext,
  id: string,
  most: number | null = null,
): Promise<Result<PlanResultRow[]>> {
  const found = await readEnquiry(desk, id);
  return found.ok ? good(await planResultsOf(desk.db, id, most)) : found;
}

/** What the desk calls an enquiry: the label in its answers, else the name of its enclosure, else nothing. */
export function enquiryTitle(row: EnquiryRow): string {
  const { answers, enclosure } = row.document as { answers?: { label?: unknown }; enclosure?: { name?: unknown } };
  const candidates = [answers?.label, enclosure?.name];
  return candidates.find((text): text is string => typeof text === 'string' && text.trim() !== '') ?? '';
}
