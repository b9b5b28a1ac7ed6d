// What aftercare is worked out from, read for many placements at once: no query of its own for each.
import { sql } from 'kysely';
import type { Rows } from './animals.ts';

export interface PlacementToFollow {
  readonly id: string;
  readonly branchId: string;
  readonly enquiryId: string;
  readonly animalId: string;
}

export interface FollowedEvent {
  readonly id: string;
  readonly placementId: string;
  readonly kind: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly at: Date;
  readonly by: string;
}

export async function placementsToFollow(db: Rows, ids: readonly string[]): Promise<PlacementToFollow[]> {
  return await db
    .selectFrom('placement')
    .select(['id', 'branch_id as branchId', 'enquiry_id as enquiryId', 'animal_id as animalId'])
    .where('id', 'in', [...ids])
    .execute();
}

/** What decides where each placement stands and what was told of it, in the order it was written. */
export async function followedEvents(db: Rows, placementIds: readonly string[]): Promise<FollowedEvent[]> {
  return await db
    .selectFrom('placement_event')
    .select(['id', 'placement_id as placementId', 'kind', 'body', 'at', 'by'])
    .where('placement_id', 'in', [...placementIds])
    .where('kind', 'in', ['statement', 'released', 'refused', 'reopened', 'taken-back', 'aftercare'])
    .orderBy('seq')
    .execute();
}

export interface HomeFacts {
  readonly enquiryId: string;
  readonly enclosure: unknown;
  /** Share of the installed power in use through the simulated winter and summer day; null when no plan is kept. */
  readonly winterDutyFrac: number | null;
  readonly summerDutyFrac: number | null;
  readonly proofOn: Date | null;
  /** Null also when the proof is older than this figure. */
  readonly roomLowC: number | null;
  readonly roomHighC: number | null;
}

/** The home of each enquiry with the figures of its newest plan and of its newest proof, taken out of long answers. */
export async function homeFactsOf(db: Rows, enquiryIds: readonly string[]): Promise<HomeFacts[]> {
  const found = await sql<HomeFacts>`
    select e.id as "enquiryId", e.document->'enclosure' as enclosure,
      (p.answer#>>'{winter,day,dutyFrac}')::float8 as "winterDutyFrac",
      (p.answer#>>'{summer,day,dutyFrac}')::float8 as "summerDutyFrac",
      r.at as "proofOn",
      (r.answer#>>'{roomReadC,low}')::float8 as "roomLowC", (r.answer#>>'{roomReadC,high}')::float8 as "roomHighC"
    from enquiry e
    left join lateral (select answer from plan_counting where enquiry_id = e.id order by at desc limit 1) p on true
    left join lateral (select answer, at from proof_result where enquiry_id = e.id order by at desc limit 1) r on true
    where e.id = any(${[...enquiryIds]}::uuid[])`.execute(db);
  return found.rows;
}

export interface HomeInstrument {
  readonly enquiryId: string;
  readonly instrumentId: string;
  readonly name: string;
  readonly checkedAt: Date | null;
}

/** Instruments that stay in a home: those of its live sources, with their last check. */
export async function instrumentsOfHomes(db: Rows, enquiryIds: readonly string[]): Promise<HomeInstrument[]> {
  const found = await sql<HomeInstrument>`
    select distinct s.enquiry_id as "enquiryId", i.id as "instrumentId", i.name,
      (select max(c.at) from instrument_check c where c.instrument_id = i.id) as "checkedAt"
    from live_source s join instrument i on i.id = s.instrument_id
    where s.enquiry_id = any(${[...enquiryIds]}::uuid[]) order by 1, 3`.execute(db);
  return found.rows;
}

export async function enquiryBranch(db: Rows, enquiryId: string): Promise<string | undefined> {
  const row = await db.selectFrom('enquiry').select('branch_id').where('id', '=', enquiryId).executeTakeFirst();
  return row?.branch_id;
}

/** The placement of an enquiry whose animal is there now: the last that was released. */
export async function releasedOfEnquiry(db: Rows, enquiryId: string): Promise<string | undefined> {
  const row = await db
    .selectFrom('placement as p')
    .innerJoin('placement_standing as s', 's.placement_id', 'p.id')
    .select('p.id')
    .where('p.enquiry_id', '=', enquiryId)
    .where('s.state', '=', 'released')
    .orderBy('s.changed_at', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row?.id;
}
