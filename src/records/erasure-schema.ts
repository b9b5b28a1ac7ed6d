// The table of erasures as TypeScript sees it (migrations/0065-erasure.sql).
import type { ColumnType, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;

export interface ErasureTables {
  erasure: {
    id: Fixed<string>;
    branch_id: Fixed<string>;
    enquiry_id: Fixed<string>;
    reason: Fixed<string>;
    rows_changed: JSONColumnType<Record<string, number>, string, never>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
}
