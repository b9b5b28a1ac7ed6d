// What the tables look like to TypeScript: one interface for each table of migrations/, same names.
import type { ColumnType, Generated, JSONColumnType, Kysely } from 'kysely';
import type { AccountTables } from './account-schema.ts';
import type { AftercareTables } from './aftercare-schema.ts';
import type { AnimalTables } from './animal-schema.ts';
import type { ErasureTables } from './erasure-schema.ts';
import type { OverlayTables } from './overlay-schema.ts';
import type { PlacementTables } from './placement-schema.ts';
import type { ReadingTables } from './reading-schema.ts';
import type { ShelfTables } from './shelf-schema.ts';

/** Set once, never changed. */
type Fixed<T> = ColumnType<T, T, never>;
/** Any JSON object. It goes in as text, so that lists and numbers are never taken for PostgreSQL's own. */
type Json = JSONColumnType<Record<string, unknown>>;

export interface Tables
  extends AccountTables,
    AftercareTables,
    AnimalTables,
    ErasureTables,
    OverlayTables,
    PlacementTables,
    ReadingTables,
    ShelfTables {
  shop: { id: Fixed<string>; name: string; created_at: Fixed<Date> };
  branch: {
    id: Fixed<string>;
    shop_id: Fixed<string>;
    name: string;
    created_at: Fixed<Date>;
    place: Generated<string>;
  };
  enquiry: {
    id: Fixed<string>;
    branch_id: Fixed<string>;
    document: Json;
    version: number;
    created_at: Fixed<Date>;
    updated_at: Date;
    created_by: Fixed<string>;
  };
  enquiry_version: {
    enquiry_id: Fixed<string>;
    version: Fixed<number>;
    document: Json;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  work_end: { id: Fixed<string>; ended: Fixed<'kept' | 'stopped'>; at: Fixed<Date>; kept_id: string | null };
  plan_result_standing: {
    seq: Generated<string>;
    plan_id: Fixed<string>;
    counts: Fixed<boolean>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  plan_result: {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    enquiry_version: Fixed<number>;
    answer: Json;
    model_version: Fixed<string>;
    data_version: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
}

export type Db = Kysely<Tables>;
