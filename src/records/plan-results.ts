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
  /** Who set it aside, so that it does not count; null while it does. */
  readonly aside: { readonly at: Date; readonly by: string } | null;
}

/** Newest first, those set aside too.
 *  @param most  null: all */
export async function planResultsOf(db: Db, enquiryId: string, most: number | null = null): Promise<PlanResultRow[]> {
  const rows = await db
    .selectFrom('plan_result as p')
    .leftJoinLateral(
      (eb) =>
        eb
          .selectFrom('plan_result_standing as s')
          .select(['s.counts', 's.by as saidBy', 's.at as saidAt'])
          .whereRef('s.plan_id', '=', 'p.id')
          .orderBy('s.seq', 'desc')
          .limit(1)
          .as('said'),
      (join) => join.onTrue(),
    )
    .select(['p.id', 'p.enquiry_version as enquiryVersion', 'p.model_version as modelVersion'])
    .select(['p.data_version as dataVersion', 'p.at', 'p.by', 'p.answer', 'said.counts', 'said.saidBy', 'said.saidAt'])
    .where('p.enquiry_id', '=', enquiryId)
    .orderBy('p.seq', 'desc')
    .$if(most !== null, (query) => query.limit(most ?? 0))
    .execute();
  return rows.map(({ counts, saidBy, saidAt, ...row }) => ({
    ...row,
    aside: counts === false && saidAt !== null && saidBy !== null ? { at: saidAt, by: saidBy } : null,
  }));
}

export async function standPlan(
  db: Db,
  planId: string,
  said: { readonly counts: boolean; readonly at: Date; readonly by: string },
): Promise<void> {
  await db
    .insertInto('plan_result_standing')
    .values({ plan_id: planId, ...said })
    .execute();
}
