// Readings in bulk, as a person loads them: from files, with wrong rows named, on a real database.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { warmstead } from '../cli/testing/spawn-cli.ts';
import { openRecords } from '../records/open.ts';
import { fillEveryTable } from '../records/testing/every-table.ts';
import { freshDatabaseUrl } from '../records/testing/fresh-database.ts';

let url: string;
let folder: string;
let pool: pg.Pool;
let source: string;
const wait = { timeout: 90_000 };

beforeAll(async () => {
  url = await freshDatabaseUrl();
  const records = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!records.ok) throw new Error(JSON.stringify(records.faults));
  source = (await fillEveryTable(records.value.db)).sourceId;
  await records.value.close();
  pool = new pg.Pool({ connectionString: url });
  folder = mkdtempSync(join(tmpdir(), 'warmstead-load-'));
});
afterAll(async () => {
  await pool.end();
  rmSync(folder, { recursive: true });
});

const load = async (args: readonly string[], input = '') =>
  await warmstead(['load-readings', ...args], input, { DATABASE_URL: url });
const count = async (): Promise<number> =>
  (await pool.query<{ n: number }>('select count(*)::int as n from live_reading where source_id = $1', [source]))
    .rows[0]?.n ?? 0;
const startMs = Date.UTC(2024, 0, 1);
const row = (n: number): string =>
  `${source},${new Date(startMs + n * 60_000).toISOString()},${(20 + (n % 80) / 10).toFixed(1)}`;
const file = (name: string, rows: readonly string[]): string => {
  const path = join(folder, name);
  const text = ['source,time,value', ...rows].join('\r\n');
  writeFileSync(path, name.endsWith('.gz') ? gzipSync(text) : text);
  return path;
};
const numbers = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);

test('a hundred thousand rows of three files, one packed; the same again is nothing new', wait, async () => {
  const before = await count();
  const files = [
    file('one.csv', numbers(0, 50_000).map(row)),
    file('two.csv.gz', numbers(50_000, 90_000).map(row)),
    file('three.csv', numbers(90_000, 100_000).map(row)),
  ];
  const done = await load([...files, '--json']);
  expect(done).toMatchObject({ code: 0, err: '' });
  expect(JSON.parse(done.out)).toMatchObject({ files: 3, rows: 100_000, written: 100_000, known: 0, leftOut: 0 });
  expect(await count()).toBe(before + 100_000);
  const again = await load(files);
  expect(again.code).toBe(0);
  expect(again.out).toContain('100000 readings, 0 new, 100000 were there already');
});

test('wrong rows are named by file and line, and nothing is kept', wait, async () => {
  const before = await count();
  const bad = [
    row(200_000),
    `nobody,2024-01-01T00:00:00Z,20`,
    `${source},2024-01-01 00:00,20`,
    `${source},2124-01-01T00:00:00Z,20`,
    `${source},2024-01-01T00:00:00Z,600`,
    `${source},2024-01-01T00:00:00Z`,
    `${source},2024-01-01T00:00:00Z,20,5`,
    `${'9'.repeat(5000)}`,
  ];
  const path = file('bad.csv', bad);
  const refused = await load([path]);
  expect(refused.code).toBe(64);
  for (const [line, code] of [
    [3, 'BULK_SOURCE'],
    [4, 'BULK_TIME'],
    [5, 'BULK_TIME'],
    [6, 'BULK_VALUE'],
    [7, 'BULK_ROW'],
    [8, 'BULK_ROW'],
    [9, 'BULK_ROW'],
  ] as const) {
    expect(refused.err.replace(/\s+/g, ' ')).toMatch(new RegExp(`bad\\.csv:${line}[^0-9].*${code}`));
  }
  expect(await count()).toBe(before);
  const part = await load([path, '--leave-out', '--json']);
  expect(part.code).toBe(1);
  expect(JSON.parse(part.out)).toMatchObject({ rows: 8, written: 1, leftOut: 7 });
  expect(await count()).toBe(before + 1);
});

test(
  'from standard input; a file without the heading, an empty one and one that is not there are refused',
  wait,
  async () => {
    const before = await count();
    const piped = await load(['-'], `source,time,value\n${row(300_000)}\n`);
    expect(piped).toMatchObject({ code: 0, err: '' });
    expect(await count()).toBe(before + 1);
    for (const text of ['', 'time,source\n1,2\n']) {
      const refused = await load(['-'], text);
      expect([refused.code, refused.err.includes('BULK_HEADING')]).toEqual([64, true]);
    }
    const none = await load([join(folder, 'nothing.csv.gz')]);
    expect([none.code, none.err.includes('BACKUP_DISK')]).toEqual([64, true]);
  },
);
