// Is every door of docs/taking-back.md really taken back the way that page says? Each is done here through the server, and
// undone; what stands must be what stood. Doors that need a device of the person's own are tried in a browser and named.
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AppForTests, appForTests, cookieOf, testPassword } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';
import { onePointPng, takeInFit } from './testing/fit-animal.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

const page = readFileSync(new URL('../../docs/taking-back.md', import.meta.url), 'utf8');
/** Door to its way back. */
const ways = new Map(
  [...page.matchAll(/^\| `([^`]+)` \| .+ \| (.+) \|$/gm)].map((row) => [row[1] ?? '', row[2] ?? '']),
);
const tried = new Set<string>();
/** Tried elsewhere: a passkey needs a device, a proof its readings, the first owner a program without one. */
const elsewhere: Readonly<Record<string, string>> = {
  'POST /api/set-up': 'src/server/accounts.test.ts',
  'POST /api/session/passkey-question': 'e2e/accounts.e2e.ts',
  'POST /api/session/passkey': 'e2e/accounts.e2e.ts',
  'POST /api/account/passkey-question': 'e2e/accounts.e2e.ts',
  'POST /api/account/passkeys': 'e2e/accounts.e2e.ts',
  'POST /api/account/passkeys/{id}/removal': 'e2e/accounts.e2e.ts',
  'POST /api/enquiries/{id}/proof': 'src/server/readings.test.ts',
  'POST /api/placements/{id}/buyer/erasure': 'src/server/privacy.test.ts',
  'POST /api/privacy/due/erasure': 'src/server/privacy.test.ts',
};

// biome-ignore lint/suspicious/noExplicitAny: answers of the doors, read as the test needs them
type Answer = any;
let asker: string | undefined;
/** Through a door of the page; it must be taken. @param ids  for the parts of its path in braces, in order */
async function through(
  door: string,
  ids: readonly string[] = [],
  payload?: object,
  more: object = {},
): Promise<Answer> {
  if (!ways.has(door)) throw new Error(`docs/taking-back.md knows no ${door}`);
  const [method = '', path = ''] = door.split(' ');
  const left = [...ids];
  const url = path.replace(/\{\w+\}/g, () => left.shift() ?? '');
  const asked = { method: method as 'POST', url, ...(payload === undefined ? {} : { payload }), ...more };
  const answer = await server.asked(asked, asker ?? server.cookie);
  expect(answer.statusCode, `${door}: ${answer.body}`).toBeLessThan(300);
  tried.add(door);
  // A session may get a new number on the way, as a browser takes it over.
  const [given] = answer.cookies;
  if (asker !== undefined && given !== undefined && given.value !== '') asker = cookieOf(answer);
  return String(answer.headers['content-type']).includes('json') ? { ...answer.json(), answer } : { answer };
}
const read = async (url: string, cookie = server.cookie): Promise<Answer> =>
  (await server.asked({ method: 'GET', url }, cookie)).json();
const status = async (url: string, cookie = server.cookie) =>
  (await server.asked({ method: 'GET', url }, cookie)).statusCode;
const daysAgo = (days: number) => new Date(Date.UTC(2026, 0, 15) - days * 86_400_000).toISOString().slice(0, 10);
const token = () => randomUUID();
const fitAnimal = (callName: string) =>
  takeInFit(
    async (path, body) => (await server.app.inject({ method: 'POST', url: path, payload: body })).json(),
    daysAgo,
    {
      callName,
    },
  );
const newHome = async (): Promise<string> =>
  (await through('POST /api/enquiries', [], { document: exampleDocument() })).id;

/** Rows in every table; how often an address asked is counted whatever it asks, and a session gets new numbers. */
const uncounted = ['request_count', 'session'];

async function rowsEverywhere(): Promise<Record<string, number>> {
  const { rows } = await sql<{ name: string }>`
    select table_name as name from information_schema.tables where table_schema = 'public' and table_type = 'BASE TABLE'
  `.execute(server.records.db);
  const counted: Record<string, number> = {};
  for (const { name } of rows.filter((row) => !uncounted.includes(row.name))) {
    const { rows: found } = await sql<{ n: string }>`select count(*) as n from ${sql.table(name)}`.execute(
      server.records.db,
    );
    counted[name] = Number(found[0]?.n);
  }
  return counted;
}

test('an animal: taken in, corrected, written of, corrected back; what stood before stays to be read', async () => {
  const values = { speciesId: 'corn', callName: 'Slip', sex: 'female' };
  const { id } = await through('POST /api/animals', [], { values, enclosure: 'B1', quarantine: null });
  const register = async (callName: string, reason: string) =>
    await through('PUT /api/animals/{id}/register', [id], { values: { ...values, callName }, reason });
  await register('Sorrel', 'misheard');
  await register('Slip', 'heard rightly after all');
  const shown = await read(`/api/animals/${id}`);
  expect(shown.entry.callName).toBe('Slip');
  expect(shown.facts.map((fact: { value: string }) => fact.value)).toEqual(expect.arrayContaining(['Slip', 'Sorrel']));

  const entries = 'POST /api/animals/{id}/entries';
  const correction = 'POST /api/animals/{id}/entries/{entryId}/correction';
  const masses = async () =>
    (await read(`/api/animals/${id}`)).history.filter((row: { kind: string }) => row.kind === 'weighing');
  const stands = async (): Promise<number | null> => {
    const rows = await masses();
    const gone = new Set(rows.map((row: { corrects: string | null }) => row.corrects));
    return (
      rows.findLast((row: { id: string; body: object | null }) => !gone.has(row.id) && row.body !== null)?.body.massG ??
      null
    );
  };
  await through(entries, [id], { kind: 'weighing', on: daysAgo(1), body: { massG: 5710 } });
  const [wrong] = await masses();
  await through(correction, [id, wrong.id], { body: { massG: 571 }, reason: 'a nought too many' });
  expect(await stands()).toBe(571);
  const right = (await masses()).find((row: { corrects: string }) => row.corrects === wrong.id);
  await through(correction, [id, right.id], { body: null, reason: 'another animal' });
  expect(await stands()).toBeNull();
  await through(entries, [id], { kind: 'weighing', on: daysAgo(1), body: { massG: 571 } });
  expect(await stands()).toBe(571);
  expect((await masses()).length, 'nothing is struck out').toBe(4);

  for (const of of ['whole', 'head']) await through('POST /api/animals/{id}/photos', [id], { data: onePointPng, of });
});

test('a look-over: half done answered again, done again; the newest counts', async () => {
  const id = await fitAnimal('Clover');
  const { steps } = await read(`/api/animals/${id}/examination`);
  const looked = (breath: readonly string[]) => ({
    answers: Object.fromEntries(steps.map((step: { id: string }) => [step.id, step.id === 'breath' ? breath : []])),
    massG: null,
    outline: '',
    note: '',
  });
  for (const breath of [['bubbles'], []]) await through('PUT /api/animals/{id}/examination', [id], looked(breath));
  expect((await read(`/api/animals/${id}/examination`)).draft.document.answers.breath).toEqual([]);
  const fit = async () => (await read(`/api/animals/${id}`)).fitness.answer;
  await through('POST /api/animals/{id}/examination', [id], looked(['bubbles']));
  expect(await fit()).toBe('vet');
  await through('POST /api/animals/{id}/examination', [id], looked([]));
  expect(await fit()).toBe('fit');
});

test('the round is corrected as an entry is', async () => {
  const id = await fitAnimal('Yarrow');
  const body = {
    state: 'well',
    water: true,
    locked: true,
    droppings: false,
    warmC: null,
    coolC: null,
    rhPct: null,
    note: '',
  };
  const at = server.clock.now().toISOString();
  const check = { clientKey: token(), animalId: id, on: at.slice(0, 10), at, body: { ...body, state: 'not-seen' } };
  const { merged } = await through('POST /api/round', [], { checks: [check] });
  expect(merged).toMatchObject([{ outcome: 'written' }]);
  const written = async () =>
    (await read(`/api/animals/${id}`)).history.filter((row: { kind: string }) => row.kind === 'round');
  const [first] = await written();
  await through('POST /api/animals/{id}/entries/{entryId}/correction', [id, first.id], {
    body: null,
    reason: 'wrong box',
  });
  expect((await written()).map((row: { body: object | null }) => row.body === null)).toEqual([false, true]);
});

test('a placement: said and said anew, overridden and not, refused and taken up, released and come back', async () => {
  const animalId = await fitAnimal('Juniper');
  const enquiryId = await newHome();
  const { id } = await through('POST /api/placements', [], { enquiryId, animalId });
  const finding = async (requirement: string) =>
    (await read(`/api/placements/${id}`)).release.findings.find((one: { id: string }) => one.id === requirement);
  const say = async (part: object) =>
    await through('POST /api/placements/{id}/statements', [id], {
      answer: 'yes',
      text: '',
      place: null,
      years: null,
      token: token(),
      ...part,
    });
  await say({ requirement: 'vet', text: 'Invented practice, 01234' });
  expect((await finding('vet')).answer).toBe('met');
  await say({ requirement: 'vet', answer: 'open' });
  expect((await finding('vet')).answer).toBe('not-known');

  const override = async (requirement: string, takeBack: boolean) =>
    await through('POST /api/placements/{id}/overrides', [id], {
      requirement,
      reason: takeBack ? '' : 'read by us on the spot for a week',
      takeBack,
      token: token(),
    });
  await override('home-proven', false);
  expect((await finding('home-proven')).stands).toBe(true);
  await override('home-proven', true);
  expect((await finding('home-proven')).stands).toBe(false);

  const state = async () => (await read(`/api/placements/${id}`)).state;
  const refuse = async () =>
    await through('POST /api/placements/{id}/refusal', [id], { reason: 'home', text: '', token: token() });
  await refuse();
  expect(await state()).toBe('refused');
  await through('POST /api/placements/{id}/reopening', [id], { token: token() });
  expect(await state()).toBe('open');
  await refuse();
  await through('POST /api/placements/{id}/reopening', [id], { token: token() });

  for (const part of [
    { requirement: 'home-place', place: 'england' },
    { requirement: 'buyer-age', years: 16 },
    { requirement: 'cautions' },
    { requirement: 'vet', text: 'Invented practice, 01234' },
    { requirement: 'information' },
  ])
    await say(part);
  const { release } = await read(`/api/placements/${id}`);
  for (const one of release.findings.filter((found: { stands: boolean }) => !found.stands))
    await override(one.id, false);
  await through('POST /api/placements/{id}/release', [id], { outcome: 'sold', token: token() });
  expect([await state(), (await read(`/api/animals/${animalId}`)).gone]).toEqual(['released', true]);

  const taskKey = (await read(`/api/placements/${id}/aftercare`)).tasks[0].key;
  const step = async (what: object) =>
    await through('POST /api/placements/{id}/aftercare', [id], { token: token(), step: what });
  const told = async () => (await read(`/api/placements/${id}/aftercare`)).told;
  await step({ what: 'not-reached', key: taskKey });
  await step({ what: 'undone', of: (await told())[0].id });
  expect(await told()).toEqual([]);
  const { secret } = await through('POST /api/enquiries/{id}/keeper-links', [enquiryId], { days: 14 });
  const on = server.clock.now().toISOString().slice(0, 10);
  await through('POST /api/keeper/{secret}/aftercare', [secret], {
    token: token(),
    key: taskKey,
    on,
    answers: { well: 'well' },
  });
  await step({ what: 'undone', of: (await told())[0].id });
  expect(await told()).toEqual([]);
  for (const [door, ids] of [
    ['/api/calendar-feeds', []],
    ['/api/placements/{id}/calendar-feeds', [id]],
  ] as const) {
    const feed = await through(`POST ${door}`, ids, { language: 'en' });
    expect(await status(`/api/calendar/${feed.secret}.ics`)).toBe(200);
    await through(`POST ${door}/{feedId}/withdraw`, [...ids, feed.id]);
    expect(await status(`/api/calendar/${feed.secret}.ics`)).toBe(404);
    await through(`POST ${door}`, ids, { language: 'en' });
  }

  const back = { reason: 'keeper', text: '', enclosure: 'Q4', token: token() };
  await through('POST /api/placements/{id}/return', [id], back);
  expect(await read(`/api/animals/${animalId}`)).toMatchObject({ gone: false, enclosure: 'Q4' });
  await through('POST /api/placements', [], { enquiryId, animalId });
});

test('an enquiry is changed and changed back; every version is kept', async () => {
  const id = await newHome();
  const first = await read(`/api/enquiries/${id}`);
  const other = { ...first.document, answers: { ...first.document.answers, label: 'Another flat' } };
  const put = async (document: object, version: number) =>
    await through('PUT /api/enquiries/{id}', [id], { document }, { headers: { 'if-match': `"${version}"` } });
  await put(other, 1);
  await put(first.document, 2);
  expect((await read(`/api/enquiries/${id}`)).document).toEqual(first.document);
});

test('readings: a file set aside and back, answered again; links and sources', async () => {
  const id = await newHome();
  const csv = 'time,T1 °C\n2026-01-10T10:00:00Z,25\n2026-01-10T10:10:00Z,26\n2026-01-10T10:20:00Z,26\n';
  const headers = { 'content-type': 'application/octet-stream' };
  const url = `/api/enquiries/${id}/reading-files?name=log.csv`;
  const sent = await server.asked({ method: 'POST', url, headers, payload: csv }, server.cookie);
  expect(sent.statusCode, sent.body).toBeLessThan(300);
  tried.add('POST /api/enquiries/{id}/reading-files');
  const file = sent.json();
  const files = async () => await read(`/api/enquiries/${id}/reading-files`);
  const answer = async (place: string) =>
    await through('PUT /api/enquiries/{id}/reading-files/{fileId}/answers', [id, file.id], {
      places: { 'T1 °C': place },
    });
  const placeOf = async () => (await files()).files[0].understood.channels[0].place;
  await answer('basking-surface');
  expect(await placeOf()).toBe('basking-surface');
  await answer('cool-air');
  expect(await placeOf()).toBe('cool-air');
  const aside = async () =>
    await through('POST /api/enquiries/{id}/reading-files/{fileId}/aside', [id, file.id], { why: 'of another box' });
  await aside();
  expect((await files()).files).toEqual([]);
  await through('POST /api/enquiries/{id}/reading-files/{fileId}/back', [id, file.id]);
  expect(await placeOf()).toBe('cool-air');
  await aside();
  expect((await files()).files).toEqual([]);

  const typed = (room: number) => ({ at: '2026-01-14T08:00', clientKey: token(), valuesC: { room } });
  for (const room of [58, 18])
    expect(await through('POST /api/enquiries/{id}/hand-readings', [id], { readings: [typed(room)] })).toMatchObject({
      written: 1,
    });
  const typedRows = async () => (await read(`/api/enquiries/${id}/hand-readings`)).readings;
  const counting = async () =>
    (await typedRows())
      .filter((row: { aside: object | null }) => row.aside === null)
      .map((row: { valuesC: { room: number } }) => row.valuesC.room)
      .sort();
  const wrong = (await typedRows()).find((row: { valuesC: { room: number } }) => row.valuesC.room === 58).id;
  const typedAside = async () =>
    await through('POST /api/enquiries/{id}/hand-readings/{readingId}/aside', [id, wrong], { why: 'read 18' });
  await typedAside();
  expect(await counting()).toEqual([18]);
  await through('POST /api/enquiries/{id}/hand-readings/{readingId}/back', [id, wrong]);
  expect(await counting()).toEqual([18, 58]);
  await typedAside();
  expect(await counting()).toEqual([18]);
  expect((await typedRows()).length, 'it stays to be read').toBe(2);
  const link = await through('POST /api/enquiries/{id}/keeper-links', [id], { days: 14 });
  for (const room of [19, 18])
    await through('POST /api/keeper/{secret}/readings', [link.secret], { readings: [typed(room)] });
  expect(await status(`/api/keeper/${link.secret}`)).toBe(200);
  await through('POST /api/enquiries/{id}/keeper-links/{linkId}/withdraw', [id, link.id]);
  expect(await status(`/api/keeper/${link.secret}`)).toBe(404);
  const again = await through('POST /api/enquiries/{id}/keeper-links', [id], { days: 14 });
  expect(await status(`/api/keeper/${again.secret}`)).toBe(200);

  const source = {
    label: 'probe',
    place: 'cool-air',
    quantity: 'tempC',
    intervalS: 60,
    topic: null,
    valueKey: null,
    instrumentId: null,
  };
  const live = await through('POST /api/enquiries/{id}/live-sources', [id], source);
  const silent = (await read(`/api/enquiries/${id}/live`)).sources;
  expect(silent, 'silent it counts as not known').toMatchObject([{ state: 'never', value: null }]);
  for (const value of [58, 22]) await through('POST /api/live/{secret}', [live.secret], { value });

  const { id: probe } = await through('POST /api/instruments', [], { name: 'probe 7' });
  const trusted = async () =>
    (await read('/api/instruments')).instruments.find((one: { id: string }) => one.id === probe).temp.correction;
  const checked = async (shown: readonly number[]) =>
    await through('POST /api/instruments/{id}/checks', [probe], { kind: 'ice', shown });
  await checked([1.4, 1.4]);
  const wrongly = await trusted();
  await checked([0.2, 0.2]);
  expect([wrongly, await trusted()]).toEqual([-1.4, -0.2]);
});

test('the shop’s own values and its shelf', async () => {
  const path = 'species.corn.all.rhPct';
  const set = async () =>
    await through('POST /api/overlays', [], { path, value: { low: 45, high: 60 }, why: 'our rack room' });
  const standing = async () =>
    (await read('/api/reference/corn')).overlays.filter((one: { withdrawn: unknown }) => one.withdrawn === null).length;
  const { id } = await set();
  expect(await standing()).toBe(1);
  await through('POST /api/overlays/{id}/withdrawal', [id], { why: 'as shipped' });
  expect(await standing()).toBe(0);
  await set();
  expect(await standing()).toBe(1);

  const shown = async () => await read('/api/shelf');
  const first = await shown();
  const items = first.shelf.items.slice(1);
  await through('PUT /api/shelf', [], { shelf: { ...first.shelf, items }, base: 0, why: 'taken off' });
  expect((await shown()).shelf.items.length).toBe(items.length);
  await through('POST /api/shelf/back', [], { version: 0, base: 1 });
  expect((await shown()).shelf).toEqual(first.shelf);
  const csv = (await server.app.inject({ url: '/api/shelf.csv' })).body;
  await through('POST /api/shelf/table', [], {
    text: csv.replace('Starter shelf', 'Our shelf'),
    base: 2,
    why: 'table',
  });
  expect((await shown()).shelf.name).toBe('Our shelf');
  await through('POST /api/shelf/back', [], { version: 2, base: 3 });
  expect((await shown()).shelf).toEqual(first.shelf);
  await through('POST /api/shelf/back', [], { version: 3, base: 4 });
  expect((await shown()).shelf.name).toBe('Our shelf');
});

test('people and branches: added, changed, undone, and the undoing undone', async () => {
  const people = async () => await read('/api/people');
  const person = async (id: string) => (await people()).people.find((one: { id: string }) => one.id === id);
  const lastChange = async () => (await people()).changes[0].id;
  const branchId = (await people()).branches[0].id;
  const { id, code } = await through('POST /api/people', [], { name: 'Person abc', role: 'assistant', branchId });
  await through('PUT /api/people/{id}', [id], { role: 'manager' });
  expect((await person(id)).role).toBe('manager');
  await through('POST /api/people/changes/{id}/undo', [await lastChange()]);
  expect((await person(id)).role).toBe('assistant');
  await through('POST /api/people/changes/{id}/undo', [await lastChange()]);
  expect((await person(id)).role).toBe('manager');

  const fresh = await through('POST /api/people/{id}/code', [id]);
  const useCode = async (one: string) =>
    await server.asked({ method: 'POST', url: '/api/session/code', payload: { code: one, password: testPassword } });
  expect((await useCode(code)).statusCode, 'a new code ends the old one').toBeGreaterThanOrEqual(400);
  asker = '';
  await through('POST /api/session/code', [], { code: fresh.code, password: testPassword });
  asker = undefined;

  const { id: second } = await through('POST /api/branches', [], { name: 'Empty room', place: 'wales' });
  expect((await people()).branches.map((one: { id: string }) => one.id)).toContain(second);
});

test('sessions: in, locked, opened, switched, out, and in again; password and PIN changed back', async () => {
  const own = async (cookie: string) => await status('/api/account', cookie);
  const signIn = async (name = 'tester', password = testPassword) => {
    asker = '';
    const { answer } = await through('POST /api/session', [], { name, password });
    return cookieOf(answer);
  };
  const first = await signIn();
  expect(await own(first)).toBe(200);
  asker = first;
  const before = await rowsEverywhere();
  await through('POST /api/session/prove', [], { password: testPassword });
  expect(await rowsEverywhere()).toEqual(before);
  const next = `${testPassword} again`;
  await through('PUT /api/account/password', [], { now: testPassword, next });
  await through('PUT /api/account/password', [], { now: next, next: testPassword });
  for (const pin of ['482915', null, '482915'])
    await through('PUT /api/account/pin', [], { password: testPassword, pin });
  const { branches, people } = await read('/api/people', asker);
  for (const branch of [branches.at(-1), branches[0]])
    await through('PUT /api/account/branch', [], { branchId: branch.id });

  await through('POST /api/session/lock');
  expect(await own(asker)).not.toBe(200);
  const me = people.find((one: { name: string }) => one.name === 'tester').id;
  await through('POST /api/session/switch', [], { personId: me, pin: '482915' });
  expect(await own(asker)).toBe(200);
  const here = asker;
  await through('POST /api/session/end');
  expect(await own(here)).not.toBe(200);

  const [one, two] = [await signIn(), await signIn()];
  asker = one;
  const { sessions } = await read('/api/account', one);
  const other = sessions.find((session: { here?: boolean; current?: boolean }) => !(session.here ?? session.current));
  await through('POST /api/account/sessions/{id}/end', [other.id]);
  expect([await own(one)]).toEqual([200]);
  await through('POST /api/session/end-everywhere');
  expect([await own(one), await own(two)].every((code) => code !== 200)).toBe(true);
  server = { ...server, cookie: await signIn() };
  asker = undefined;
  expect(await own(server.cookie)).toBe(200);
});

test('what is stopped is asked for again', async () => {
  const id = await newHome();
  const { enclosure } = exampleDocument() as { enclosure: object };
  const work = token();
  expect(await through('POST /api/work/{id}/stop', [work])).toMatchObject({ ended: 'stopped' });
  const ask = async (query: string) =>
    await server.asked(
      { method: 'POST', url: `/api/plan${query}`, payload: { enclosure, members: 4, enquiryId: id } },
      server.cookie,
    );
  expect((await ask(`?work=${work}`)).json().faults).toMatchObject([{ code: 'WORK_STOPPED' }]);
  expect((await ask('')).statusCode).toBe(200);
  expect((await read(`/api/enquiries/${id}/plans`)).results).toHaveLength(1);
});

test('a kept plan is set aside, counts again, and is set aside again', async () => {
  const { enclosure } = exampleDocument() as { enclosure: object };
  const id = await newHome();
  const { resultId } = await through('POST /api/plan', [], { enclosure, members: 4, enquiryId: id });
  const counting = async () =>
    (await read(`/api/enquiries/${id}/plans`)).results.filter((one: { aside: object | null }) => one.aside === null)
      .length;
  const stand = async (way: string) => await through(`POST /api/enquiries/{id}/plans/{planId}/${way}`, [id, resultId]);
  for (const [way, left] of [
    ['aside', 0],
    ['back', 1],
    ['aside', 0],
  ] as const) {
    await stand(way);
    expect(await counting(), way).toBe(left);
  }
});

test('what is said to change nothing writes no row', async () => {
  const before = await rowsEverywhere();
  const { enclosure } = exampleDocument() as { enclosure: object };
  await through('POST /api/plan', [], { enclosure, members: 4 });
  const call = { complaintId: 'not-eating', flags: [], readings: {}, answers: {}, days: 3, lossPct: null };
  await through('POST /api/triage', [], {
    animalId: null,
    speciesId: 'corn',
    stage: 'adult',
    call,
    note: '',
    keep: false,
  });
  expect(await rowsEverywhere()).toEqual(before);
});

test('no door of the page was left out', () => {
  const left = [...ways.keys()].filter((door) => !tried.has(door) && elsewhere[door] === undefined);
  expect(left).toEqual([]);
  for (const [door, file] of Object.entries(elsewhere)) {
    const last =
      door
        .replace(/\{\w+\}/g, '')
        .split('/')
        .filter((part) => part !== '')
        .at(-1) ?? '';
    const text = readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
    expect(text.toLowerCase(), `${door} in ${file}`).toContain(
      last === 'removal' ? 'remove' : last.replace('-question', '').replace(/s$/, ''),
    );
  }
});
