// The rows of what is due after a release: put down whole for some placements at a time, read in pages by day.
// Leaves out how they are worked out (desk/aftercare/).
import { type RawBuilder, sql } from 'kysely';
import type { Rows } from './animals.ts';

export type DueState = 'open' | 'done' | 'set-aside';

export interface DueTask {
  readonly placementId: string;
  readonly key: string;
  readonly branchId: string;
  readonly kind: string;
  readonly from: string;
  readonly to: string;
  readonly task: Readonly<Record<string, unknown>>;
  readonly state: DueState;
  readonly doneOn: string | null;
  readonly doneEvent: string | null;
  readonly sequence: number;
}

export interface DueTaskRow extends DueTask {
  readonly changedAt: Date;
}

export interface ReleasedPlacement {
  readonly placementId: string;
  readonly branchId: string;
  readonly speciesId: string;
  readonly releasedOn: string;
  readonly heardOn: string | null;
  readonly diedOn: string | null;
  readonly returnedOn: string | null;
}

export interface ToldConcern {
  readonly eventId: string;
  readonly placementId: string;
  readonly branchId: string;
  readonly urgency: 'now' | 'look';
  readonly toldAt: Date;
  readonly concerns: Readonly<Record<string, unknown>>;
}

/** Takes up to so many marked placements out, locked until the transaction ends: whoever marks one again waits for it. */
export async function takeStale(tx: Rows, branchId: string, most: number, not: readonly string[]): Promise<string[]> {
  const taken = await sql<{ id: string }>`
    delete from aftercare_stale where placement_id in (
      select s.placement_id from aftercare_stale s join placement p on p.id = s.placement_id
      where p.branch_id = ${branchId} and s.placement_id <> all(${[...not]}::uuid[])
      limit ${most} for update of s skip locked)
    returning placement_id as id`.execute(tx);
  return taken.rows.map((row) => row.id);
}

/** How many wait, counted up to a limit. */
export async function countStale(db: Rows, branchId: string, most: number): Promise<number> {
  const found = await sql<{ n: string }>`
    select count(*) as n from (
      select 1 from aftercare_stale s join placement p on p.id = s.placement_id
      where p.branch_id = ${branchId} limit ${most}) counted`.execute(db);
  return Number(found.rows[0]?.n ?? 0);
}

/** Marks what was worked out with other facts. */
export async function markOtherVersions(db: Rows, dataVersion: string): Promise<void> {
  await sql`insert into aftercare_stale
    select placement_id from aftercare_placement where data_version <> ${dataVersion} order by 1
    on conflict do nothing`.execute(db);
}

/** Puts down all that follows from these placements; what no longer follows goes. */
export async function putAftercare(
  tx: Rows,
  placementIds: readonly string[],
  what: {
    readonly released: readonly ReleasedPlacement[];
    readonly tasks: readonly DueTask[];
    readonly concerns: readonly ToldConcern[];
    readonly dataVersion: string;
    readonly at: Date;
  },
): Promise<void> {
  const ids = sql`${[...placementIds]}::uuid[]`;
  await sql`
    insert into aftercare_placement (placement_id, branch_id, species_id, released_on, heard_on, died_on, returned_on,
      calendar_name, data_version)
    select "placementId", "branchId", "speciesId", "releasedOn", "heardOn", "diedOn", "returnedOn", gen_random_uuid(),
      ${what.dataVersion}
    from jsonb_to_recordset(${JSON.stringify(what.released)}::jsonb) as r("placementId" uuid, "branchId" uuid,
      "speciesId" text, "releasedOn" date, "heardOn" date, "diedOn" date, "returnedOn" date)
    on conflict (placement_id) do update set species_id = excluded.species_id, released_on = excluded.released_on,
      heard_on = excluded.heard_on, died_on = excluded.died_on, returned_on = excluded.returned_on,
      data_version = excluded.data_version`.execute(tx);
  await sql`
    with made as (
      select * from jsonb_to_recordset(${JSON.stringify(what.tasks)}::jsonb) as t("placementId" uuid, key text,
        "branchId" uuid, kind text, "from" date, "to" date, task jsonb, state text, "doneOn" date, "doneEvent" uuid,
        sequence integer)),
    gone as (
      delete from aftercare_due d where d.placement_id = any(${ids})
        and not exists (select 1 from made m where m."placementId" = d.placement_id and m.key = d.key))
    insert into aftercare_due as d (placement_id, key, branch_id, kind, from_on, to_on, task, state, done_on, done_event,
      sequence, changed_at)
    select "placementId", key, "branchId", kind, "from", "to", task, state, "doneOn", "doneEvent", sequence, ${what.at}
    from made
    on conflict (placement_id, key) do update set from_on = excluded.from_on, to_on = excluded.to_on,
      task = excluded.task, state = excluded.state, done_on = excluded.done_on, done_event = excluded.done_event,
      sequence = greatest(d.sequence + 1, excluded.sequence), changed_at = excluded.changed_at
    where (d.from_on, d.to_on, d.task, d.state, d.done_on, d.done_event) is distinct from
      (excluded.from_on, excluded.to_on, excluded.task, excluded.state, excluded.done_on, excluded.done_event)`.execute(
    tx,
  );
  await tx
    .deleteFrom('aftercare_concern')
    .where('placement_id', 'in', [...placementIds])
    .execute();
  if (what.concerns.length > 0)
    await tx
      .insertInto('aftercare_concern')
      .values(
        what.concerns.map((one) => ({
          event_id: one.eventId,
          placement_id: one.placementId,
          branch_id: one.branchId,
          urgency: one.urgency,
          told_at: one.toldAt,
          concerns: JSON.stringify(one.concerns),
        })),
      )
      .execute();
}

