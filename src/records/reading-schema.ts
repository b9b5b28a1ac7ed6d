// The tables of readings and proofs as TypeScript sees them (migrations/0020-readings.sql, 0121-typed-readings-aside.sql).
import type { ColumnType, Generated, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;
type Json = JSONColumnType<Record<string, unknown>, string, never>;

interface Written {
  at: Fixed<Date>;
  by: Fixed<string>;
}

export interface ReadingTables {
  instrument: Written & { id: Fixed<string>; branch_id: Fixed<string>; name: Fixed<string> };
  instrument_check: Written & {
    id: Fixed<string>;
    instrument_id: Fixed<string>;
    quantity: Fixed<string>;
    how: Fixed<string>;
    truth: Fixed<number>;
    shown: Fixed<number>;
  };
  reading_file: Written & {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    name: Fixed<string>;
    bytes: Fixed<Buffer>;
    sha256: Fixed<string>;
    seq: Generated<string>;
  };
  reading_file_answer: Written & { file_id: Fixed<string>; hints: Json; seq: Generated<string> };
  reading_file_withdrawal: Written & { file_id: Fixed<string>; why: Fixed<string> };
  keeper_link: Written & {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    secret_sha256: Fixed<string>;
    expires_at: Fixed<Date>;
  };
  keeper_link_withdrawal: Written & { link_id: Fixed<string> };
  hand_reading: Written & {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    link_id: Fixed<string | null>;
    wall_s: ColumnType<string, number, never>;
    values_c: Json;
    client_key: Fixed<string>;
  };
  hand_reading_standing: Written & {
    seq: Generated<string>;
    reading_id: Fixed<string>;
    counts: Fixed<boolean>;
    why: Fixed<string>;
  };
  live_source: Written & {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    label: Fixed<string>;
    place: Fixed<string>;
    quantity: Fixed<string>;
    interval_s: Fixed<number>;
    secret_sha256: Fixed<string>;
    topic: Fixed<string | null>;
    value_key: Fixed<string | null>;
    instrument_id: Fixed<string | null>;
  };
  live_reading: { source_id: Fixed<string>; measured_at: Fixed<Date>; value: Fixed<number>; received_at: Fixed<Date> };
  proof_result: Written & {
    id: Fixed<string>;
    enquiry_id: Fixed<string>;
    enquiry_version: Fixed<number>;
    answer: Json;
    inputs: Json;
    model_version: Fixed<string>;
    data_version: Fixed<string>;
    seq: Generated<string>;
  };
}
