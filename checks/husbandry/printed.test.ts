import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { factsFrom } from '../../src/husbandry/facts.ts';
import { loadFacts, readRawFacts } from '../../src/records/facts.ts';
import { judge } from '../check-row.ts';
import { printedRows, readPrinted } from './printed.ts';

const folder = fileURLToPath(new URL('../../data', import.meta.url));
const { facts } = loadFacts(folder);
const { raw } = readRawFacts(folder);

const files: Readonly<Record<string, string>> = { heaters: 'heaters.json', materialFacts: 'materials.json' };

/** Whether one changed number is noticed: refused by the data check, or it no longer agrees with the page. */
function noticed(path: string, quantity: string, by: number): boolean {
  const [table = '', id = '', ...rest] = path.split('.');
  const file = table === 'species' ? `species/${id}.json` : (files[table] ?? '');
  const some = {
    'sources.json': raw['sources.json'],
    [file]: structuredClone(raw[file]) as ReturnType<typeof JSON.parse>,
  };
  const before = factsFrom(some).faults.length;
  const row = table === 'species' ? some[file] : some[file].find((r: { id: string }) => r.id === id);
  const fact = rest.filter((key) => key !== 'facts').reduce((x, key) => x[key], row);
  fact[quantity] *= by;
  const after = factsFrom(some);
  const rows = printedRows(after.facts, path);
  return after.faults.length > before || rows.some((r) => judge(r, []).verdict !== 'agrees');
}

describe('facts against the pages they name', () => {
  test('all agree', () => {
    expect(printedRows(facts).filter((row) => judge(row, []).verdict !== 'agrees')).toEqual([]);
  });

  test('the source named by the fact is the page that was read, or stands among its alternatives', () => {
    for (const { source, rows } of readPrinted())
      for (const { path } of rows) {
        const fact = path.split('.').reduce<ReturnType<typeof JSON.parse>>((x, key) => x[key], facts);
        const named = [fact.source, ...(fact.alternatives ?? []).map((a: { source: string }) => a.source)];
        const collected = ['GLOBTHERM', 'EMISSIVITY-2'].includes(source);
        expect(collected || named.includes(source), `${path} names ${named}`).toBe(true);
      }
  });

  const places = readPrinted().flatMap(({ rows }) =>
    rows.flatMap(({ path, out }) => Object.keys(out).map((quantity) => ({ path, quantity }))),
  );
  test.each(places)('changing $path $quantity is noticed', ({ path, quantity }) => {
    expect(noticed(path, quantity, 0.93)).toBe(true);
    expect(noticed(path, quantity, 1.07)).toBe(true);
  });
});
