// Rows of shop values are only added to.
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Records } from './open.ts';
import { insertOverlay, overlayRows, standingOverlays, withdrawStanding } from './overlays.ts';
import { firstBranch } from './shops.ts';
import { freshRecords } from './testing/fresh-database.ts';

let records: Records;
let branchId: string;
const at = new Date('2026-03-01T10:00:00Z');
beforeAll(async () => {
  records = await freshRecords();
  branchId = (await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at })).branchId;
});
afterAll(async () => await records.close());

const overlay = { path: 'care.x', value: { low: 1, high: 2 }, was: { low: 0, high: 1 }, why: 'tried' };

test('nothing put down can be changed or deleted, and two at once leave one standing', async () => {
  const writer = { branchId, at, by: 'tester' };
  const ids = await Promise.all([
    insertOverlay(records.db, overlay, writer),
    insertOverlay(records.db, overlay, writer),
  ]);
  const standing = await standingOverlays(records.db, branchId);
  expect(standing).toHaveLength(1);
  expect(ids).toContain(standing[0]?.id);
  expect(await overlayRows(records.db, branchId)).toHaveLength(2);
  for (const table of ['overlay', 'overlay_withdrawal']) {
    await expect(sql.raw(`delete from ${table}`).execute(records.db)).rejects.toThrow('kept as they are');
    await expect(sql.raw(`update ${table} set why = ''`).execute(records.db)).rejects.toThrow('kept as they are');
  }
  const [last] = standing;
  const both = [1, 2].map(() => withdrawStanding(records.db, last?.id ?? '', 'enough', writer));
  expect((await Promise.all(both)).sort()).toEqual([false, true]);
});

test('another branch sees none of it', async () => {
  expect(await overlayRows(records.db, '00000000-0000-4000-8000-000000000000')).toEqual([]);
});
