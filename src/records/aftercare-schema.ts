// The tables of aftercare as TypeScript sees them (migrations/0050-calendar-feed.sql, 0051-aftercare-due.sql,
// 0052-placement-standing.sql).
import type { ColumnType, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;
type Day = ColumnType<string, string, string>;
type MaybeDay = ColumnType<string | null, string | null, string | null>;
type Json = JSONColumnType<Record<string, unknown>, string, string>;

export interface AftercareTables {
  calendar_feed: {
    id: Fixed<string>;
    branch_id: Fixed<string>;
    placement_id: Fixed<string | null>;
    language: Fixed<string>;
    temperature: Fixed<'C' | 'F' | null>;
    length: Fixed<'cm' | 'in' | null>;
    mass: Fixed<'g' | 'oz' | null>;
    secret_sha256: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  calendar_feed_withdrawal: { feed_id: Fixed<string>; at: Fixed<Date>; by: Fixed<string> };
  aftercare_placement: {
    placement_id: Fixed<string>;
    branch_id: Fixed<string>;
    species_id: string;
    released_on: Day;
    heard_on: MaybeDay;
    died_on: MaybeDay;
    returned_on: MaybeDay;
    calendar_name: Fixed<string>;
    data_version: string;
  };
  aftercare_due: {
    placement_id: Fixed<string>;
    key: Fixed<string>;
    branch_id: Fixed<string>;
    kind: Fixed<string>;
    from_on: Day;
    to_on: Day;
    task: Json;
    state: 'open' | 'done' | 'set-aside';
    done_on: MaybeDay;
    done_event: string | null;
    sequence: number;
    changed_at: Date;
  };
  aftercare_concern: {
    event_id: Fixed<string>;
    placement_id: Fixed<string>;
    branch_id: Fixed<string>;
    urgency: Fixed<'now' | 'look'>;
    told_at: Fixed<Date>;
    concerns: Json;
  };
  placement_standing: {
    placement_id: Fixed<string>;
    branch_id: Fixed<string>;
    state: 'open' | 'released' | 'refused';
    changed_at: Date;
  };
  aftercare_stale: { placement_id: Fixed<string> };
}
