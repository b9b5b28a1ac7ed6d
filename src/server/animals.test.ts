import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

type Method = 'GET' | 'POST' | 'PUT';
async function ask(method: Method, url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload ? { payload } : {}) });
  const json = response.headers['content-type']?.toString().includes('json') ?? false;
  return { status: response.statusCode, body: json ? response.json() : response.rawPayload, headers: response.headers };
}

const values = {
  speciesId: 'corn',
  callName: 'Juniper',
  sex: 'female',
  hatched: '2024-07-01',
  supplierName: 'Invented Supplier',
  originCountry: 'United Kingdom',
  acquiredOn: '2025-12-01',
  acquiredHow: 'bought',
  bred: 'bred',
};
const takeIn = async (part: object = {}, enclosure = 'A1') => {
  const taken = await ask('POST', '/api/animals', { values: { ...values, ...part }, enclosure, quarantine: null });
  expect(taken.status).toBe(201);
  return taken.body.id as string;
};
const write = async (id: string, kind: string, body: object, more: object = {}) =>
  await ask('POST', `/api/animals/${id}/entries`, { kind, body, ...more });
const sheet = async (id: string) => (await ask('GET', `/api/animals/${id}`)).body;
const meal = { preyId: 'mouse-adult', preyMassG: 24, count: 1, outcome: 'taken' };

describe('the register', () => {
  test('keeps the old value with who, when and why; without a reason nothing is changed', async () => {
    const id = await takeIn();
    const silent = await ask('PUT', `/api/animals/${id}/register`, { values: { sex: 'male' }, reason: ' ' });
    expect(silent).toMatchObject({ status: 422, body: { faults: [{ code: 'ANIMAL_REASON' }] } });
    const said = await ask('PUT', `/api/animals/${id}/register`, {
      values: { sex: 'male' },
      reason: 'seen again by the vet',
    });
    expect(said).toMatchObject({ status: 200, body: { changed: 1 } });
    const { entry, facts } = await sheet(id);
    expect(entry.sex).toBe('male');
    expect(facts.filter((fact: { field: string }) => fact.field === 'sex')).toMatchObject([
      { value: 'female', reason: '', by: 'tester' },
      { value: 'male', reason: 'seen again by the vet', by: 'tester' },
    ]);
  });

  test('saying the same again writes nothing', async () => {
    const id = await takeIn();
    expect((await ask('PUT', `/api/animals/${id}/register`, { values, reason: '' })).body).toEqual({ changed: 0 });
  });

  test('all faults at once, nothing written', async () => {
    const before = (await ask('GET', '/api/animals')).body.animals.length;
    const refused = await ask('POST', '/api/animals', {
      values: { speciesId: 'dragon', sex: 'girl', hatched: '2026-02-31' },
      enclosure: 'A1',
      quarantine: null,
    });
    expect(refused.body.faults.map((fault: { field: string }) => fault.field)).toEqual(['speciesId', 'sex', 'hatched']);
    expect((await ask('GET', '/api/animals')).body.animals.length).toBe(before);
  });

  test('an animal nobody knows is 404', async () => {
    expect((await ask('GET', '/api/animals/00000000-0000-4000-8000-00000000dead')).status).toBe(404);
    expect((await ask('GET', '/api/animals/nonsense')).status).toBe(400);
  });
});

describe('entries', () => {
  test('sent twice with one key, written once', async () => {
    const id = await takeIn();
    const more = { clientKey: 'device-1-0001' };
    expect((await write(id, 'weighing', { massG: 410 }, more)).body.written).toBe(true);
    expect((await write(id, 'weighing', { massG: 410 }, more)).body.written).toBe(false);
    expect((await sheet(id)).mass.series).toHaveLength(1);
  });

  test('a correction stands in for the first, a withdrawal takes it out, and all stay readable', async () => {
    const id = await takeIn();
    const { body: first } = await write(id, 'weighing', { massG: 4100 });
    const path = (entryId: string) => `/api/animals/${id}/entries/${entryId}/correction`;
    const corrected = await ask('POST', path(first.id), { body: { massG: 410 }, reason: 'a nought too many' });
    expect(corrected.status).toBe(201);
    expect((await sheet(id)).massG).toBe(410);
    // The same entry cannot be corrected from two screens.
    expect((await ask('POST', path(first.id), { body: { massG: 411 }, reason: 'late' })).status).toBe(409);
    await ask('POST', path(corrected.body.id), { body: null, reason: 'was another animal' });
    const now = await sheet(id);
    expect(now.massG).toBeNull();
    const written = now.history.filter((row: { kind: string }) => row.kind === 'weighing');
    expect(written.map((row: { body: unknown }) => row.body)).toEqual([{ massG: 4100 }, { massG: 410 }, null]);
  });

  test('moved, sold, returned: one history, and the list follows', async () => {
    const id = await takeIn();
    await write(id, 'movement', { toPlace: 'B7', toBranchId: '', why: 'grown' });
    expect(await sheet(id)).toMatchObject({ enclosure: 'B7', gone: false });
    const sold = await write(id, 'sale', { outcome: 'sold', reference: 'till 12' });
    expect(await sheet(id)).toMatchObject({ gone: true, fitness: { answer: 'gone' } });
    const listed = async () =>
      (await ask('GET', '/api/animals')).body.animals.some((one: { id: string }) => one.id === id);
    expect(await listed()).toBe(false);
    await ask('POST', `/api/animals/${id}/entries/${sold.body.id}/correction`, { body: null, reason: 'never left' });
    expect(await listed()).toBe(true);
  });

  test('a day in the future or an unknown kind is refused', async () => {
    const id = await takeIn();
    expect((await write(id, 'weighing', { massG: 1 }, { on: '2031-01-01' })).status).toBe(422);
    expect((await write(id, 'dancing', {})).status).toBe(422);
    expect((await write(id, 'weighing', { massG: 1 }, { at: 'noonish' })).body.faults[0].field).toBe('at');
  });
});

