// A mistyped reading is set aside with its reason, the proof is made anew without it, and it is taken back; who did what
// stays to be read.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { verifyChain } from '../records/verify-chain.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { answeredDocument } from './testing/fit-animal.ts';
import { fittingHome, logFileOf } from './testing/fitting-home.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

async function ask(method: 'GET' | 'POST', url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload ? { payload } : {}) });
  return { status: response.statusCode, body: response.json() };
}
const codes = (body: { faults?: { code: string }[] }) => body.faults?.map((f) => f.code);
const newHome = async (): Promise<string> =>
  (await ask('POST', '/api/enquiries', { document: answeredDocument('Attic', fittingHome()) })).body.id;
const typeAll = async (id: string, readings: readonly (readonly [at: string, valuesC: object])[]) =>
  await ask('POST', `/api/enquiries/${id}/hand-readings`, {
    readings: readings.map(([at, valuesC]) => ({ at, valuesC, clientKey: `key-${at}` })),
  });
const listed = async (id: string) => (await ask('GET', `/api/enquiries/${id}/hand-readings`)).body.readings;
const say = async (id: string, readingId: string, what: 'aside' | 'back', body?: object) =>
  await ask('POST', `/api/enquiries/${id}/hand-readings/${readingId}/${what}`, body);

test('the list says what was typed, by whom, and what was set aside, newest first', async () => {
  const id = await newHome();
  expect(await listed(id)).toEqual([]);
  await typeAll(id, [
    ['2026-01-13T08:00', { room: 18 }],
    ['2026-01-14T08:00', { room: 58, 'cool-air': 22 }],
  ]);
  const [newest, oldest] = await listed(id);
  expect(newest).toMatchObject({ valuesC: { room: 58, 'cool-air': 22 }, by: 'tester', fromKeeper: false, aside: null });
  expect(oldest).toMatchObject({ valuesC: { room: 18 }, aside: null });
  expect((await say(id, newest.id, 'aside', { why: ' read 18 ' })).status).toBe(200);
  const after = await listed(id);
  expect(after.map((one: { id: string }) => one.id)).toEqual([newest.id, oldest.id]);
  expect(after[0].aside).toMatchObject({ why: 'read 18', by: 'tester', at: expect.stringMatching(/^2026-01-15T/) });
  expect(after[1].aside).toBeNull();
  expect((await ask('GET', `/api/enquiries/${id}/readings`)).body.curves[0].points.length, 'curves too').toBe(1);
});

test('set aside and taken back as often as one likes; said twice it is written once', async () => {
  const id = await newHome();
  await typeAll(id, [['2026-01-14T08:00', { room: 58 }]]);
  const [{ id: readingId }] = await listed(id);
  const rows = async () => {
    const query = 'select counts, why, by from hand_reading_standing where reading_id = $1 order by seq';
    return (await server.records.pool.query(query, [readingId])).rows;
  };
  for (const why of ['read 18', 'read 18', 'again']) await say(id, readingId, 'aside', { why });
  for (let n = 0; n < 2; n++) await say(id, readingId, 'back');
  await say(id, readingId, 'aside', { why: 'after all' });
  expect(await rows()).toEqual([
    { counts: false, why: 'read 18', by: 'tester' },
    { counts: true, why: '', by: 'tester' },
    { counts: false, why: 'after all', by: 'tester' },
  ]);
  expect((await listed(id))[0].aside.why).toBe('after all');
  await expect(server.records.pool.query("update hand_reading_standing set why = 'x'")).rejects.toThrow('are kept');
  const client = await server.records.pool.connect();
  try {
    expect((await verifyChain(client)).breaks).toEqual([]);
  } finally {
    client.release();
  }
});

test('every refusal at once: no reason, no such reading, another home, no such home', async () => {
  const [id, other] = [await newHome(), await newHome()];
  await typeAll(id, [['2026-01-14T08:00', { room: 58 }]]);
  const [{ id: readingId }] = await listed(id);
  expect(codes((await say(id, readingId, 'aside', { why: '  ' })).body)).toEqual(['HAND_WHY']);
  expect((await say(id, readingId, 'aside', {})).status).toBe(400);
  const elsewhere = await say(other, readingId, 'aside', { why: '' });
  expect([elsewhere.status, codes(elsewhere.body)]).toEqual([404, ['HAND_UNKNOWN', 'HAND_WHY']]);
  expect((await say(other, readingId, 'back')).status).toBe(404);
  const nowhere = '00000000-0000-4000-8000-00000000dead';
  expect(codes((await say(nowhere, readingId, 'back')).body)).toEqual(['ENQUIRY_UNKNOWN']);
  expect((await listed(id))[0].aside).toBeNull();
});

test('the proof is computed anew without it, and with it again; the keeper is not told "proven" meanwhile', {
  timeout: 240_000,
}, async () => {
  const id = await newHome();
  const csv = logFileOf(fittingHome(), Date.UTC(2026, 0, 11, 12) / 1000);
  const sent = await server.app.inject({
    method: 'POST',
    url: `/api/enquiries/${id}/reading-files?name=log.csv`,
    headers: { 'content-type': 'application/octet-stream' },
    payload: csv,
  });
  expect(sent.statusCode, sent.body).toBe(201);
  const coolC = Math.round(Number(csv.split('\n')[1]?.split(',').at(-1)));
  const days = ['12', '13', '14'];
  await typeAll(id, [
    ...days.map((day) => [`2026-01-${day}T15:00`, { 'cool-air': coolC }] as const),
    ['2026-01-14T16:00', { 'cool-air': coolC + 20 }],
  ]);
  const judge = async () => {
    const { answer, inputs } = (await ask('POST', `/api/enquiries/${id}/proof`, {})).body;
    return [answer.verdict, inputs.handReadings];
  };
  const current = async () => (await ask('GET', `/api/enquiries/${id}/proof`)).body.current;
  const { secret } = (await ask('POST', `/api/enquiries/${id}/keeper-links`, { days: 14 })).body;
  const keeper = async () => (await ask('GET', `/api/keeper/${secret}`)).body;
  const [mistyped] = await listed(id);
  expect(mistyped.valuesC['cool-air']).toBe(coolC + 20);

  expect(await judge()).toEqual(['failed', 4]);
  await say(id, mistyped.id, 'aside', { why: 'one digit too many' });
  expect(await current(), 'what was judged with it is old').toBe(false);
  expect(await judge()).toEqual(['proven', 3]);
  expect([await current(), (await keeper()).state]).toEqual([true, 'proven']);
  expect((await keeper()).readings.map((one: { aside: boolean }) => one.aside)).toEqual([false, false, false, true]);
  expect(JSON.stringify(await keeper()), 'the reason is the shop’s own').not.toContain('one digit');

  const [, good] = await listed(id);
  await say(id, good.id, 'aside', { why: 'a slip' });
  expect([await current(), (await keeper()).state]).toEqual([false, 'not-yet']);
  await say(id, good.id, 'back');
  await say(id, mistyped.id, 'back');
  expect(await current()).toBe(false);
  expect(await judge()).toEqual(['failed', 4]);
});
