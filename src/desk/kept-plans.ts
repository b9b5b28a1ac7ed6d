// Plans that are kept with an enquiry: setting one aside that should not have been kept, and back. It stays to be read.
// Leaves out working plans out (plan-enclosure.ts).
import { type PlanResultRow, standPlan } from '../records/plan-results.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { readPlanResults } from './find-enquiries.ts';

/** @param counts  false sets it aside. Faults: "ENQUIRY_UNKNOWN", "PLAN_UNKNOWN". */
export async function letPlanCount(
  desk: DeskContext,
  enquiryId: string,
  planId: string,
  counts: boolean,
): Promise<Result<{ readonly id: string }>> {
  const found = await keptPlan(desk, enquiryId, planId);
  if (!found.ok) return found;
  const { actor, clock, db } = desk;
  if ((found.value.aside === null) !== counts) await standPlan(db, planId, { counts, at: clock.now(), by: actor.name });
  return good({ id: planId });
}

async function keptPlan(desk: DeskContext, enquiryId: string, id: string): Promise<Result<PlanResultRow>> {
  const all = await readPlanResults(desk, enquiryId);
  if (!all.ok) return all;
  const found = all.value.find((one) => one.id === id);
  return found === undefined ? bad([planUnknown(id)]) : good(found);
}

const planUnknown = (id: string): Fault => ({
  code: 'PLAN_UNKNOWN',
  field: 'planId',
  got: id,
  allowed: 'a plan that is kept with this enquiry',
  say: 'There is no such plan here.',
  fix: 'Load the sheet again and choose one from there.',
});
