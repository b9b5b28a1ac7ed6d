import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { migrate, migrationNames } from './migrate.ts';
import { freshDatabaseUrl } from './testing/fresh-database.ts';

let pool: pg.Pool;
let folder: string;

beforeAll(async () => {
  pool = new pg.Pool({ connectionString: await freshDatabaseUrl() });
  await pool.query('drop schema public cascade; create schema public');
  folder = mkdtempSync(join(tmpdir(), 'warmstead-steps-'));
  writeFileSync(join(folder, '0001-one.sql'), 'create table one (n integer); insert into one values (1);');
});
afterAll(async () => {
  await pool.end();
  rmSync(folder, { recursive: true });
});

test('two that start together apply each step once', async () => {
  const both = await Promise.all([migrate(pool, folder), migrate(pool, folder)]);
  expect(both.flatMap((result) => (result.ok ? result.value : ['failed']))).toEqual(['0001-one.sql']);
  expect((await pool.query('select * from one')).rows).toEqual([{ n: 1 }]);
});

test('a step that fails leaves nothing of itself', async () => {
  const broken = join(folder, '0002-broken.sql');
  writeFileSync(broken, 'create table two (n integer); insert into two values (1 / 0);');
  await expect(migrate(pool, folder)).rejects.toThrow('0002-broken.sql');
  expect((await pool.query("select to_regclass('two') as two")).rows).toEqual([{ two: null }]);
  rmSync(broken);
});

test('a step that was changed or is gone is refused by name', async () => {
  writeFileSync(join(folder, '0001-one.sql'), 'create table one (n bigint);');
  const changed = await migrate(pool, folder);
  expect(changed).toMatchObject({ ok: false, faults: [{ code: 'RECORDS_MIGRATION_CHANGED', field: '0001-one.sql' }] });
  rmSync(join(folder, '0001-one.sql'));
  expect(await migrate(pool, folder)).toMatchObject({
    ok: false,
    faults: [{ code: 'RECORDS_NEWER', field: '0001-one.sql' }],
  });
});

test('no two steps of the program have one number, so that their order is never by chance', () => {
  const numbers = migrationNames().map((name) => name.slice(0, 4));
  expect(numbers.every((number) => /^\d{4}$/.test(number))).toBe(true);
  expect(new Set(numbers).size).toBe(numbers.length);
});
