// The table of effects in docs/theory/README.md names only files and checks that exist.
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const page = readFileSync(new URL('../../docs/theory/README.md', import.meta.url), 'utf8');
const evidence = readFileSync(new URL('../../docs/evidence.md', import.meta.url), 'utf8');
const rows = page.split('\n').filter((line) => line.startsWith('| ') && line.includes('`'));

test('every file of the table exists', () => {
  const named = rows.flatMap((row) => [...row.matchAll(/`([\w./-]+\.ts)`/g)].map((m) => m[1]!));
  expect(named.length).toBeGreaterThan(40);
  const missing = named.filter(
    (name) => !['./', './formulas/'].some((folder) => existsSync(new URL(`${folder}${name}`, import.meta.url))),
  );
  expect(missing).toEqual([]);
});

test('every check of the table stands in the evidence', () => {
  const named = rows.flatMap((row) =>
    [...row.matchAll(/\b(P-\d{3}|FLOW-\w+|ZONAL-\d+|SCREEN-\d|SC\d)\b/g)].map((m) => m[1]!),
  );
  expect(named.length).toBeGreaterThan(30);
  expect(named.filter((id) => !evidence.includes(`| ${id} |`))).toEqual([]);
});
