// What a buyer said can be handed out and taken out again: every place where it can stand is filled, then looked for.
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { verifyChain } from '../records/verify-chain.ts';
import { type AppForTests, appForTests, cookieOf, testPassword } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';
import { postTo, releasedPlacement } from './testing/released-placement.ts';

let server: AppForTests;
let branchId: string;
const word = 'Quoxley';

async function ask(
  method: 'GET' | 'POST' | 'PUT',
  url: string,
  payload?: object,
  headers = {},
  cookie = server.cookie,
) {
  const response = await server.asked({ method, url, headers, ...(payload ? { payload } : {}) }, cookie);
  return { status: response.statusCode, body: response.json() };
}

beforeAll(async () => {
  server = await appForTests();
  branchId = (await ask('GET', '/api/people')).body.branches[0].id;
});
afterAll(async () => await server.close());

/** Tables and how many of their rows hold the word anywhere. */
async function whereItStands(text: string): Promise<Record<string, number>> {
  const tables = await sql<{ name: string }>`select c.relname as name from pg_class c
    where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p') and not c.relispartition`.execute(
    server.records.db,
  );
  const found: Record<string, number> = {};
  for (const { name } of tables.rows) {
    const hits = await sql<{ n: string }>`select count(*) as n from ${sql.table(name)} t
      where t::text ilike ${`%${text}%`}`.execute(server.records.db);
    if (Number(hits.rows[0]?.n) > 0) found[name] = Number(hits.rows[0]?.n);
  }
  return found;
}

async function sound() {
  const client = await server.records.pool.connect();
  try {
    return await verifyChain(client);
  } finally {
    client.release();
  }
}

/** A buyer whose name was written wherever a text can be written. */
async function talkativeBuyer() {
  const at = new Date('2026-01-15T08:00:00Z');
  const choice = { at, arrivedOn: '2025-12-01', name: 'Sorrel', label: `${word}, second floor`, release: false };
  const ids = await releasedPlacement(postTo(server.app), server.records.db, branchId, choice);
  const { enquiryId, animalId, placementId } = ids;
  const home = `/api/enquiries/${enquiryId}`;
  const document = exampleDocument() as { answers: object; enclosure: object };
  const changed = {
    answers: { ...document.answers, label: word, speciesId: 'corn', massG: 420, remark: `call ${word}` },
    enclosure: { ...document.enclosure, name: `${word} box` },
    visitor: word,
  };
  expect((await ask('PUT', home, { document: changed }, { 'if-match': '"1"' })).status).toBe(200);
  const csv = 'time,T1 °C\n2026-01-10T10:00:00Z,25\n2026-01-10T10:10:00Z,26\n2026-01-10T10:20:00Z,26\n';
  const file = await server.asked(
    {
      method: 'POST',
      url: `${home}/reading-files?name=${word}.csv`,
      headers: { 'content-type': 'application/octet-stream' },
      payload: csv,
    },
    server.cookie,
  );
  expect(file.statusCode, file.body).toBeLessThan(300);
  await ask('POST', `${home}/reading-files/${file.json().id}/aside`, { why: `${word} moved it` });
  const typed = { at: '2026-01-14T08:00', clientKey: 'typed-by-desk', valuesC: { room: 58 } };
  expect((await ask('POST', `${home}/hand-readings`, { readings: [typed] })).status).toBe(200);
  const [mistyped] = (await ask('GET', `${home}/hand-readings`)).body.readings;
  await ask('POST', `${home}/hand-readings/${mistyped.id}/aside`, { why: `${word} said 18` });
  const live = {
    label: `${word} probe`,
    place: 'basking-surface',
    quantity: 'tempC',
    intervalS: 60,
    topic: null,
    valueKey: null,
    instrumentId: null,
  };
  expect((await ask('POST', `${home}/live-sources`, live)).status).toBeLessThan(300);
  const link = await ask('POST', `${home}/keeper-links`, { days: 14 });
  const on = `/api/placements/${placementId}`;
  const vet = { requirement: 'vet', answer: 'yes', text: `practice of ${word}`, place: null, years: null };
  expect((await ask('POST', `${on}/statements`, { ...vet, token: randomUUID() })).status).toBe(200);
  const override = {
    requirement: 'home-proven',
    reason: `${word} is known to us`,
    takeBack: false,
    token: randomUUID(),
  };
  expect((await ask('POST', `${on}/overrides`, override)).status).toBe(200);
  const call = { complaintId: 'not-eating', flags: [], readings: {}, answers: {}, days: 3, lossPct: null };
  const called = { animalId, speciesId: null, stage: 'adult', call, note: `${word} rang`, keep: true };
  return { ...ids, on, secret: link.body.secret as string, called };
}

