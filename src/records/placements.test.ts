// A placement's rows: what happened is only added to, once, and only one end stands.
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { branchFacts, insertAnimal } from './animals.ts';
import { insertEnquiry } from './enquiries.ts';
import type { Records } from './open.ts';
import type { PlacementEventKind } from './placement-schema.ts';
import {
  addPlacementEvent,
  insertPlacement,
  placementById,
  placementEvents,
  placementState,
  placementsOfBranch,
} from './placements.ts';
import { firstBranch } from './shops.ts';
import { freshRecords } from './testing/fresh-database.ts';

const at = new Date('2026-03-01T10:00:00Z');
const writer = { at, by: 'tester' };
let records: Records;
let branchId: string;

beforeAll(async () => {
  records = await freshRecords();
  branchId = (await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at })).branchId;
});
afterAll(async () => await records.close());

async function placed(): Promise<string> {
  const animalId = randomUUID();
  const { shopId } = await branchFacts(records.db, branchId);
  await insertAnimal(records.db, animalId, shopId, { branchId, ...writer });
  const { id: enquiryId } = await insertEnquiry(records.db, {
    id: randomUUID(),
    branchId,
    document: {},
    at,
    by: 'tester',
  } as never);
  return await insertPlacement(records.db, { branchId, enquiryId, animalId }, writer);
}

const add = (id: string, kind: PlacementEventKind, token: string = randomUUID(), body: object = {}) =>
  records.db.transaction().execute((tx) => addPlacementEvent(tx, id, { kind, body, token }, writer));

test('a placement is found again with all that happened, in order', async () => {
  const id = await placed();
  await add(id, 'statement', randomUUID(), { what: 'cautions' });
  await add(id, 'refused', randomUUID(), { why: 'no thermostat' });
  expect(await placementById(records.db, id)).toMatchObject({ id, branchId, by: 'tester' });
  expect((await placementsOfBranch(records.db, branchId)).map((one) => one.id)).toContain(id);
  expect((await placementEvents(records.db, id)).map((one) => [one.kind, one.body])).toEqual([
    ['statement', { what: 'cautions' }],
    ['refused', { why: 'no thermostat' }],
  ]);
});

test('sent again after a power cut it is one row', async () => {
  const id = await placed();
  const token = randomUUID();
  const first = await add(id, 'released', token);
  expect(await add(id, 'released', token)).toEqual({ ...first, again: true });
  expect(await placementEvents(records.db, id)).toHaveLength(1);
});

test('of ten releases at once one gets through, the others are told that it is released', async () => {
  const id = await placed();
  const all = await Promise.all(Array.from({ length: 10 }, () => add(id, 'released')));
  expect(all.filter((one) => one.ok)).toHaveLength(1);
  expect(all.filter((one) => !one.ok && one.state === 'released')).toHaveLength(9);
  expect(await placementEvents(records.db, id)).toHaveLength(1);
});

test.each<[readonly PlacementEventKind[], PlacementEventKind, boolean]>([
  [[], 'released', true],
  [[], 'reopened', false],
  [['refused'], 'released', false],
  [['refused', 'reopened'], 'released', true],
  [['released'], 'refused', false],
  [['released', 'taken-back'], 'refused', true],
  [['released'], 'aftercare', true],
])('after %j, %s: %s', async (before, kind, allowed) => {
  const id = await placed();
  for (const one of before) await add(id, one);
  expect((await add(id, kind)).ok).toBe(allowed);
});

test('the state is that of the last end that stands', () => {
  expect(placementState([])).toBe('open');
  expect(placementState([{ kind: 'released' }, { kind: 'aftercare' }])).toBe('released');
  expect(placementState([{ kind: 'released' }, { kind: 'taken-back' }])).toBe('open');
});

test('the database itself refuses to rewrite or delete', async () => {
  const id = await placed();
  await add(id, 'statement');
  for (const table of ['placement_event', 'placement']) {
    await expect(sql.raw(`delete from ${table}`).execute(records.db)).rejects.toThrow('kept as they are');
    await expect(sql.raw(`update ${table} set by = 'other'`).execute(records.db)).rejects.toThrow('kept as they are');
  }
});
