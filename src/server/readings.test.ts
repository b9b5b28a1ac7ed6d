// From a logger file to a proof through the real server; a keeper's link from making to withdrawal; live sources by HTTP.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { wallText } from '../proving/files/stamp.ts';
import { type MadePlace, madeLog } from '../proving/testing/made-log.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

async function ask(method: 'GET' | 'POST' | 'PUT', url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload ? { payload } : {}) });
  return { status: response.statusCode, body: response.json() };
}
const codes = (body: { faults?: { code: string }[] }) => body.faults?.map((f) => f.code);

async function upload(id: string, bytes: string | Buffer, name = 'log.csv') {
  const response = await server.app.inject({
    method: 'POST',
    url: `/api/enquiries/${id}/reading-files?name=${encodeURIComponent(name)}`,
    headers: { 'content-type': 'application/octet-stream' },
    payload: bytes,
  });
  return { status: response.statusCode, body: response.json() };
}

const newHome = async (): Promise<string> =>
  (await ask('POST', '/api/enquiries', { document: exampleDocument() })).body.id;

/** Test clocks stand in January 2026; so do these readings. */
function csvOf(places: readonly MadePlace[], headings: readonly string[]): string {
  const log = madeLog(places);
  const shift = Date.UTC(2026, 0, 10, 12) / 1000 - log.timesS[0]!;
  return [
    `time,${headings.join(',')}`,
    ...log.timesS.map((t, i) => [wallText(t + shift), ...log.channels.map((c) => c.values[i])].join(',')),
  ].join('\n');
}
const good = [
  { place: 'room', dayC: 18, nightC: 17 },
  { place: 'basking-surface', dayC: 34.5, nightC: 28 },
  { place: 'cool-air', dayC: 22.4, nightC: 20 },
] as const;

