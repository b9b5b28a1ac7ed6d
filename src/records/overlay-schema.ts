// The tables of a branch's own values as TypeScript sees them (migrations/0030-overlays.sql).
import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { ShopParts } from '../husbandry/shop-value.ts';

type Fixed<T> = ColumnType<T, T, never>;
type FixedJson = JSONColumnType<ShopParts, string, never>;

export interface OverlayTables {
  overlay: {
    id: Fixed<string>;
    branch_id: Fixed<string>;
    path: Fixed<string>;
    value: FixedJson;
    was: FixedJson;
    why: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
  overlay_withdrawal: { overlay_id: Fixed<string>; why: Fixed<string>; at: Fixed<Date>; by: Fixed<string> };
}
