import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { eventRows, insertEvent, standingEvents } from './animal-events.ts';
import {
  animalsOf,
  branchFacts,
  factHistory,
  insertAnimal,
  insertFacts,
  putWhereabouts,
  registerEntries,
} from './animals.ts';
import type { Records } from './open.ts';
import { firstBranch } from './shops.ts';
import { freshRecords } from './testing/fresh-database.ts';

const at = new Date('2026-01-15T09:00:00Z');
let records: Records;
let writer: { branchId: string; at: Date; by: string };
let shopId: string;

beforeAll(async () => {
  records = await freshRecords();
  const { branchId } = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at });
  writer = { branchId, at, by: 'tester' };
  shopId = (await branchFacts(records.db, branchId)).shopId;
});
afterAll(async () => await records.close());

async function animal(): Promise<string> {
  const id = randomUUID();
  await insertAnimal(records.db, id, shopId, writer);
  await putWhereabouts(records.db, id, { branchId: writer.branchId, enclosure: 'A1', gone: false });
  return id;
}

const event = (animalId: string, part: object = {}) => ({
  id: randomUUID(),
  animalId,
  kind: 'weighing',
  on: '2026-01-15',
  at,
  body: { massG: 5 },
  corrects: null,
  reason: '',
  clientKey: null,
  ...part,
});

test('the newest value holds, also of two said in one moment; the earlier ones stay', async () => {
  const id = await animal();
  await insertFacts(records.db, id, { sex: 'female', bred: 'bred' }, '', writer);
  await insertFacts(records.db, id, { sex: 'male' }, 'looked again', writer);
  expect((await registerEntries(records.db, [id])).get(id)).toEqual({ sex: 'male', bred: 'bred' });
  expect((await factHistory(records.db, id)).map((fact) => fact.value)).toEqual(['female', 'bred', 'male']);
});

test('the database itself refuses to rewrite or delete what was written', async () => {
  const id = await animal();
  await insertFacts(records.db, id, { sex: 'female' }, '', writer);
  await insertEvent(records.db, event(id), writer);
  for (const table of ['animal_fact', 'animal_event'])
    for (const change of [sql`update ${sql.table(table)} set by = 'nobody'`, sql`delete from ${sql.table(table)}`])
      await expect(change.execute(records.db)).rejects.toMatchObject({ code: 'WS001' });
});

test('a day stays that day in every time zone of the server', async () => {
  const id = await animal();
  await insertEvent(records.db, event(id, { on: '2026-03-29' }), writer);
  expect((await eventRows(records.db, [id]))[0]?.on).toBe('2026-03-29');
});

test('of many corrections at once exactly one gets through', async () => {
  const id = await animal();
  const first = event(id);
  await insertEvent(records.db, first, writer);
  const tries = Array.from({ length: 10 }, (_, massG) =>
    insertEvent(records.db, event(id, { corrects: first.id, body: { massG }, reason: 'slip' }), writer),
  );
  expect((await Promise.all(tries)).filter(Boolean)).toHaveLength(1);
  expect(standingEvents(await eventRows(records.db, [id]))).toHaveLength(1);
});

test('one device key writes once, whatever comes with it', async () => {
  const id = await animal();
  const tries = Array.from({ length: 8 }, () =>
    insertEvent(records.db, event(id, { clientKey: 'key-000001' }), writer),
  );
  expect((await Promise.all(tries)).filter(Boolean)).toHaveLength(1);
});

test('another shop sees nothing', async () => {
  await animal();
  expect(await animalsOf(records.db, randomUUID(), {})).toEqual([]);
});
