// Turns a JSON table of outside values, with the runner that computes ours, into check rows.
import { readFileSync } from 'node:fs';
import type { CheckKind, CheckRow, Provenance, Tolerance } from './check-row.ts';

export type Inputs = Readonly<Record<string, number | readonly number[] | readonly (readonly number[])[]>>;
/** Ours for one row, by the same names as the row's `out`. */
export type Runner = (inputs: Inputs) => Readonly<Record<string, number>>;

interface TableRow {
  readonly id: string;
  readonly title: string;
  readonly in: Inputs;
  readonly out: Readonly<Record<string, number | { readonly low: number; readonly high: number }>>;
  readonly unit: string;
}

export interface Table {
  readonly id: string;
  /** Name of the runner. */
  readonly run: string;
  readonly kind: CheckKind;
  readonly source: string;
  readonly at: string;
  readonly provenance: Provenance;
  readonly tolerance: Tolerance;
  readonly why: string;
  readonly rows: readonly TableRow[];
}

export const readTables = (path: URL): readonly Table[] => JSON.parse(readFileSync(path, 'utf8')) as readonly Table[];

/** Check rows of one table. Throws when the table names no runner or a runner gives no value: that is our own bug. */
export function rowsOf(table: Table, runners: Readonly<Record<string, Runner>>): CheckRow[] {
  const runner = runners[table.run];
  if (runner === undefined) throw new Error(`table ${table.id}: no runner "${table.run}"`);
  return table.rows.flatMap((row) => {
    const ours = runner(row.in);
    return Object.entries(row.out).map(([quantity, expected]) => {
      const value = ours[quantity];
      if (value === undefined) throw new Error(`${row.id}: runner "${table.run}" gives no "${quantity}"`);
      const { kind, source, at, provenance, tolerance, why } = table;
      const { id, title, unit } = row;
      return { id, title, quantity, kind, source, at, provenance, expected, ours: value, unit, tolerance, why };
    });
  });
}
