// A shop's own values through the doors: set, shown, used by a plan, withdrawn, never lost; everything wrong at once.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shopValuesFrom } from '../husbandry/shop-values-file.ts';
import { programRoot } from '../records/root.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

const corn = JSON.parse(readFileSync(join(programRoot(), 'data/examples/wood-1200.json'), 'utf8')) as {
  animal: { speciesId: string };
};
let running: AppForTests;
beforeAll(async () => {
  running = await appForTests();
});
afterAll(async () => await running.close());

const post = async (url: string, payload: object) => await running.app.inject({ method: 'POST', url, payload });
const shown = async (id: string) => (await running.app.inject({ url: `/api/reference/${id}` })).json();
const path = 'species.corn.all.rhPct';
const codes = (answer: { json: () => { faults: readonly { code: string }[] } }) =>
  answer.json().faults.map(({ code }) => code);

test('every fault of a shop value is told at once', async () => {
  const cases: readonly (readonly [object, readonly string[]])[] = [
    [{ path, value: { low: 2, high: 130 }, why: ' ' }, ['DATA_RANGE', 'DATA_RANGE', 'OVERLAY_WHY']],
    [{ path, value: { low: 70, high: 60 }, why: 'x' }, ['DATA_ORDER']],
    [{ path, value: { value: 50 }, why: '' }, ['OVERLAY_PARTS', 'OVERLAY_WHY']],
    [{ path, value: { low: 'damp', high: 60 }, why: 'x' }, ['DATA_FORM']],
    [{ path: 'species.corn.all.beginner', value: { value: 'easy' }, why: 'x' }, ['OVERLAY_WORD']],
    [{ path: 'species.corn.all.euAnnex', value: { value: 'B' }, why: '' }, ['OVERLAY_FACT', 'OVERLAY_WHY']],
    [{ path: 'species.corn.all.__proto__', value: { value: 1 }, why: 'x' }, ['OVERLAY_FACT']],
    [{ path: 'policy.standardId', value: { value: 'none-such' }, why: '' }, ['OVERLAY_WORD', 'OVERLAY_WHY']],
  ];
  for (const [body, wanted] of cases) {
    const answer = await post('/api/overlays', body);
    expect(answer.statusCode, JSON.stringify(body)).toBe(422);
    expect(codes(answer), JSON.stringify(body)).toEqual(wanted);
  }
});

test('a value that would contradict the rest of the species is refused', async () => {
  const value = { low: 29, high: 30 };
  const answer = await post('/api/overlays', { path: 'species.corn.all.nightMinC', value, why: 'warm nights' });
  expect(answer.statusCode).toBe(422);
  expect(codes(answer)).toEqual(['DATA_RANGE', 'DATA_RANGE']);
  const warm = { path: 'species.corn.all.warmAirC', value: { low: 22, high: 23 }, why: 'x' };
  expect(codes(await post('/api/overlays', warm))).toContain('DATA_ORDER');
});

test('a range goes wholly above the shipped one, is used by the plan, and stays readable once withdrawn', async () => {
  const night = 'species.corn.all.nightMinC';
  const wanted = (answer: { needs: readonly { wanted: string }[] }) => answer.needs.map((need) => need.wanted).join();
  const set = await post('/api/overlays', { path: night, value: { low: 21, high: 24 }, why: 'to see it used' });
  expect(set.json()).toEqual({ id: expect.any(String) });
  const other = await post('/api/overlays', {
    path: 'species.royal.all.rhPct',
    value: { low: 55, high: 75 },
    why: 'another species',
  });
  expect(other.statusCode).toBe(201);
  const [stands] = (await shown('corn')).overlays;
  expect(stands).toMatchObject({ path: night, value: { low: 21, high: 24 }, was: { low: 18, high: 20 }, by: 'tester' });

  const plan = (await post('/api/plan', { enclosure: corn, members: 4 })).json().answer;
  expect(plan.shopValues).toMatchObject([{ path: night, why: 'to see it used', by: 'tester' }]);
  expect(wanted(plan)).toContain('21');

  expect(codes(await post(`/api/overlays/${set.json().id}/withdrawal`, { why: '' }))).toEqual(['OVERLAY_WHY']);
  expect((await post(`/api/overlays/${set.json().id}/withdrawal`, { why: 'seen' })).statusCode).toBe(200);
  expect((await post(`/api/overlays/${set.json().id}/withdrawal`, { why: 'again' })).statusCode).toBe(404);
  const [gone] = (await shown('corn')).overlays;
  expect(gone).toMatchObject({ value: { low: 21, high: 24 }, withdrawn: { why: 'seen', by: 'tester' } });
  const after = (await post('/api/plan', { enclosure: corn, members: 4 })).json().answer;
  expect(after.shopValues).toEqual([]);
  expect(wanted(after)).not.toBe(wanted(plan));
});

test('a second value at one place replaces the first; both are kept', async () => {
  for (const high of [70, 65]) await post('/api/overlays', { path, value: { low: 45, high }, why: `up to ${high}` });
  const { overlays } = await shown('corn');
  const mine = overlays.filter((one: { why: string }) => one.why.startsWith('up to'));
  expect(mine).toMatchObject([{ withdrawn: { why: 'replaced: up to 65' } }, { withdrawn: null }]);
});