describe('the look-over', () => {
  const normal = async (id: string): Promise<Record<string, string[]>> => {
    const { body } = await ask('GET', `/api/animals/${id}/examination`);
    return Object.fromEntries(body.steps.map((step: { id: string }) => [step.id, []]));
  };
  const looked = (answers: object) => ({ answers, massG: 410, outline: '', note: '' });

  test('half done is kept and gone on with; unfinished is refused; finished it is compared and counted', async () => {
    const id = await takeIn();
    const all = await normal(id);
    const { tail: _tail, ...half } = all;
    await ask('PUT', `/api/animals/${id}/examination`, looked(half));
    const resumed = (await ask('GET', `/api/animals/${id}/examination`)).body.draft;
    expect(Object.keys(resumed.document.answers)).toHaveLength(Object.keys(all).length - 1);
    const refused = await ask('POST', `/api/animals/${id}/examination`, looked(half));
    expect(refused.body.faults[0]).toMatchObject({
      code: 'ANIMAL_EXAMINATION_OPEN',
      got: expect.stringContaining('tail'),
    });
    const held = await ask('POST', `/api/animals/${id}/examination`, looked({ ...all, skin: ['pieces'] }));
    expect(held.body.verdict.result).toBe('hold');
    expect((await ask('GET', `/api/animals/${id}/examination`)).body.draft).toBeNull();
    const again = await ask('POST', `/api/animals/${id}/examination`, looked({ ...all, tail: ['tail-rings'] }));
    expect(again.body.comparison).toEqual({
      fresh: ['tail.tail-rings'],
      still: [],
      gone: ['skin.pieces'],
      notLooked: [],
    });
  });

  test('a sign for the vet is taken at once, and mites start their watch', async () => {
    const id = await takeIn();
    const done = await ask('POST', `/api/animals/${id}/examination`, looked({ skin: ['mites'] }));
    expect(done).toMatchObject({ status: 201, body: { verdict: { result: 'vet', isolate: true } } });
    expect(await sheet(id)).toMatchObject({ fitness: { answer: 'vet' }, mites: { watching: true, daysLeft: 42 } });
  });

  test('a cloudy eye opens the slough record', async () => {
    const id = await takeIn();
    await ask('POST', `/api/animals/${id}/examination`, looked({ ...(await normal(id)), eyes: ['both-cloudy'] }));
    expect((await sheet(id)).slough.state).toBe('under-way');
  });

  test('an animal with all its record is fit', async () => {
    const id = await takeIn();
    for (const on of ['2025-12-10', '2025-12-22', '2026-01-04']) await write(id, 'feeding', meal, { on });
    await write(id, 'weighing', { massG: 405 }, { on: '2025-12-15' });
    await ask('POST', `/api/animals/${id}/examination`, looked(await normal(id)));
    const { fitness } = await sheet(id);
    expect(fitness.findings.filter((one: { answer: string }) => one.answer !== 'clear')).toEqual([]);
    expect(fitness.answer).toBe('fit');
  });
});

