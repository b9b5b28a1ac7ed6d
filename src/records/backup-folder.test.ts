import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBackup } from './backup.ts';
import { addBackup, checkBackup } from './backup-folder.ts';
import type { Records } from './open.ts';
import { fillEveryTable } from './testing/every-table.ts';
import { freshRecords } from './testing/fresh-database.ts';

let records: Records;
let folder: string;

beforeAll(async () => {
  records = await freshRecords();
  await fillEveryTable(records.db);
  folder = mkdtempSync(join(tmpdir(), 'warmstead-nights-'));
});
afterAll(async () => {
  await records.close();
  rmSync(folder, { recursive: true });
});

test('each night adds one, the oldest go, and a file that is not ours stays', async () => {
  writeFileSync(join(folder, 'holiday.jpg'), 'x');
  for (const day of ['01', '02', '03', '04']) {
    const kept = await addBackup(records.pool, folder, 2, new Date(`2026-03-${day}T03:15:00Z`));
    expect(kept.rows).toBeGreaterThan(20);
  }
  expect(readdirSync(folder).sort()).toEqual([
    'holiday.jpg',
    'warmstead-2026-03-03T031500Z.sql.gz',
    'warmstead-2026-03-04T031500Z.sql.gz',
  ]);
});

test('a file that is not what was written is not counted as a backup', async () => {
  const file = join(folder, 'other.sql.gz');
  const done = await writeBackup(records.pool, file, new Date('2026-03-05T03:15:00Z'));
  await checkBackup(file, done);
  const tables = done.tables.map((table, i) => (i === 3 ? { ...table, sha256: '0' } : table));
  await expect(checkBackup(file, { ...done, tables })).rejects.toThrow(done.tables[3]?.table);
});
