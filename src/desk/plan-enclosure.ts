// Will this home work? Computes the plan of an enclosure, and keeps the answer when it belongs to an enquiry.
import { randomUUID } from 'node:crypto';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import { allFacts } from '../records/animal-facts.ts';
import { enquiryById } from '../records/enquiries.ts';
import { insertPlanResult } from '../records/plan-results.ts';
import { versions } from '../records/versions.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryUnknown } from './enquiry-faults.ts';
import type { PlanJob } from './plan-job.ts';
import type { Planner } from './planner.ts';
import { concerns, type ShopValue, shopValues, standardPolicy, withShopValues } from './shop-values.ts';

export interface PlanRequest extends Omit<PlanJob, 'shopValues'> {
  /** Keeps the answer with this enquiry; null computes only. */
  readonly enquiryId: string | null;
}

/** Which of the branch's own values went into the answer, and which could not because the facts no longer allow them. */
export interface UsedShopValues {
  readonly shopValues: readonly ShopValue[];
  readonly refusedShopValues: readonly Fault[];
}

export interface KeptPlan {
  readonly answer: PlanAnswer & UsedShopValues;
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
  const own = await usedShopValues(desk, job);
  const planned = await planner.plan(own.job);
  if (!planned.ok) return planned;
  const { model, data } = versions();
  const kept = { answer: { ...planned.value, ...own.used }, modelVersion: model, dataVersion: data };
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

/** The job with the branch's values, and what the answer says of them. A standard that the request names goes first. */
export async function usedShopValues(
  desk: DeskContext,
  job: PlanJob,
): Promise<{ readonly job: PlanJob; readonly used: UsedShopValues }> {
  const animal = animalOf(job.enclosure);
  const mine = (await shopValues(desk)).filter(({ path }) => animal !== null && concerns(path, animal));
  const { facts, faults } = withShopValues(allFacts().facts, mine);
  const laid = new Set(facts.overlaid.map(({ path }) => path.slice(0, path.lastIndexOf('.'))));
  const policy = mine.find(({ path }) => path === standardPolicy);
  const named = policy?.value.value;
  const followed = job.standardId === undefined && typeof named === 'string' && Object.hasOwn(facts.standards, named);
  const used = mine.filter(({ path }) => (path === standardPolicy ? followed : laid.has(path)));
  return {
    job: { ...job, ...(followed ? { standardId: named } : {}), shopValues: used },
    used: { shopValues: used, refusedShopValues: faults },
  };
}

/** Which animal the file names, as far as it does; whether the file is sound is judged with the plan. */
function animalOf(enclosure: unknown): Parameters<typeof concerns>[1] | null {
  const animal = (enclosure as { readonly animal?: Partial<Parameters<typeof concerns>[1]> | null } | null)?.animal;
  const { speciesId, stage } = animal ?? {};
  return typeof speciesId === 'string' && stage !== undefined ? { speciesId, stage } : null;
}
