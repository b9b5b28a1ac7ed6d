// Will this home work? Computes the plan of an enclosure, and keeps the answer when it belongs to an enquiry.
import { randomUUID } from 'node:crypto';
import { shopFactsFor, type UsedShopValues } from '../husbandry/used-shop-values.ts';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import { allFacts } from '../records/animal-facts.ts';
import { enquiryById } from '../records/enquiries.ts';
import { insertPlanResult } from '../records/plan-results.ts';
import { versions } from '../records/versions.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryUnknown } from './enquiry-faults.ts';
import type { PlanJob } from './plan-job.ts';
import type { Planner } from './planner.ts';
import { shopValues } from './shop-values.ts';
import { keepOutcome, type Stoppable } from './stop-work.ts';

export interface PlanRequest extends Omit<PlanJob, 'shopValues'> {
  /** Keeps the answer with this enquiry; null computes only. */
  readonly enquiryId: string | null;
}

export interface KeptPlan {
  readonly answer: PlanAnswer & UsedShopValues;
  readonly modelVersion: string;
  readonly dataVersion: string;
  readonly resultId: string | null;
}

/** Faults: those of the enclosure, "ENQUIRY_UNKNOWN", "PLAN_BUSY", "WORK_STOPPED". */
export async function planForDesk(
  desk: DeskContext,
  planner: Planner,
  request: PlanRequest,
  wait: Stoppable = {},
): Promise<Result<KeptPlan>> {
  const { enquiryId, ...job } = request;
  const { actor, clock, db } = desk;
  const enquiry = enquiryId === null ? null : await enquiryById(db, actor.branchId, enquiryId);
  if (enquiry === undefined) return bad([enquiryUnknown(enquiryId ?? '')]);
  const own = await usedShopValues(desk, job);
  const planned = await planner.plan(own.job, wait.signal);
  if (!planned.ok) return planned;
  const { model, data } = versions();
  const kept = { answer: { ...planned.value, ...own.used }, modelVersion: model, dataVersion: data };
  if (enquiry === null) return good({ ...kept, resultId: null });
  const resultId = randomUUID();
  const row = {
    id: resultId,
    enquiryId: enquiry.id,
    enquiryVersion: enquiry.version,
    ...kept,
    at: clock.now(),
    by: actor.name,
  };
  const done = await keepOutcome(desk, wait, async (tx) => {
    await insertPlanResult(tx, row);
    return resultId;
  });
  return done.ok ? good({ ...kept, resultId }) : done;
}

/** The job with the branch's values, and what the answer says of them. A standard that the request names goes first. */
export async function usedShopValues(
  desk: DeskContext,
  job: PlanJob,
): Promise<{ readonly job: PlanJob; readonly used: UsedShopValues }> {
  const { enclosure, standardId } = job;
  const asked = { use: 'plan', animal: animalOf(enclosure), enclosure, standardId } as const;
  const own = shopFactsFor(allFacts().facts, await shopValues(desk), asked);
  return { job: { ...job, standardId: own.standardId, shopValues: own.used.shopValues }, used: own.used };
}

/** Which animal the file names, as far as it does; whether the file is sound is judged with the plan. */
function animalOf(enclosure: unknown): { readonly speciesId: string; readonly stage: string } | null {
  const animal = (
    enclosure as { readonly animal?: { readonly speciesId?: unknown; readonly stage?: unknown } | null } | null
  )?.animal;
  const { speciesId, stage } = animal ?? {};
  return typeof speciesId === 'string' && typeof stage === 'string' ? { speciesId, stage } : null;
}
