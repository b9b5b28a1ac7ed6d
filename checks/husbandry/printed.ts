// Facts of data/ against the figures printed in the pages that they name.
import { readFileSync } from 'node:fs';
import type { Facts } from '../../src/husbandry/fact.ts';
import { loadFacts } from '../../src/records/facts.ts';
import type { CheckKind, CheckRow, Provenance, Tolerance } from '../check-row.ts';

interface PrintedTable {
  readonly kind: CheckKind;
  readonly source: string;
  readonly at: string;
  readonly provenance: Provenance;
  readonly tolerance: Tolerance;
  readonly why: string;
  readonly rows: readonly {
    readonly id: string;
    readonly title: string;
    /** Where the fact stands below the facts. */
    readonly path: string;
    readonly unit: string;
    readonly out: Readonly<Record<string, number>>;
  }[];
}

export const readPrinted = (): readonly PrintedTable[] =>
  JSON.parse(readFileSync(new URL('./printed.json', import.meta.url), 'utf8')) as readonly PrintedTable[];

const at = (tree: unknown, path: string): Readonly<Record<string, unknown>> =>
  path
    .split('.')
    .reduce<unknown>((x, key) => (x as Readonly<Record<string, unknown>> | undefined)?.[key], tree) as Readonly<
    Record<string, unknown>
  >;

/** @param only the one path to compare; all when left out */
export function printedRows(facts: Facts, only?: string): CheckRow[] {
  return readPrinted().flatMap(({ rows, ...table }) =>
    rows
      .filter(({ path }) => only === undefined || path === only)
      .flatMap(({ id, title, path, unit, out }) =>
        Object.entries(out).map(([quantity, expected]): CheckRow => {
          const found = at(facts, path)?.[quantity];
          const ours = typeof found === 'number' ? found : Number.NaN;
          return { id, title, quantity, unit, expected, ours, ...table };
        }),
      ),
  );
}

export async function cases(): Promise<CheckRow[]> {
  return printedRows(loadFacts(new URL('../../data', import.meta.url).pathname).facts);
}