test('the standard that the shop goes by is used unless the plan names one', async () => {
  const why = 'the council asks for it';
  await post('/api/overlays', { path: 'policy.standardId', value: { value: 'wales-shop' }, why });
  const named = async (body: object) =>
    (await post('/api/plan', { enclosure: corn, members: 4, ...body }))
      .json()
      .answer.shopValues.map((one: { path: string }) => one.path);
  expect(await named({})).toContain('policy.standardId');
  expect(await named({ standardId: 'home-third' })).not.toContain('policy.standardId');
});

test('rows of lists, policies and lists of words are overruled through the same door, and less care is refused', async () => {
  const cases: readonly (readonly [object, string | null])[] = [
    [{ path: 'substrates.peat.moisture', value: { value: 'medium' }, why: 'ours is mixed' }, null],
    [{ path: 'materials.cork-board.conductivityWPerMK', value: { value: 0.05 }, why: 'measured here' }, null],
    [{ path: 'heaters.heat-mat.offeredW', value: { values: [10, 20] }, why: 'what we sell' }, null],
    [{ path: 'thermostats.on-off.drives.ceramic-emitter', value: { value: 'never' }, why: 'too wide a swing' }, null],
    [{ path: 'law.gb-under-16-ew.years', value: { value: 18 }, why: 'adults only here' }, null],
    [{ path: 'policy.thermostatLoadPct', value: { value: 70 }, why: 'old wiring' }, null],
    [{ path: 'species.corn.all.substrates', value: { values: ['paper'] }, why: 'isolation' }, null],
    [{ path: 'law.gb-under-16-ew.years', value: { value: 12 }, why: 'x' }, 'OVERLAY_LOOSER'],
    [{ path: 'heaters.ceramic-emitter.needsGuard', value: { value: 'no' }, why: 'x' }, 'OVERLAY_LOOSER'],
    [{ path: 'materials.cork-board.conductivityWPerMK', value: { value: 65 }, why: 'x' }, 'DATA_RANGE'],
  ];
  for (const [body, code] of cases) {
    const answer = await post('/api/overlays', body);
    expect(answer.statusCode, JSON.stringify(body)).toBe(code === null ? 201 : 422);
    if (code !== null) expect(codes(answer), JSON.stringify(body)).toEqual([code]);
  }
  const lists = (await running.app.inject({ url: '/api/lists' })).json();
  expect(lists.overlays.map((one: { path: string }) => one.path)).toContain('law.gb-under-16-ew.years');
  expect(lists.lists.law.flatMap((row: { places: readonly string[] }) => row.places)).toContain('victoria');
  const plan = (await post('/api/plan', { enclosure: corn, members: 4 })).json().answer;
  const paths = plan.shopValues.map((one: { path: string }) => one.path);
  expect(paths).toContain('policy.thermostatLoadPct');
  expect(paths).not.toContain('law.gb-under-16-ew.years');
});

test('values leave as a file that can be read back, and as pages', async () => {
  const standing = (await running.app.inject({ url: '/api/shop-values' })).json();
  const file = await running.app.inject({ url: '/api/shop-values.json' });
  expect(file.headers['content-disposition']).toContain('shop-values.json');
  const read = shopValuesFrom(file.json());
  expect(read.ok && read.value).toEqual(standing.values);
  expect(standing.refused).toEqual([]);
  for (const language of ['en', 'de']) {
    const pdf = await running.app.inject({ url: `/api/shop-values.pdf?language=${language}` });
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    const text = execFileSync('pdftotext', ['-raw', '-', '-'], { input: pdf.rawPayload }).toString('utf8');
    const name = { en: 'every age, Humidity', de: 'jedes Alter, Feuchte' }[language];
    expect(text.replace(/\s+/g, ' ')).toContain(name);
    expect(text).not.toContain('rhPct');
  }
});

test('a rule of law past its review is told as due, and one that the shop looked at itself is not', async () => {
  const at = async (iso: string) => {
    const later = await appForTests({ from: iso });
    try {
      const ask = async () => (await later.app.inject({ url: '/api/lists' })).json().lists.law;
      const before = await ask();
      const value = { value: '2031-01-01' };
      const body = { path: 'law.gb-under-16-ew.reviewBy', value, why: 'read again at the source' };
      await later.app.inject({ method: 'POST', url: '/api/overlays', payload: body });
      return { before, after: await ask() };
    } finally {
      await later.close();
    }
  };
  const stale = (rows: readonly { id: string; stale: boolean }[]) => rows.filter((row) => row.stale).length;
  const now = await at('2026-12-01T09:00:00Z');
  expect(stale(now.before)).toBe(0);
  const late = await at('2029-12-01T09:00:00Z');
  expect(stale(late.before)).toBe(late.before.length);
  expect(stale(late.after)).toBe(late.before.length - 1);
});

test('an unknown species is a fault', async () => {
  expect(codes(await running.app.inject({ url: '/api/reference/dragon' }))).toEqual(['ANIMAL_SPECIES']);
});
