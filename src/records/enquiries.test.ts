import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { enquiriesOf, enquiryById, enquiryVersions, insertEnquiry, updateEnquiry } from './enquiries.ts';
import type { Records } from './open.ts';
import { firstBranch } from './shops.ts';
import { freshRecords } from './testing/fresh-database.ts';

const at = new Date('2026-01-15T09:00:00Z');
const later = new Date('2026-01-15T10:00:00Z');
let records: Records;
let branchId: string;

beforeAll(async () => {
  records = await freshRecords();
  branchId = (await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at })).branchId;
});
afterAll(async () => await records.close());

const opened = async (id: string, document: Record<string, unknown>) =>
  await insertEnquiry(records.db, { id, branchId, document, at, by: 'tester' });

test('an enquiry comes back as it went in, numbers and letters untouched', async () => {
  const id = '00000000-0000-4000-8000-000000000001';
  const document = { answers: { label: 'Größe 0,30 °C “x”', n: 0.1 + 0.2, none: null }, list: [1, [2]], '': {} };
  await opened(id, document);
  expect(await enquiryById(records.db, branchId, id)).toEqual({
    id,
    version: 1,
    createdAt: at,
    updatedAt: at,
    createdBy: 'tester',
    document,
  });
});

test('a change adds a version, keeps the earlier one and refuses one made from an old version', async () => {
  const id = '00000000-0000-4000-8000-000000000002';
  await opened(id, { n: 1 });
  const change = { id, branchId, at: later, by: 'second' };
  expect(await updateEnquiry(records.db, { ...change, fromVersion: 1, document: { n: 2 } })).toMatchObject({
    version: 2,
    createdAt: at,
    updatedAt: later,
  });
  expect(await updateEnquiry(records.db, { ...change, fromVersion: 1, document: { n: 3 } })).toBeUndefined();
  expect(await enquiryVersions(records.db, id)).toEqual([
    { version: 1, at, by: 'tester', document: { n: 1 } },
    { version: 2, at: later, by: 'second', document: { n: 2 } },
  ]);
});

test('of many changes made at once from one version exactly one gets through', async () => {
  const id = '00000000-0000-4000-8000-000000000003';
  await opened(id, { n: 0 });
  const tries = Array.from({ length: 12 }, (_, n) =>
    updateEnquiry(records.db, { id, branchId, fromVersion: 1, document: { n }, at: later, by: 'x' }),
  );
  const through = (await Promise.all(tries)).filter((row) => row !== undefined);
  expect(through).toHaveLength(1);
  expect((await enquiryVersions(records.db, id)).map((row) => row.version)).toEqual([1, 2]);
});

test('the database itself refuses to rewrite or delete history', async () => {
  const id = '00000000-0000-4000-8000-000000000004';
  await opened(id, { n: 0 });
  const rewrite = sql`update enquiry_version set by = 'nobody' where enquiry_id = ${id}`.execute(records.db);
  await expect(rewrite).rejects.toMatchObject({ code: 'WS001' });
  const remove = sql`delete from enquiry_version where enquiry_id = ${id}`.execute(records.db);
  await expect(remove).rejects.toMatchObject({ code: 'WS001' });
});

test('another branch neither sees nor changes it', async () => {
  const id = '00000000-0000-4000-8000-000000000005';
  await opened(id, { n: 0 });
  const other = '00000000-0000-4000-8000-00000000ffff';
  expect(await enquiryById(records.db, other, id)).toBeUndefined();
  expect(await enquiriesOf(records.db, other, 10)).toEqual([]);
  const change = { id, branchId: other, fromVersion: 1, document: {}, at, by: 'x' };
  expect(await updateEnquiry(records.db, change)).toBeUndefined();
});

test('the newest change stands first in the list', async () => {
  const rows = await enquiriesOf(records.db, branchId, 100);
  const times = rows.map((row) => row.updatedAt.getTime());
  expect(rows.length).toBeGreaterThan(3);
  expect(times).toEqual([...times].sort((a, b) => b - a));
});
