import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Facts } from '../../src/husbandry/fact.ts';
import { factsFrom } from '../../src/husbandry/facts.ts';
import { standardFrom } from '../../src/husbandry/facts-rules.ts';
import { readRawFacts } from '../../src/records/facts.ts';
import { judge } from '../check-row.ts';
import { spaceRows } from './space.ts';

const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const { facts } = factsFrom(raw);
const ctx = { file: 'standards.json', sourceKeys: new Set(Object.keys(facts.sources)) };
const disagreeing = (among: Facts) => spaceRows(among).filter((row) => judge(row, []).verdict !== 'agrees');

/** Every number below a value, as a path. */
function numbersIn(x: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof x === 'number') return [path];
  if (typeof x !== 'object' || x === null) return [];
  return Object.entries(x).flatMap(([key, value]) => numbersIn(value, [...path, key]));
}

/** Whether one changed number of a standard is noticed: refused by the data check, or a printed figure disagrees. */
function noticed(index: number, path: readonly (string | number)[], change: (v: number) => number): boolean {
  const row = structuredClone((raw['standards.json'] as Record<string | number, unknown>[])[index]) as Record<
    string | number,
    unknown
  >;
  let at = row;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  at[last] = change(at[last] as number);
  const { rows, faults } = standardFrom(ctx, String(row.id), row as Readonly<Record<string, unknown>>);
  const [standard] = rows;
  if (faults.length > 0 || !standard) return true;
  return disagreeing({ ...facts, standards: { ...facts.standards, [standard.id]: standard } }).length > 0;
}

describe('space standards against their printed tables', () => {
  test('all agree', () => {
    expect(disagreeing(facts)).toEqual([]);
  });

  const standards = raw['standards.json'] as readonly {
    id: string;
    rule: object;
    fromLengthM: unknown;
    toLengthM: unknown;
  }[];
  const places = standards.flatMap((standard, index) =>
    numbersIn({ rule: standard.rule, fromLengthM: standard.fromLengthM, toLengthM: standard.toLengthM }).map(
      (path) => ({
        index,
        path,
        name: `${standard.id}.${path.join('.')}`,
      }),
    ),
  );

  test('there are many numbers to change', () => {
    expect(places.length).toBeGreaterThan(150);
  });

  test.each(places)('changing $name is noticed', ({ index, path }) => {
    const whole = path.at(-1) === 'animals';
    expect(noticed(index, path, (v) => (whole ? v + 1 : v * 1.05 + 0.001))).toBe(true);
    expect(noticed(index, path, (v) => (whole ? (v === 1 ? 2 : v - 1) : v * 0.95))).toBe(true);
  });
});