describe('the round', () => {
  const well = {
    state: 'well',
    water: true,
    locked: true,
    droppings: false,
    warmC: null,
    coolC: null,
    rhPct: null,
    note: '',
  };

  test('late checks of a device that was offline come in once, a bad one holds up nobody', async () => {
    const [first, second] = [await takeIn({}, 'R1'), await takeIn({}, 'R2')];
    const { today } = (await ask('GET', '/api/round')).body;
    const check = (animalId: string, clientKey: string, body: object = well) => ({
      animalId,
      clientKey,
      on: today,
      at: `${today}T08:00:00Z`,
      body,
    });
    const stranger = '00000000-0000-4000-8000-00000000dead';
    const checks = [
      check(first, 'phone-000001'),
      check(stranger, 'phone-000002'),
      check(second, 'phone-000003', { ...well, water: false }),
    ];
    const sent = await ask('POST', '/api/round', { checks });
    expect(sent.body.merged.map((one: { outcome: string }) => one.outcome)).toEqual(['written', 'refused', 'written']);
    const again = await ask('POST', '/api/round', { checks });
    expect(again.body.merged.map((one: { outcome: string }) => one.outcome)).toEqual(['known', 'refused', 'known']);
    const lines = (await ask('GET', '/api/round')).body.lines as { place: string; state: string }[];
    expect(lines.find((line) => line.place === 'R1')?.state).toBe('well');
    expect(lines.find((line) => line.place === 'R2')?.state).toBe('stands-out');
    expect(lines.find((line) => line.place === 'A1')?.state).toBe('to-do');
  });
});

describe('the inspector', () => {
  test('finds any animal by part of a word, with what is missing', async () => {
    const id = await takeIn({ callName: 'Quillwort', supplierName: '' });
    const found = (await ask('GET', '/api/inspection?search=quillw')).body;
    expect(found).toMatchObject({ place: 'england', years: 3, yearsLaw: 'england-records' });
    expect(found.animals.map((one: { id: string }) => one.id)).toEqual([id]);
    const missing = found.animals[0].headings.filter((one: { state: string }) => one.state === 'missing');
    expect(missing.map((one: { heading: { id: string } }) => one.heading.id)).toEqual(['supplier', 'photo']);
  });

  test('gets pages and a table with every animal, corrections too, and no formula runs', async () => {
    const id = await takeIn({ callName: '=1+1', supplierName: '' });
    await ask('PUT', `/api/animals/${id}/register`, { values: { sex: 'male' }, reason: 'seen again' });
    const pdf = await ask('GET', `/api/inspection.pdf?animalId=${id}&language=de`);
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.body.subarray(0, 5).toString()).toBe('%PDF-');
    const csv = (await ask('GET', '/api/inspection.csv')).body.toString('utf8') as string;
    expect(csv).toContain('Full name of the supplier');
    expect(csv).toContain("'=1+1");
    expect(csv.trim().split('\r\n').length).toBe((await ask('GET', '/api/inspection')).body.animals.length + 1);
  });
});

describe('photographs and calls', () => {
  const dot = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

  test('a picture comes back as it is; what only says that it is one does not go in', async () => {
    const id = await takeIn();
    const kept = await ask('POST', `/api/animals/${id}/photos`, { data: dot, of: 'whole' });
    const photo = await ask('GET', `/api/animals/${id}/photos/${kept.body.photoId}`);
    expect(photo.headers).toMatchObject({ 'content-type': 'image/png', 'x-content-type-options': 'nosniff' });
    expect(photo.body.toString('base64')).toBe(dot);
    const page = Buffer.from('<html><script>').toString('base64');
    expect((await ask('POST', `/api/animals/${id}/photos`, { data: page, of: 'x' })).body.faults[0].code).toBe(
      'ANIMAL_PHOTO',
    );
  });

  test('a call looks at the enclosure first, a red flag does not wait, and it is written down', async () => {
    const id = await takeIn();
    const call = {
      complaintId: 'not-eating',
      flags: [],
      readings: { warmAirC: 21 },
      answers: {},
      days: 3,
      lossPct: null,
    };
    const request = { animalId: id, speciesId: null, stage: 'adult', call, note: '', keep: true };
    expect((await ask('POST', '/api/triage', request)).body).toMatchObject({ next: 'enclosure', wrong: ['warmAirC'] });
    const flagged = { ...request, call: { ...call, flags: ['open-mouth'] } };
    expect((await ask('POST', '/api/triage', flagged)).body.next).toBe('vet-now');
    const calls = (await sheet(id)).history.filter((row: { kind: string }) => row.kind === 'call');
    expect(calls.map((row: { body: { next: string } }) => row.body.next)).toEqual(['enclosure', 'vet-now']);
  });

  test('a box is outgrown at a day with its spread, and prey is counted', async () => {
    const id = await takeIn();
    await write(id, 'length', { totalLengthCm: 60, snoutVentMm: null, errorMm: 12, how: 'trace' });
    await write(id, 'weighing', { massG: 60 });
    const { moveUp } = (await ask('GET', `/api/animals/${id}/move-up?boxLengthCm=90&lengthShare=1`)).body;
    expect(moveUp.limitCm).toBe(90);
    expect(moveUp.earliest < moveUp.likely).toBe(true);
    const prey = (await ask('GET', '/api/prey?days=28')).body;
    expect(prey.needs.length).toBeGreaterThan(0);
  });
});