describe('files and proof', () => {
  test.each([
    ['a number', '-2124263202', 'application/json'],
    ['a list', '[1,2]', 'application/json'],
    ['a text', '"time,temp"', 'application/json'],
    ['nothing', undefined, undefined],
  ])('%s instead of a file is said so', async (_what, payload, type) => {
    const answer = await server.app.inject({
      method: 'POST',
      url: `/api/enquiries/${await newHome()}/reading-files?name=log.csv`,
      ...(type === undefined ? {} : { headers: { 'content-type': type } }),
      ...(payload === undefined ? {} : { payload }),
    });
    expect(answer.statusCode).toBe(415);
    expect(codes(answer.json())).toEqual(['REQUEST_BYTES']);
  });

  test('bytes at a door of JSON are not taken', async () => {
    const headers = { 'content-type': 'application/octet-stream' };
    const answer = await server.app.inject({ method: 'POST', url: '/api/enquiries', headers, payload: '{}' });
    expect([answer.statusCode, ...(codes(answer.json()) ?? [])]).toEqual([415, 'REQUEST_TYPE']);
  });

  test('a file is understood, its question answered, the home judged and the answer kept', {
    timeout: 120_000,
  }, async () => {
    const id = await newHome();
    expect(codes((await ask('POST', `/api/enquiries/${id}/proof`, {})).body)).toEqual(['PROOF_NOTHING_READ']);
    const taken = await upload(id, csvOf(good, ['Room °C', 'T2 °C', 'Cool end °C']));
    expect(taken.status).toBe(201);
    expect(taken.body.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(taken.body.understood.questions.map((q: { id: string }) => q.id)).toEqual(['place']);
    const answered = await ask('PUT', `/api/enquiries/${id}/reading-files/${taken.body.id}/answers`, {
      places: { 'T2 °C': 'basking-surface' },
    });
    expect(answered.body.understood.questions).toEqual([]);
    const proof = await ask('POST', `/api/enquiries/${id}/proof`, {});
    expect(proof).toMatchObject({ status: 200 });
    expect(proof.body.answer).toMatchObject({ verdict: 'failed', next: { id: 'turn-dial' } });
    expect(proof.body.inputs.files).toEqual([taken.body.sha256]);
    const kept = await ask('GET', `/api/enquiries/${id}/proof`);
    expect([kept.body.current, kept.body.proof.answer.verdict, kept.body.proof.by]).toEqual([true, 'failed', 'tester']);
    // a reading that came in since makes it old
    const typed = { at: '2026-01-14T08:00', clientKey: 'desk-0001', valuesC: { room: 18 } };
    await ask('POST', `/api/enquiries/${id}/hand-readings`, { readings: [typed] });
    expect((await ask('GET', `/api/enquiries/${id}/proof`)).body.current).toBe(false);
  });
  test('a home that nobody read in has no curves, and that is an ordinary answer', async () => {
    const id = await newHome();
    expect(await ask('GET', `/api/enquiries/${id}/readings`)).toMatchObject({ status: 200, body: { curves: [] } });
    const proof = await ask('GET', `/api/enquiries/${id}/proof`);
    expect(proof).toMatchObject({ status: 200, body: { proof: null, branchRule: { settings: [] } } });
  });
  test('the rule that the shop set is the one that judges, printed with who, when and why', {
    timeout: 120_000,
  }, async () => {
    const set = async (path: string, value: unknown, why: string) =>
      await ask('POST', '/api/overlays', { path, value: { value }, why });
    expect(codes((await set('policy.proofNights', 15, '')).body)).toEqual(['OVERLAY_NUMBER', 'OVERLAY_WHY']);
    expect(codes((await set('policy.proofNights', 'five', 'x')).body)).toEqual(['OVERLAY_NUMBER']);
    const kept = await set('policy.proofNights', 5, 'two more for a hatchling');
    expect(kept.status).toBe(201);
    const id = await newHome();
    await upload(id, csvOf(good, ['Room °C', 'Basking °C', 'Cool end °C']));
    const { answer } = (await ask('POST', `/api/enquiries/${id}/proof`, {})).body;
    expect(answer.rule.nights).toBe(5);
    expect(answer.ruleSettings).toMatchObject([
      { key: 'nights', value: 5, by: 'tester', why: 'two more for a hatchling', at: expect.stringMatching(/^2026-/) },
    ]);
    expect(answer.ruleBasis).toMatch(/two more for a hatchling/);
    expect(answer.reasons.join()).toMatch(/of 5 nights are covered/);
    expect((await ask('GET', `/api/enquiries/${id}/proof`)).body.branchRule.rule.nights).toBe(5);
    const back = await ask('POST', `/api/overlays/${kept.body.id}/withdrawal`, { why: 'as before' });
    expect(back.status).toBe(200);
    expect((await ask('GET', `/api/enquiries/${id}/proof`)).body.branchRule).toMatchObject({
      rule: { nights: 3 },
      settings: [],
    });
  });
  test('what was typed beside a logger counts at the place that the logger leaves out', {
    timeout: 120_000,
  }, async () => {
    const id = await newHome();
    await upload(id, csvOf(good.slice(0, 2), ['Room °C', 'Basking °C']));
    const coolEnd = async () =>
      (await ask('POST', `/api/enquiries/${id}/proof`, {})).body.answer.needs.find(
        (n: { id: string }) => n.id === 'cool-end',
      );
    expect((await coolEnd()).state).toBe('not-read');
    const readings = [11, 12, 13].map((d) => ({
      at: `2026-01-${d}T15:00`,
      clientKey: `typed-${d}-15`,
      valuesC: { 'cool-air': 23 },
    }));
    expect((await ask('POST', `/api/enquiries/${id}/hand-readings`, { readings })).body.written).toBe(3);
    expect(await coolEnd()).toMatchObject({ state: 'held', place: 'cool-air', worst: 23, error: 1 });
    const { curves } = (await ask('GET', `/api/enquiries/${id}/readings`)).body;
    expect(curves.map((c: { place: string }) => c.place)).toEqual(['room', 'basking-surface', 'cool-air']);
  });
  test('the same bytes twice are one file; set aside they no longer count', async () => {
    const id = await newHome();
    const csv = csvOf(good, ['Room °C', 'Basking °C', 'Cool end °C']);
    const [one, two] = [await upload(id, csv), await upload(id, csv)];
    expect(two.body.id).toBe(one.body.id);
    expect((await ask('GET', `/api/enquiries/${id}/reading-files`)).body.files).toHaveLength(1);
    await ask('POST', `/api/enquiries/${id}/reading-files/${one.body.id}/aside`, { why: 'another box' });
    expect((await ask('GET', `/api/enquiries/${id}/reading-files`)).body.files).toHaveLength(0);
  });
  test('a file set aside is named and counts again when it is taken back, as often as one likes', async () => {
    const id = await newHome();
    const csv = csvOf(good, ['Room °C', 'Basking °C', 'Cool end °C']);
    const file = (await upload(id, csv)).body.id;
    const say = (what: string, body = {}) => ask('POST', `/api/enquiries/${id}/reading-files/${file}/${what}`, body);
    const shown = async () => {
      const { files, aside } = (await ask('GET', `/api/enquiries/${id}/reading-files`)).body;
      return [files.length, aside.length];
    };
    const places = { 'Cool end °C': 'cool-hide' };
    await ask('PUT', `/api/enquiries/${id}/reading-files/${file}/answers`, { places });
    for (let round = 0; round < 2; round++) {
      await say('aside', { why: 'another box' });
      expect(await shown()).toEqual([0, 1]);
      expect((await say('back')).status).toBe(200);
      expect(await shown()).toEqual([1, 0]);
    }
    const [again] = (await ask('GET', `/api/enquiries/${id}/reading-files`)).body.files;
    expect(again.hints.places, 'with the answers it had').toEqual(places);
    await say('aside', { why: 'another box' });
    await upload(id, csv);
    expect(await shown(), 'the same file sent again counts again').toEqual([1, 0]);
    expect((await ask('POST', `/api/enquiries/${id}/reading-files/${id}/back`)).status).toBe(404);
  });
  test.each([
    ['', 422, 'LOG_EMPTY'],
    ['hello', 422, 'LOG_NO_TIMES'],
    [Buffer.alloc(2000, 0), 422, 'LOG_NOT_TEXT'],
    [Buffer.alloc(21_000_000, 'x,1\n'), 413, 'LOG_TOO_LARGE'],
  ])('a file that is none gets a clear answer (%#)', async (bytes, status, code) => {
    const refused = await upload(await newHome(), bytes);
    expect([refused.status, codes(refused.body)]).toEqual([status, [code]]);
  });
  test('an unknown home is 404, another method of sending is refused', async () => {
    expect((await upload('00000000-0000-4000-8000-00000000dead', 'x')).status).toBe(404);
  });
});

describe('instruments', () => {
  test('an ice point halves the error that is carried', async () => {
    const { body } = await ask('POST', '/api/instruments', { name: 'probe 7' });
    const find = async () =>
      (await ask('GET', '/api/instruments')).body.instruments.find((i: { id: string }) => i.id === body.id);
    expect((await find()).temp).toMatchObject({ error: 1, checked: false });
    expect(
      codes((await ask('POST', `/api/instruments/${body.id}/checks`, { kind: 'ice', shown: [4, 4.1] })).body),
    ).toEqual(['CHECK_BROKEN']);
    const done = await ask('POST', `/api/instruments/${body.id}/checks`, { kind: 'ice', shown: [0.4, 0.5] });
    expect(done.body.offset).toBeCloseTo(-0.45, 9);
    expect((await find()).temp).toMatchObject({ error: 0.5, checked: true });
    expect((await find()).temp.correction).toBeCloseTo(-0.45, 9);
  });
});

describe("a keeper's link", () => {
  const reading = (clientKey: string, at = '2026-01-15T08:00', v = 31) => ({
    at,
    clientKey,
    valuesC: { 'basking-surface': v, 'cool-air': 22, room: 18 },
  });
  test('shows the drawing and nothing else, takes readings once, ends when withdrawn', async () => {
    const id = await newHome();
    const given = await ask('POST', `/api/enquiries/${id}/keeper-links`, { days: 14 });
    expect(given.status).toBe(201);
    expect(given.body.secret).toMatch(/^[A-Za-z0-9_-]{22}$/);
    const at = `/api/keeper/${given.body.secret}`;
    const page = await ask('GET', at);
    expect(Object.keys(page.body).sort()).toEqual(['expiresAt', 'home', 'places', 'readings', 'state']);
    expect([page.body.state, page.body.home.animal, page.body.home.name, page.body.home.room]).toEqual([
      'not-yet',
      undefined,
      undefined,
      undefined,
    ]);
    expect(JSON.stringify(page.body)).not.toContain('corn');
    expect(
      (
        await ask('POST', `${at}/readings`, {
          readings: [reading('phone-0001'), reading('phone-0002', '2026-01-15T09:00')],
        })
      ).body,
    ).toEqual({ written: 2 });
    expect((await ask('POST', `${at}/readings`, { readings: [reading('phone-0001')] })).body).toEqual({ written: 0 });
    expect((await ask('GET', at)).body.readings).toHaveLength(2);
    const links = await ask('GET', `/api/enquiries/${id}/keeper-links`);
    expect(JSON.stringify(links.body)).not.toContain(given.body.secret);
    await ask('POST', `/api/enquiries/${id}/keeper-links/${given.body.id}/withdraw`);
    const gone = await ask('GET', at);
    const never = await ask('GET', '/api/keeper/AAAAAAAAAAAAAAAAAAAAAA');
    expect([gone.status, gone.body]).toEqual([404, never.body]);
    expect((await ask('POST', `${at}/readings`, { readings: [reading('phone-0003')] })).status).toBe(404);
  });
  test('tells every fault of a sending at once and writes none of it', async () => {
    const id = await newHome();
    const { body } = await ask('POST', `/api/enquiries/${id}/keeper-links`, { days: 14 });
    const sent = await ask('POST', `/api/keeper/${body.secret}/readings`, {
      readings: [reading('k-000001'), reading('k-000002', '2031-01-01T00:00', 86)],
    });
    expect(codes(sent.body)).toEqual(['HAND_TIME', 'HAND_RANGE']);
    expect(sent.body.faults[1].fix).toContain('°F');
    expect((await ask('GET', `/api/keeper/${body.secret}`)).body.readings).toHaveLength(0);
  });
  test('days outside their limits', async () => {
    const id = await newHome();
    expect(codes((await ask('POST', `/api/enquiries/${id}/keeper-links`, { days: 401 })).body)).toEqual([
      'KEEPER_LINK_DAYS',
    ]);
  });
});

describe('a live source by HTTP', () => {
  const source = {
    label: 'warm probe',
    place: 'basking-surface',
    quantity: 'tempC',
    intervalS: 60,
    topic: null,
    valueKey: null,
    instrumentId: null,
  };
  test('is unknown before it speaks, fresh when it does, unknown again when it falls silent', async () => {
    const id = await newHome();
    const { body } = await ask('POST', `/api/enquiries/${id}/live-sources`, source);
    const state = async () => (await ask('GET', `/api/enquiries/${id}/live`)).body.sources[0];
    expect(await state()).toMatchObject({ state: 'never', value: null });
    expect((await ask('POST', `/api/live/${body.secret}`, { value: 31.2 })).body).toEqual({ written: 1 });
    expect(await state()).toMatchObject({ state: 'fresh', value: 31.2 });
    // every look at the test clock is a minute later: after three intervals the value is gone
    await state();
    await state();
    await state();
    expect(await state()).toMatchObject({ state: 'stale', value: null });
  });
  test('what cannot be is refused with its reason', async () => {
    const id = await newHome();
    const { body } = await ask('POST', `/api/enquiries/${id}/live-sources`, source);
    expect(codes((await ask('POST', `/api/live/${body.secret}`, { value: 999 })).body)).toEqual(['LIVE_VALUE']);
    expect(
      codes((await ask('POST', `/api/live/${body.secret}`, { value: 20, at: '2031-01-01T00:00:00Z' })).body),
    ).toEqual(['LIVE_TIME']);
    expect((await ask('POST', '/api/live/AAAAAAAAAAAAAAAAAAAAAA', { value: 20 })).status).toBe(404);
  });
});