describe('a buyer', () => {
  test('is handed everything, then forgotten everywhere, and the records stay sound', async () => {
    const { on, enquiryId, animalId, secret, called } = await talkativeBuyer();
    const early = await ask('POST', `${on}/buyer/erasure`, { reason: 'no' });
    expect(early.body.faults.map((one: { code: string }) => one.code)).toEqual(['ERASURE_REASON', 'ERASURE_OPEN']);
    const refusal = { reason: 'other', text: `${word} changed plans`, token: randomUUID() };
    expect((await ask('POST', `${on}/refusal`, refusal)).status).toBe(200);
    expect(await ask('POST', '/api/triage', called), 'call').toMatchObject({ status: 200 });
    const before = await whereItStands(word);
    expect(Object.keys(before).sort()).toEqual([
      'animal_event',
      'enquiry',
      'enquiry_version',
      'hand_reading_standing',
      'live_source',
      'placement_event',
      'reading_file',
      'reading_file_withdrawal',
    ]);

    const given = await ask('GET', `${on}/buyer`);
    expect(given.status).toBe(200);
    const told = JSON.stringify(given.body.ownWords);
    for (const text of [
      `practice of ${word}`,
      `${word} is known to us`,
      `${word} changed plans`,
      `${word} rang`,
      'second floor',
    ])
      expect(told).toContain(text);

    const done = await ask('POST', `${on}/buyer/erasure`, { reason: 'asked for it' });
    expect(done).toMatchObject({ status: 200, body: { by: 'tester', reason: 'asked for it' } });
    expect(await whereItStands(word)).toEqual({});
    const report = await sound();
    expect(report.breaks).toEqual([]);
    const rows = Object.values(done.body.rowsChanged as Record<string, number>).reduce((a, b) => a + b, 0);
    // The enquiry as it stands and the live source are no rows of the chain.
    expect(report.erased).toHaveLength(rows - 2);
    expect(report.erased.every((one) => /^tester, 2026-01-15T.*: asked for it$/.test(one.by))).toBe(true);

    const sheet = (await ask('GET', on)).body;
    expect(sheet.erasure).toMatchObject({ by: 'tester', reason: 'asked for it' });
    expect(sheet.enquiry.document.answers).toMatchObject({ massG: 420, speciesId: 'corn' });
    expect(sheet.enquiry.document.answers.label).toMatch(/^erased on 2026-01-15 by tester because asked for it$/);
    expect(sheet.enclosure.sizeM ?? sheet.enquiry.document.enclosure).toBeTruthy();
    expect((await ask('GET', `/api/animals/${animalId}`)).body.history.length).toBeGreaterThan(2);
    expect((await server.asked({ method: 'GET', url: `/api/keeper/${secret}` })).statusCode).toBe(404);

    const codes = async (answer: Promise<{ body: { faults?: { code: string }[] } }>) =>
      (await answer).body.faults?.map((one) => one.code);
    expect(await codes(ask('POST', `${on}/buyer/erasure`, { reason: 'asked again' }))).toEqual(['ERASURE_DONE']);
    expect(await codes(ask('POST', `${on}/reopening`, { token: randomUUID() }))).toEqual(['ERASURE_DONE']);
    const again = { document: exampleDocument() };
    expect(await codes(ask('PUT', `/api/enquiries/${enquiryId}`, again, { 'if-match': '"2"' }))).toEqual([
      'ERASURE_DONE',
    ]);
    expect(await codes(ask('POST', '/api/placements', { enquiryId, animalId }))).toEqual(['ERASURE_DONE']);
  });

  test('an assistant neither hands out nor erases', async () => {
    const { code } = (await ask('POST', '/api/people', { name: 'Ash', role: 'assistant', branchId })).body;
    const assistant = cookieOf(
      await server.asked({ method: 'POST', url: '/api/session/code', payload: { code, password: testPassword } }),
    );
    const id = randomUUID();
    const doors = [
      ['GET', `/api/placements/${id}/buyer`],
      ['POST', `/api/placements/${id}/buyer/erasure`],
      ['GET', '/api/privacy/due'],
      ['POST', '/api/privacy/due/erasure'],
    ] as const;
    for (const [method, url] of doors) {
      const body = method === 'GET' ? undefined : url.startsWith('/api/privacy') ? { ids: [] } : { reason: 'because' };
      expect((await ask(method, url, body, {}, assistant)).status, url).toBe(403);
    }
  });

  test('of the household’s health no word is taken', async () => {
    const ids = await releasedPlacement(postTo(server.app), server.records.db, branchId, {
      at: new Date('2026-01-15T08:00:00Z'),
      arrivedOn: '2025-12-01',
      release: false,
    });
    const said = { requirement: 'household', answer: 'yes', text: 'somebody is ill', place: null, years: null };
    const refused = await ask('POST', `/api/placements/${ids.placementId}/statements`, {
      ...said,
      token: randomUUID(),
    });
    expect(refused.body.faults).toMatchObject([{ code: 'STATEMENT_FIELD', field: 'text' }]);
    const field = { ...said, text: '', health: 'ill', token: randomUUID() };
    expect((await ask('POST', `/api/placements/${ids.placementId}/statements`, field)).status).toBe(400);
    expect(await whereItStands('somebody is ill')).toEqual({});
  });
});

test('an enquiry that led to no animal is due after its time, and goes with the others at one press', async () => {
  const old = async (label: string, daysAgo: number) => {
    const document = { answers: { label } };
    const { id } = (await ask('POST', '/api/enquiries', { document })).body;
    const at = new Date(server.clock.now().getTime() - daysAgo * 86_400_000);
    await server.records.db.updateTable('enquiry').set({ updated_at: at }).where('id', '=', id).execute();
    return id as string;
  };
  const [due, longer, fresh] = [
    await old('Umberwick', 181),
    await old('Umberwick two', 400),
    await old('Umberwick new', 179),
  ];
  const list = (await ask('GET', '/api/privacy/due')).body;
  expect(list.keptDays).toMatchObject({ value: 180, source: 'OUR-CHOICE' });
  expect(list.due.map((one: { id: string }) => one.id)).toEqual([longer, due]);
  const early = await ask('POST', '/api/privacy/due/erasure', { ids: [due, fresh] });
  expect(early).toMatchObject({ status: 409, body: { faults: [{ code: 'ERASURE_NOT_DUE', got: fresh }] } });
  expect(await ask('POST', '/api/privacy/due/erasure', { ids: [due, longer] })).toMatchObject({ body: { erased: 2 } });
  expect((await ask('GET', '/api/privacy/due')).body.due).toEqual([]);
  expect(await whereItStands('Umberwick')).toEqual({ enquiry: 1, enquiry_version: 1 });
  expect((await sound()).breaks).toEqual([]);
});
