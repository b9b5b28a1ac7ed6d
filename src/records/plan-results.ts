// The rows of computed answers: put down once, never changed; each names the versions of model and data behind it.
import type { Db } from './schema.ts';

export interface NewPlanResult {
  readonly id: string;
  readonly enquiryId: string;
  readonly enquiryVersion: number;
  readonly answer: object;
  readonly modelVersion: string;
  readonly dataVersion: string;
  readonly at: Date;
  readonly by: string;
}

export async function insertPlanResult(db: Db, result: NewPlanResult): Promise<void> {
  await db
    .insertInto('plan_result')
    .values({
      id: result.id,
      enquiry_id: result.enquiryId,
      enquiry_version: result.enquiryVersion,
      answer: JSON.stringify(result.answer),
      model_version: result.modelVersion,
      data_version: result.dataVersion,
      at: result.at,
      by: result.by,
    })
    .execute();
}

export interface PlanResultRow {
  readonly id: string;
  readonly enquiryVersion: number;
  readonly modelVersion: string;
  readonly dataVersion: string;
  readonly at: Date;
  readonly by: string;
  readonly answer: Record<string, unknown>;
}

/** Newest first. */
export async function planResultsOf(db: Db, enquiryId: string): Promise<PlanResultRow[]> {
  return await db
    .selectFrom('plan_result')
    .select([
      'id',
      'enquiry_version as enquiryVersion',
      'model_version as modelVersion',
      'data_version as dataVersion',
      'at',
      'by',
      'answer',
    ])
    .where('enquiry_id', '=', enquiryId)
    .orderBy('seq', 'desc')
    .execute();
}
