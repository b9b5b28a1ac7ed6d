// Will this home work? Computes the plan of an enclosure, and keeps the answer when it belongs to an enquiry.
import { randomUUID } from 'node:crypto';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import { enquiryById } from '../records/enquiries.ts';
import { insertPlanResult } from '../records/plan-results.ts';
import { versions } from '../records/versions.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryUnknown } from './enquiry-faults.ts';
import type { PlanJob } from './plan-job.ts';
import type { Planner } from './planner.ts';

export interface PlanRequest extends PlanJob {
  /** Keeps the answer with this enquiry; null computes only. */
  readonly enquiryId: string | null;
}

export interface KeptPlan {
  readonly answer: PlanAnswer;
  readonly modelVersion: string;
  readonly dataVersion: string;
  readonly resultId: string | null;
}

/** Faults: those of the enclosure, "ENQUIRY_UNKNOWN", "PLAN_BUSY". */
export async function planForDesk(
  desk: DeskContext,
  planner: Planner,
  request: PlanRequest,
): Promise<Result<KeptPlan>> {
  const { enquiryId, ...job } = request;
  const { actor, clock, db } = desk;
  const enquiry = enquiryId === null ? null : await enquiryById(db, actor.branchId, enquiryId);
  if (enquiry === undefined) return bad([enquiryUnknown(enquiryId ?? '')]);
  const planned = await planner.plan(job);
  if (!planned.ok) return planned;
  const { model, data } = versions();
  const kept = { answer: planned.value, modelVersion: model, dataVersion: data };
  if (enquiry === null) return good({ ...kept, resultId: null });
  const resultId = randomUUID();
  await insertPlanResult(db, {
    id: resultId,
    enquiryId: enquiry.id,
    enquiryVersion: enquiry.version,
    ...kept,
    at: clock.now(),
    by: actor.name,
  });
  return good({ ...kept, resultId });
}
