// The tables of placements as TypeScript sees them (migrations/0040-placements.sql).
import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { SaidPart } from './packs-given.ts';

type Fixed<T> = ColumnType<T, T, never>;
type Json = JSONColumnType<Record<string, unknown>, string, never>;

export type PlacementEventKind =
  | 'statement'
  | 'override'
  | 'released'
  | 'refused'
  | 'reopened'
  | 'taken-back'
  | 'aftercare';

export interface PlacementTables {
  placement: {
    id: Fixed<string>;
    branch_id: Fixed<string>;
    enquiry_id: Fixed<string>;
    animal_id: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  placement_event: {
    id: Fixed<string>;
    placement_id: Fixed<string>;
    kind: Fixed<PlacementEventKind>;
    body: Json;
    token: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
  pack_given: {
    id: Fixed<string>;
    placement_id: Fixed<string>;
    state: Fixed<string>;
    language: Fixed<string>;
    temperature: Fixed<'C' | 'F'>;
    length: Fixed<'cm' | 'in'>;
    mass: Fixed<'g' | 'oz'>;
    said: ColumnType<readonly SaidPart[], string, never>;
    bytes: Fixed<Buffer>;
    sha256: Fixed<string>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
  pack_print: {
    id: Fixed<string>;
    placement_id: Fixed<string>;
    language: Fixed<string>;
    temperature: Fixed<'C' | 'F'>;
    length: Fixed<'cm' | 'in'>;
    mass: Fixed<'g' | 'oz'>;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
}
