// The commands that keep the records, as a person starts them, on a real database.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { warmstead } from '../cli/testing/spawn-cli.ts';
import { openRecords } from '../records/open.ts';
import { fillEveryTable } from '../records/testing/every-table.ts';
import { freshDatabaseUrl } from '../records/testing/fresh-database.ts';

let url: string;
let folder: string;
const wait = { timeout: 60_000 };

beforeAll(async () => {
  url = await freshDatabaseUrl();
  const records = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!records.ok) throw new Error(JSON.stringify(records.faults));
  await fillEveryTable(records.value.db);
  await records.value.close();
  folder = mkdtempSync(join(tmpdir(), 'warmstead-commands-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (args: readonly string[], databaseUrl = url) => warmstead(args, '', { DATABASE_URL: databaseUrl });

async function query(text: string, databaseUrl = url): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  await client.query(text);
  await client.end();
}

test('sound records end well; saved, put back into an empty database and checked again', wait, async () => {
  const sound = await run(['verify-records']);
  expect(sound).toMatchObject({ code: 0, err: '' });
  expect(sound.out).toContain('SOUND');
  const file = join(folder, 'shop.sql.gz');
  const saved = await run(['backup', file]);
  expect(saved).toMatchObject({ code: 0, err: '' });
  const over = await run(['restore', file]);
  expect(over.code).toBe(64);
  expect(over.err).toContain('RESTORE_NOT_EMPTY');
  const target = await freshDatabaseUrl();
  await query('drop schema public cascade; create schema public', target);
  const nothing = await run(['verify-records'], target);
  expect(nothing).toMatchObject({ code: 64 });
  expect(nothing.err).toContain('RECORDS_NONE');
  const back = await run(['restore', file, '--json'], target);
  expect(back).toMatchObject({ code: 0, err: '' });
  const head = JSON.parse(back.out).chain.heads[0];
  const known = await run(['verify-records', '--head', `${head.branchId}:${head.number}:${head.sha256}`], target);
  expect(known.code).toBe(0);
  const other = await run(['verify-records', '--head', `${head.branchId}:${head.number + 1}:${head.sha256}`], target);
  expect(other.code).toBe(1);
  expect(other.out).toContain('cut off');
});

test('a row that was changed is named, in both languages, with who wrote it and when', wait, async () => {
  await query("set session_replication_role to 'replica'; update animal_event set body = '{\"massG\": 999}'");
  const english = await run(['verify-records']);
  expect(english.code).toBe(1);
  expect(english.out).toMatch(
    /BROKEN {2}in 1 place[\s\S]*animal_event [0-9a-f-]{36} \(link \d+\)\n {4}This row is not what was written\.\n {4}written 2026-01-15T09:00:00\+00:00 by tester/,
  );
  const german = await run(['verify-records', '--lang', 'de']);
  expect(german.out).toContain('Diese Zeile ist nicht, was geschrieben wurde.');
});

test('a folder that is not there and an end that is none are refused with what to do', wait, async () => {
  const nowhere = await run(['backup', join(folder, 'none', 'x.gz')]);
  expect(nowhere.code).toBe(64);
  expect(nowhere.err).toContain('BACKUP_DISK');
  const head = await run(['verify-records', '--head', 'nonsense']);
  expect(head.code).toBe(64);
  const move = await run(['move-records'], '');
  expect(move.code).toBe(64);
  expect(move.err).toContain('DATABASE_URL');
});

test('built-in records move to an empty server, with every count and hash the same', { timeout: 120_000 }, async () => {
  const data = join(folder, 'built-in');
  const filled = await openRecords({ dataFolder: data });
  if (!filled.ok) throw new Error(JSON.stringify(filled.faults));
  await fillEveryTable(filled.value.db);
  await filled.value.close();
  const target = await freshDatabaseUrl();
  await query('drop schema public cascade; create schema public', target);
  const moved = await warmstead(['move-records'], '', { DATABASE_URL: target, WARMSTEAD_DATA: data });
  expect(moved.err).toBe('');
  expect(moved.code).toBe(0);
  expect(moved.out).toMatch(/placement_event +1 {2}[0-9a-f]{16}/);
  expect(moved.out).toContain('SOUND');
  const there = await run(['verify-records'], target);
  expect(there.code).toBe(0);
});