const columns = sql`d.placement_id as "placementId", d.key, d.branch_id as "branchId", d.kind, d.from_on::text as "from",
  d.to_on::text as "to", d.task, d.state, d.done_on::text as "doneOn", d.done_event as "doneEvent", d.sequence,
  d.changed_at as "changedAt"`;

const dueRows = async (db: Rows, where: RawBuilder<unknown>): Promise<DueTaskRow[]> =>
  (await sql<DueTaskRow>`select ${columns} from aftercare_due d where ${where}`.execute(db)).rows;

/** Tasks of one placement, by day. */
export const dueOfPlacement = async (db: Rows, placementId: string): Promise<DueTaskRow[]> =>
  await dueRows(db, sql`d.placement_id = ${placementId} order by d.to_on, d.key`);

export interface DuePlace {
  readonly to: string;
  readonly placementId: string;
  readonly key: string;
}

/** Tasks that are due or overdue, the longest overdue first, from behind a place on. */
export async function dueOfBranch(
  db: Rows,
  branchId: string,
  today: string,
  most: number,
  behind: DuePlace | null,
): Promise<DueTaskRow[]> {
  const after =
    behind === null
      ? sql`true`
      : sql`(d.to_on, d.placement_id, d.key) > (${behind.to}::date, ${behind.placementId}::uuid, ${behind.key})`;
  return await dueRows(
    db,
    sql`d.branch_id = ${branchId} and d.state = 'open' and d.from_on <= ${today} and ${after}
      order by d.to_on, d.placement_id, d.key limit ${most}`,
  );
}

/** Tasks by their first day within a span, for a calendar. */
export async function openBetween(db: Rows, branchId: string, from: string, to: string, most: number) {
  return await dueRows(
    db,
    sql`d.branch_id = ${branchId} and d.state = 'open' and d.to_on >= ${from} and d.from_on <= ${to}
      order by d.to_on, d.placement_id, d.key limit ${most}`,
  );
}

/** Tasks that were done or set aside since a moment, newest first. */
export async function doneSince(db: Rows, branchId: string, since: Date, most: number): Promise<DueTaskRow[]> {
  return await dueRows(
    db,
    sql`d.branch_id = ${branchId} and d.state <> 'open' and d.changed_at >= ${since}
      order by d.changed_at desc, d.placement_id, d.key limit ${most}`,
  );
}

export interface DueCounts {
  readonly overdue: number;
  readonly due: number;
}

/** Counted up to a limit, which is then what is given. */
export async function countDue(db: Rows, branchId: string, today: string, most: number): Promise<DueCounts> {
  const found = await sql<{ overdue: string; due: string }>`
    select
      (select count(*) from (select 1 from aftercare_due where branch_id = ${branchId} and state = 'open'
        and to_on < ${today} limit ${most}) o) as overdue,
      (select count(*) from (select 1 from aftercare_due where branch_id = ${branchId} and state = 'open'
        and to_on >= ${today} and from_on <= ${today} limit ${most}) n) as due`.execute(db);
  return { overdue: Number(found.rows[0]?.overdue ?? 0), due: Number(found.rows[0]?.due ?? 0) };
}

/** What was told and not looked at yet, the urgent first. */
export async function concernsOfBranch(db: Rows, branchId: string, most: number): Promise<ToldConcern[]> {
  return await db
    .selectFrom('aftercare_concern')
    .select([
      'event_id as eventId',
      'placement_id as placementId',
      'branch_id as branchId',
      'urgency',
      'told_at as toldAt',
      'concerns',
    ])
    .where('branch_id', '=', branchId)
    .orderBy('urgency', 'desc')
    .orderBy('told_at')
    .limit(most)
    .execute();
}

export async function releasedPlacement(
  db: Rows,
  placementId: string,
): Promise<(ReleasedPlacement & { readonly calendarName: string }) | undefined> {
  const found = await sql<ReleasedPlacement & { calendarName: string }>`
    select placement_id as "placementId", branch_id as "branchId", species_id as "speciesId",
      released_on::text as "releasedOn", heard_on::text as "heardOn", died_on::text as "diedOn",
      returned_on::text as "returnedOn", calendar_name as "calendarName"
    from aftercare_placement where placement_id = ${placementId}`.execute(db);
  return found.rows[0];
}
