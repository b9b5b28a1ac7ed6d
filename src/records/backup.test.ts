// What was saved is what comes back: in the same kind of database, in the other kind, from older tables, and never half.
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { gunzipSync, gzipSync } from 'node:zlib';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBackup } from './backup.ts';
import { backupParts } from './backup-format.ts';
import { applySteps, migrationsIn } from './migrate.ts';
import { openRecords, type Records } from './open.ts';
import { restoreBackup } from './restore.ts';
import { programRoot } from './root.ts';
import { type Filled, fillEveryTable } from './testing/every-table.ts';
import { freshDatabaseUrl } from './testing/fresh-database.ts';
import { type SystemServer, startSystemServer, systemPrograms } from './testing/servers.ts';

const at = new Date('2026-02-01T03:00:00Z');
let folder: string;
let file: string;
let records: Records;
let filled: Filled;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'warmstead-backup-'));
  file = join(folder, 'one.sql.gz');
  records = await opened(await freshDatabaseUrl());
  filled = await fillEveryTable(records.db);
  await writeBackup(records.pool, file, at);
});
afterAll(async () => {
  await records.close();
  rmSync(folder, { recursive: true });
});

async function opened(databaseUrl: string): Promise<Records> {
  const result = await openRecords({ databaseUrl, dataFolder: '' });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

async function emptyPool(): Promise<pg.Pool> {
  const pool = new pg.Pool({ connectionString: await freshDatabaseUrl() });
  await pool.query('drop schema public cascade; create schema public');
  return pool;
}

test('it tells how far it is, and stopped in the middle it leaves no file', async () => {
  const stop = new AbortController();
  const told: string[] = [];
  const stopped = join(folder, 'stopped.sql.gz');
  const onTable = (done: number, of: number): void => {
    told.push(`${done} of ${of}`);
    if (done === 3) stop.abort();
  };
  await expect(writeBackup(records.pool, stopped, at, { onTable, signal: stop.signal })).rejects.toThrow(/abort/i);
  expect(told.map((one) => one.split(' ')[0])).toEqual(['1', '2', '3']);
  expect(readdirSync(folder).filter((name) => name.startsWith('stopped'))).toEqual([]);
});

test('everything comes back: each row counted and hashed, the chain unbroken, and the next row goes on', async () => {
  const pool = await emptyPool();
  const restored = await restoreBackup(pool, file);
  if (!restored.ok) throw new Error(JSON.stringify(restored.faults));
  expect(restored.value.chain.breaks).toEqual([]);
  expect(restored.value.chain.links).toBeGreaterThan(18);
  expect(restored.value.newSteps).toEqual([]);
  const again = join(folder, 'again.sql.gz');
  const second = await writeBackup(pool, again, at);
  expect(second.tables).toEqual(restored.value.tables);
  expect(second.tables.filter((table) => table.rows > 0).length).toBeGreaterThan(18);
  // Order numbers go on after the last one, and new rows are linked again.
  const instrument =
    "insert into reading_file_answer (file_id, hints, at, by) select id, '{}', $1, 'tester' from reading_file returning seq";
  const seq = (await pool.query(instrument, [at])).rows[0].seq;
  expect(Number(seq)).toBe(3);
  expect((await pool.query('select count(*)::int as n from chain_link')).rows[0].n).toBe(
    restored.value.chain.links + 1,
  );
  await expect(pool.query("update animal_fact set value = 'x'")).rejects.toThrow('kept as they are');
  await pool.end();
});

test('a backup is of one moment while others write, and only its maker may read it', async () => {
  const writing = Array.from({ length: 40 }, (_, i) =>
    records.db
      .insertInto('hand_reading')
      .values({
        id: crypto.randomUUID(),
        enquiry_id: filled.enquiryId,
        link_id: null,
        wall_s: i,
        values_c: '{}',
        client_key: `busy ${i}`,
        at,
        by: 'tester',
      })
      .execute(),
  );
  const during = join(folder, 'during.sql.gz');
  const [done] = await Promise.all([writeBackup(records.pool, during, at), ...writing]);
  expect(statSync(during).mode & 0o777).toBe(0o600);
  const pool = await emptyPool();
  const restored = await restoreBackup(pool, during);
  expect(restored).toMatchObject({ ok: true, value: { rows: done.rows, chain: { breaks: [] } } });
  await pool.end();
});

test('records are never put over others', async () => {
  expect(await restoreBackup(records.pool, file)).toMatchObject({ ok: false, faults: [{ code: 'RESTORE_NOT_EMPTY' }] });
});

test('a backup that was cut off, damaged or changed is refused, and leaves the database empty', async () => {
  const whole = readFileSync(file);
  const text = gunzipSync(whole).toString('utf8');
  const cases: Readonly<Record<string, Buffer>> = {
    'cut in the middle': whole.subarray(0, whole.length / 2),
    'no gzip': Buffer.from('hello'),
    empty: Buffer.alloc(0),
    'another gzip': gzipSync('hello\nthere\n'),
    'one byte of the packing changed': Buffer.from(whole.map((byte, i) => (i === 2000 ? byte ^ 0xff : byte))),
    'a value changed': gzipSync(text.replace('Probe thermometer', 'Probe thermomet3r')),
    'a row taken out': gzipSync(text.replace(/(copy "placement_event" .*\n).*\n/, '$1')),
    'a table taken out': gzipSync(text.replace(/copy "overlay_withdrawal"[\s\S]*?\n-- .*\n/, '')),
    'the end taken out': gzipSync(text.replace(/-- \{"end".*\n$/, '')),
  };
  const pool = await emptyPool();
  for (const [name, bytes] of Object.entries(cases)) {
    const broken = join(folder, 'broken.sql.gz');
    writeFileSync(broken, bytes);
    const result = await restoreBackup(pool, broken);
    expect(result.ok, name).toBe(false);
    if (!result.ok) expect(['RESTORE_NOT_A_BACKUP', 'RESTORE_DIFFERS'], name).toContain(result.faults[0]?.code);
    expect(
      (await pool.query("select count(*)::int as n from pg_class where relnamespace = 'public'::regnamespace")).rows[0]
        .n,
      name,
    ).toBe(0);
  }
  await pool.end();
});

test('a backup of a newer version is refused', async () => {
  const text = gunzipSync(readFileSync(file)).toString('utf8');
  const newer = join(folder, 'newer.sql.gz');
  writeFileSync(newer, gzipSync(text.replace('"steps":[', '"steps":[{"name":"9999-later.sql","sha256":"0"},')));
  const pool = await emptyPool();
  expect(await restoreBackup(pool, newer)).toMatchObject({ ok: false, faults: [{ code: 'RECORDS_NEWER' }] });
  await pool.end();
});

test('a backup of older tables comes back and is brought up to date, with a chain over the old rows', async () => {
  const pool = await emptyPool();
  const steps = migrationsIn(join(programRoot(), 'src', 'records', 'migrations'));
  const older = steps.filter((step) => step.name < '0070');
  const client = await pool.connect();
  expect((await applySteps(client, older)).ok).toBe(true);
  await client.query(`
    insert into shop values ('00000000-0000-4000-8000-00000000000a', 'Old', '2025-01-01');
    insert into branch (id, shop_id, name, created_at) values ('00000000-0000-4000-8000-00000000000b', '00000000-0000-4000-8000-00000000000a', 'Counter', '2025-01-01');
    insert into enquiry values ('00000000-0000-4000-8000-00000000000c', '00000000-0000-4000-8000-00000000000b', '{"n":1}', 1, '2025-01-02', '2025-01-02', 'old hand');
    insert into enquiry_version values ('00000000-0000-4000-8000-00000000000c', 1, '{"n":1}', '2025-01-02', 'old hand');
    insert into live_source values ('00000000-0000-4000-8000-00000000000d', '00000000-0000-4000-8000-00000000000c', 'probe', 'warm-air', 'tempC', 60, 'x', null, null, null, '2025-01-02', 'old hand');
    insert into live_reading select '00000000-0000-4000-8000-00000000000d', '2025-01-31 23:00Z'::timestamptz + n * interval '1 minute', 25, '2025-02-01' from generate_series(0, 119) n`);
  client.release();
  const old = join(folder, 'old.sql.gz');
  await writeBackup(pool, old, at);
  await pool.end();
  const target = await emptyPool();
  const restored = await restoreBackup(target, old);
  if (!restored.ok) throw new Error(JSON.stringify(restored.faults));
  expect(restored.value.newSteps).toEqual(steps.filter((step) => step.name >= '0070').map((step) => step.name));
  expect(restored.value.chain).toMatchObject({ links: 1, breaks: [], rows: { enquiry_version: 1 } });
  const months = await target.query(
    'select tableoid::regclass::text as month, count(*)::int as n from live_reading group by 1 order by 1',
  );
  expect(months.rows).toEqual([
    { month: 'live_reading_2025_01', n: 60 },
    { month: 'live_reading_2025_02', n: 60 },
  ]);
  await target.end();
});

test('a place that cannot be written to is told, and the file before it stays', async () => {
  await expect(writeBackup(records.pool, join(folder, 'no such folder', 'one.sql.gz'), at)).rejects.toThrow('ENOENT');
  await expect(writeBackup(records.pool, folder, at)).rejects.toThrow();
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
});

test('a file taken apart in pieces of any size is the same file', async () => {
  const text = gunzipSync(readFileSync(file));
  const hashIn = async (size: number): Promise<string> => {
    const pieces = Array.from({ length: Math.ceil(text.length / size) }, (_, i) =>
      text.subarray(i * size, (i + 1) * size),
    );
    const hash = createHash('sha256');
    for await (const part of backupParts(Readable.from(pieces))) {
      if (part.kind === 'rows') hash.update(part.bytes);
      else hash.update(`|${JSON.stringify(part)}|`);
    }
    return hash.digest('hex');
  };
  const whole = await hashIn(text.length);
  for (const size of [1, 2, 3, 5, 64, 4096]) expect(await hashIn(size), `pieces of ${size}`).toBe(whole);
});

describe.skipIf(systemPrograms === undefined)(
  "to a server of the shop's own and back (needs Debian's postgresql)",
  () => {
    let server: SystemServer;
    beforeAll(async () => {
      server = await startSystemServer();
    });
    afterAll(async () => await server.stop());

    test('row counts and hashes are the same on both, and the chain holds', async () => {
      const admin = new pg.Client({ connectionString: server.url('postgres') });
      await admin.connect();
      await admin.query('create database moved');
      await admin.end();
      const target = new pg.Pool({ connectionString: server.url('moved') });
      const there = await restoreBackup(target, file);
      if (!there.ok) throw new Error(JSON.stringify(there.faults));
      expect(there.value.chain.breaks).toEqual([]);
      const back = join(folder, 'back.sql.gz');
      const again = await writeBackup(target, back, at);
      expect(again.tables).toEqual(there.value.tables);
      expect(Number.parseInt(again.head.engine, 10)).toBeGreaterThanOrEqual(15);
      await target.end();
      const home = await emptyPool();
      const returned = await restoreBackup(home, back);
      expect(returned).toMatchObject({ ok: true, value: { tables: again.tables, chain: { breaks: [] } } });
      await home.end();
    });
  },
);
