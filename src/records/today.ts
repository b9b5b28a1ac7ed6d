// What stands half done at a branch, as far as rows alone tell it: placements, enquiries, live sources that fell silent.
// Every look is bounded: a list of what is to be done today is never long, whatever the records hold.
import { sql } from 'kysely';
import type { Rows } from './animals.ts';

export interface PlacementName {
  readonly placementId: string;
  readonly enquiryId: string;
  readonly animalId: string;
  readonly title: string;
  readonly callName: string;
  readonly speciesId: string;
}

/** What placements are called: the enquiry's label, the animal's name and kind. */
export async function placementNames(db: Rows, ids: readonly string[]): Promise<ReadonlyMap<string, PlacementName>> {
  if (ids.length === 0) return new Map();
  const found = await sql<PlacementName>`
    select p.id as "placementId", p.enquiry_id as "enquiryId", p.animal_id as "animalId",
      coalesce(nullif(e.document#>>'{answers,label}', ''), e.document#>>'{enclosure,name}', '') as title,
      coalesce(n.value, '') as "callName", coalesce(s.value, '') as "speciesId"
    from placement p join enquiry e on e.id = p.enquiry_id
    left join lateral (select value from animal_fact where animal_id = p.animal_id and field = 'callName'
      order by at desc, seq desc limit 1) n on true
    left join lateral (select value from animal_fact where animal_id = p.animal_id and field = 'speciesId'
      order by at desc, seq desc limit 1) s on true
    where p.id = any(${[...ids]}::uuid[])`.execute(db);
  return new Map(found.rows.map((row) => [row.placementId, row]));
}

/** Under which name each placement stands in calendars. */
export async function calendarNames(db: Rows, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('aftercare_placement')
    .select(['placement_id', 'calendar_name'])
    .where('placement_id', 'in', [...ids])
    .execute();
  return new Map(rows.map((row) => [row.placement_id, row.calendar_name]));
}

export interface OpenPlacement {
  readonly placementId: string;
  readonly changedAt: Date;
  readonly enquiryVersion: number;
  readonly planVerdict: string | null;
  readonly planVersion: number | null;
  readonly proofVerdict: string | null;
  readonly proofVersion: number | null;
}

/** Open placements, the last touched first, with what plan and proof say of the home. */
export async function openPlacements(db: Rows, branchId: string, most: number): Promise<OpenPlacement[]> {
  const found = await sql<OpenPlacement>`
    select s.placement_id as "placementId", s.changed_at as "changedAt", e.version as "enquiryVersion",
      l.answer->>'verdict' as "planVerdict", l.enquiry_version as "planVersion",
      r.answer->>'verdict' as "proofVerdict", r.enquiry_version as "proofVersion"
    from (select * from placement_standing where branch_id = ${branchId} and state = 'open'
      order by changed_at desc, placement_id limit ${most}) s
    join placement p on p.id = s.placement_id join enquiry e on e.id = p.enquiry_id
    left join lateral (select answer, enquiry_version from plan_counting where enquiry_id = e.id
      order by at desc limit 1) l on true
    left join lateral (select answer, enquiry_version from proof_result where enquiry_id = e.id
      order by at desc limit 1) r on true
    order by s.changed_at desc, s.placement_id`.execute(db);
  return found.rows;
}

export interface HalfDoneEnquiry {
  readonly enquiryId: string;
  readonly title: string;
  readonly changedAt: Date;
  /** What is missing first: answers, the box, a plan that is kept, readings, a placement. */
  readonly next: 'questions' | 'box' | 'plan' | 'proof' | 'placement';
}

/** Enquiries since a day that no placement was opened for, the last touched first. */
export async function halfDoneEnquiries(
  db: Rows,
  branchId: string,
  since: Date,
  most: number,
): Promise<HalfDoneEnquiry[]> {
  const found = await sql<HalfDoneEnquiry>`
    select e.id as "enquiryId", e.updated_at as "changedAt",
      coalesce(nullif(e.document#>>'{answers,label}', ''), e.document#>>'{enclosure,name}', '') as title,
      case
        when e.document#>>'{answers,speciesId}' is null or e.document#>>'{answers,winterLowC}' is null
          or e.document#>>'{answers,summerHighC}' is null or e.document#>>'{answers,rhPct}' is null then 'questions'
        when coalesce(jsonb_typeof(e.document->'enclosure'), 'null') <> 'object' then 'box'
        -- Asked row by row on purpose: "not exists" may be answered by reading all proofs of all shops once.
        when (select 1 from plan_counting where enquiry_id = e.id limit 1) is null then 'plan'
        when (select 1 from proof_result where enquiry_id = e.id and answer->>'verdict' = 'proven' limit 1) is null
          then 'proof'
        else 'placement' end as next
    from (select * from enquiry q where q.branch_id = ${branchId} and q.updated_at >= ${since}
      and not exists (select 1 from placement where enquiry_id = q.id)
      order by q.updated_at desc, q.id limit ${most}) e
    order by e.updated_at desc, e.id`.execute(db);
  return found.rows;
}

export interface SilentSource {
  readonly sourceId: string;
  readonly enquiryId: string;
  readonly title: string;
  readonly label: string;
  readonly place: string;
  readonly lastAt: Date | null;
}

/** Sources that spoke, or were connected, since a day and have been silent for too many of their intervals. */
export async function silentSources(
  db: Rows,
  branchId: string,
  now: Date,
  since: Date,
  silentIntervals: number,
  most: number,
): Promise<SilentSource[]> {
  const found = await sql<SilentSource>`
    select s.id as "sourceId", s.enquiry_id as "enquiryId", s.label, s.place, r.measured_at as "lastAt",
      coalesce(nullif(e.document#>>'{answers,label}', ''), e.document#>>'{enclosure,name}', '') as title
    from live_source s join enquiry e on e.id = s.enquiry_id
    left join lateral (select measured_at from live_reading where source_id = s.id
      order by measured_at desc limit 1) r on true
    where e.branch_id = ${branchId} and coalesce(r.measured_at, s.at) >= ${since}
      and coalesce(r.measured_at, s.at) < ${now}::timestamptz - make_interval(secs => s.interval_s * ${silentIntervals})
    order by coalesce(r.measured_at, s.at) desc, s.id limit ${most}`.execute(db);
  return found.rows;
}
