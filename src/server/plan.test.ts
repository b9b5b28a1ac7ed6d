// Plans through the HTTP door: real worker, real simulation, real records.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Enclosure } from '../physics/enclosure.ts';
import { programRoot } from '../records/root.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

const corn = JSON.parse(readFileSync(join(programRoot(), 'data/examples/wood-1200.json'), 'utf8')) as Enclosure;
let running: AppForTests;
beforeAll(async () => {
  running = await appForTests();
});
afterAll(async () => await running.close());

const post = async (payload: object) => await running.app.inject({ method: 'POST', url: '/api/plan', payload });

test('a plan names verdict, needs and the versions behind it; the same input gives the same answer', async () => {
  const [first, second] = await Promise.all([
    post({ enclosure: corn, members: 8 }),
    post({ enclosure: corn, members: 8 }),
  ]);
  expect(first.statusCode).toBe(200);
  const { answer, modelVersion, dataVersion, resultId } = first.json();
  expect(['holds', 'fails', 'not-known']).toContain(answer.verdict);
  expect(answer.needs.length).toBeGreaterThan(5);
  expect(answer.members).toBe(8);
  expect(modelVersion).toMatch(/\+[0-9a-f]{12}$/);
  expect(dataVersion).toMatch(/^[0-9a-f]{12}$/);
  expect(resultId).toBeNull();
  expect(second.json()).toEqual(first.json());
});

test('without its heater the same home fails', async () => {
  const cold = { ...corn, heaters: [], thermostats: [] };
  const { answer } = (await post({ enclosure: cold, members: 8 })).json();
  expect(answer.verdict).toBe('fails');
});

test('the pages stay quick while a plan is computed', async () => {
  const plan = post({ enclosure: corn, members: 32 });
  let done = false;
  void plan.then(() => {
    done = true;
  });
  let answered = 0;
  while (!done && answered < 20) {
    await running.app.inject({ url: '/api/openapi.json' });
    answered++;
  }
  expect(answered).toBe(20);
  expect((await plan).statusCode).toBe(200);
});

test('an answer for an enquiry is kept with its version', async () => {
  const opened = await running.app.inject({
    method: 'POST',
    url: '/api/enquiries',
    payload: { document: { enclosure: corn } },
  });
  const { id } = opened.json();
  const { resultId, answer } = (await post({ enclosure: corn, members: 4, enquiryId: id })).json();
  const kept = (await running.app.inject({ url: `/api/enquiries/${id}/plans` })).json().results;
  expect(kept).toEqual([expect.objectContaining({ id: resultId, enquiryVersion: 1, by: 'tester', answer })]);
  const again = (await post({ enclosure: corn, members: 4, enquiryId: id })).json();
  const newest = await running.app.inject({ url: `/api/enquiries/${id}/plans?most=1` });
  expect(newest.json().results.map((one: { id: string }) => one.id)).toEqual([again.resultId]);
  expect((await running.app.inject({ url: `/api/enquiries/${id}/plans?most=0` })).statusCode).toBe(400);
  const elsewhere = await post({ enclosure: corn, members: 4, enquiryId: '00000000-0000-4000-8000-000000000000' });
  expect(elsewhere.statusCode).toBe(404);
});

test('everything wrong with an enclosure is named at once', async () => {
  const wrong = { ...corn, coverFrac: 7, day: { startH: 30, endH: 20 }, nonsense: true };
  const answer = await post({ enclosure: wrong });
  expect(answer.statusCode).toBe(422);
  const fields = (answer.json().faults as { field: string }[]).map((fault) => fault.field);
  expect(fields).toEqual(expect.arrayContaining(['coverFrac', 'day.startH', 'nonsense']));
});

test.each([
  ['an animal', { animal: null }, 'PLAN_NO_ANIMAL'],
  ['a known species', { animal: { ...corn.animal, speciesId: 'constructor' } }, 'PLAN_SPECIES'],
])('a plan needs %s', async (_name, change, code) => {
  const answer = await post({ enclosure: { ...corn, ...change } });
  expect(answer.statusCode).toBe(422);
  expect(answer.json().faults[0].code).toBe(code);
});

test('an unknown space standard is refused with the known ones', async () => {
  const answer = await post({ enclosure: corn, standardId: 'toString' });
  expect(answer.json().faults[0]).toMatchObject({ code: 'PLAN_STANDARD', allowed: expect.stringContaining(',') });
});
