// The tables of animals as TypeScript sees them (migrations/0010-animals.sql).
import type { ColumnType, Generated, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;

export interface AnimalTables {
  animal: { id: Fixed<string>; shop_id: Fixed<string>; created_at: Fixed<Date>; created_by: Fixed<string> };
  animal_fact: {
    id: Fixed<string>;
    animal_id: Fixed<string>;
    field: Fixed<string>;
    value: Fixed<string>;
    reason: Fixed<string>;
    branch_id: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
  animal_event: {
    id: Fixed<string>;
    animal_id: Fixed<string>;
    kind: Fixed<string>;
    happened_on: ColumnType<string, string, never>;
    happened_at: Fixed<Date>;
    body: JSONColumnType<Record<string, unknown> | null, string | null, never>;
    corrects: Fixed<string | null>;
    reason: Fixed<string>;
    branch_id: Fixed<string>;
    recorded_at: Fixed<Date>;
    by: Fixed<string>;
    client_key: Fixed<string | null>;
    seq: Generated<string>;
  };
  animal_whereabouts: { animal_id: Fixed<string>; branch_id: string; enclosure: string; gone: boolean };
  animal_photo: {
    id: Fixed<string>;
    animal_id: Fixed<string>;
    media_type: Fixed<string>;
    bytes: Fixed<Buffer>;
    sha256: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  examination_draft: {
    animal_id: Fixed<string>;
    document: JSONColumnType<Record<string, unknown>>;
    updated_at: Date;
    by: string;
  };
}
