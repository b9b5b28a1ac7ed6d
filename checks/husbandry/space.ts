// Space standards against their own printed tables and worked examples. Runs as a check module and inside the tests.
import { readFileSync } from 'node:fs';
import type { Facts } from '../../src/husbandry/fact.ts';
import { askedBy, covers } from '../../src/husbandry/space.ts';
import { loadFacts } from '../../src/records/facts.ts';
import type { CheckKind, CheckRow, Provenance, Tolerance } from '../check-row.ts';

interface SpaceInputs {
  readonly standardId: string;
  readonly totalLengthM: number;
  readonly animals?: number;
  /** Only for rows that ask whom a standard covers. */
  readonly speciesId?: string;
  readonly climbs?: boolean;
}

interface SpaceTable {
  readonly id: string;
  readonly kind: CheckKind;
  readonly source: string;
  readonly at: string;
  readonly provenance: Provenance;
  readonly tolerance: Tolerance;
  readonly why: string;
  readonly rows: readonly {
    readonly id: string;
    readonly title: string;
    readonly in: SpaceInputs;
    readonly out: Readonly<Record<string, number | null>>;
  }[];
}

export const readSpaceTables = (): readonly SpaceTable[] =>
  JSON.parse(readFileSync(new URL('./space.json', import.meta.url), 'utf8')) as readonly SpaceTable[];

/** Ours for one row, by the names of the row's `out`; null where the standard is silent. */
function ours(facts: Facts, x: SpaceInputs): Readonly<Record<string, number | null>> {
  const standard = facts.standards[x.standardId];
  if (!standard) throw new Error(`no standard "${x.standardId}"`);
  if (x.speciesId !== undefined)
    return { covers: covers(standard, x.speciesId, x.climbs ?? false, x.totalLengthM) ? 1 : 0 };
  const asked = askedBy(standard.rule, x.totalLengthM, x.animals ?? 1);
  // The least box of a perimeter rule: as narrow as allowed.
  const leastLengthM = asked.perimeterM !== null && asked.widthM !== null ? asked.perimeterM / 2 - asked.widthM : null;
  const leastFloorM2 = leastLengthM !== null && asked.widthM !== null ? leastLengthM * asked.widthM : null;
  return { ...asked, leastLengthM, leastFloorM2 };
}

/** What the standard is silent about is -1 on both sides, so that silence is compared too. */
const silent = -1;

export function spaceRows(facts: Facts, tables: readonly SpaceTable[] = readSpaceTables()): CheckRow[] {
  return tables.flatMap(({ rows, kind, source, at, provenance, tolerance, why }) =>
    rows.flatMap(({ id, title, in: inputs, out }) => {
      const found = ours(facts, inputs);
      return Object.entries(out).map(([quantity, expected]): CheckRow => {
        const value = found[quantity];
        if (value === undefined) throw new Error(`${id}: no "${quantity}"`);
        const unit = quantity.endsWith('M2') ? 'm²' : quantity.endsWith('M') ? 'm' : '-';
        const row = { id, title, quantity, kind, source, at, provenance, unit, tolerance, why };
        return { ...row, expected: expected ?? silent, ours: value ?? silent };
      });
    }),
  );
}

export async function cases(): Promise<CheckRow[]> {
  return spaceRows(loadFacts(new URL('../../data', import.meta.url).pathname).facts);
}
