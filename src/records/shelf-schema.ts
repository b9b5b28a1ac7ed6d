// The table of a branch's shelves as TypeScript sees it (migrations/0032-shelf.sql).
import type { ColumnType, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;

export type ShelfStep = 'changed' | 'brought-in' | 'put-back';

export interface ShelfTables {
  shelf_version: {
    branch_id: Fixed<string>;
    version: Fixed<number>;
    document: JSONColumnType<Record<string, unknown>, string, never>;
    step: Fixed<ShelfStep>;
    back_to: Fixed<number | null>;
    why: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
}
