import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { factsFrom } from '../../src/husbandry/facts.ts';
import { readRawFacts } from '../../src/records/facts.ts';
import { judge } from '../check-row.ts';
import { spaceRows } from './space.ts';

const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const disagreeing = (changed: Readonly<Record<string, unknown>>) => {
  const { facts, faults } = factsFrom(changed);
  // A change that the data check itself refuses is caught as well.
  if (faults.length > 0) return ['refused'];
  return spaceRows(facts).filter((row) => judge(row, []).verdict !== 'agrees');
};

/** Every number below a value, as a path. */
function numbersIn(x: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof x === 'number') return [path];
  if (typeof x !== 'object' || x === null) return [];
  return Object.entries(x).flatMap(([key, value]) => numbersIn(value, [...path, key]));
}

/** The raw facts with one number of standards.json changed. */
function mutant(index: number, path: readonly (string | number)[], change: (v: number) => number) {
  const draft = structuredClone(raw) as Record<string, unknown>;
  let at = (draft['standards.json'] as Record<string | number, unknown>[])[index] as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  at[last] = change(at[last] as number);
  return draft;
}

describe('space standards against their printed tables', () => {
  test('all agree', () => {
    expect(disagreeing(raw)).toEqual([]);
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
    expect(disagreeing(mutant(index, path, (v) => (whole ? v + 1 : v * 1.05 + 0.001))).length).toBeGreaterThan(0);
    expect(
      disagreeing(mutant(index, path, (v) => (whole ? Math.max(1, v - 1) + (v === 1 ? 1 : 0) : v * 0.95))).length,
    ).toBeGreaterThan(0);
  });
});
