import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

async function ask(method: 'GET' | 'POST', url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload ? { payload } : {}) });
  return { status: response.statusCode, body: response.json() };
}

const takeIn = async (part: object = {}) => {
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
    ...part,
  };
  return (await ask('POST', '/api/animals', { values, enclosure: 'A1', quarantine: null })).body.id as string;
};
const enquire = async (speciesId = 'corn') => {
  const document = exampleDocument();
  const answers = { ...(document.answers as object), speciesId, cautionsExplained: true };
  return (await ask('POST', '/api/enquiries', { document: { ...document, answers } })).body.id as string;
};
type Finding = { id: string; answer: string; stands: boolean; absolute: string | null };
const findingsOf = async (id: string) => {
  const { body } = await ask('GET', `/api/placements/${id}`);
  return Object.fromEntries((body.release.findings as Finding[]).map((one) => [one.id, one]));
};

describe('a placement', () => {
  test('is opened once for an animal and a home, and shows the whole thread with every requirement', async () => {
    const [animalId, enquiryId] = [await takeIn(), await enquire()];
    const opened = await ask('POST', '/api/placements', { enquiryId, animalId });
    expect(opened).toMatchObject({ status: 201, body: { again: false } });
    const again = await ask('POST', '/api/placements', { enquiryId, animalId });
    expect(again).toMatchObject({ status: 200, body: { id: opened.body.id, again: true } });
    const { body } = await ask('GET', `/api/placements/${opened.body.id}`);
    expect(body).toMatchObject({ state: 'open', enquiry: { id: enquiryId }, animal: { id: animalId }, plan: null });
    expect(body.release).toMatchObject({ open: false, next: 'home-proven' });
    const found = await findingsOf(opened.body.id);
    expect(Object.keys(found)).toHaveLength(26);
    expect(found).toMatchObject({
      'home-fits': { answer: 'met' },
      'home-proven': { answer: 'not-known', absolute: null },
      thermostat: { answer: 'met', absolute: 'program' },
      examination: { answer: 'not-known', absolute: 'program' },
      household: { answer: 'met' },
      vet: { answer: 'not-known' },
    });
    const list = await ask('GET', '/api/placements');
    expect(list.body.policy).toHaveLength(26);
    expect(list.body.policy.filter((one: { absolute: string }) => one.absolute !== 'manager')).toMatchObject([
      { id: 'thermostat', absolute: 'always', set: null },
      { id: 'examination', absolute: 'always', set: null },
    ]);
    expect(list.body.placements).toMatchObject([{ id: opened.body.id, state: 'open', callName: 'Juniper' }]);
  });

  test('a home that was drawn for another species is not a home for this animal', async () => {
    const [animalId, enquiryId] = [await takeIn({ speciesId: 'royal' }), await enquire()];
    const opened = await ask('POST', '/api/placements', { enquiryId, animalId });
    expect((await findingsOf(opened.body.id))['home-fits']).toMatchObject({ answer: 'not-met', stands: false });
  });

  test('names everything that is not there, all at once', async () => {
    const nobody = '00000000-0000-4000-8000-000000000000';
    const opened = await ask('POST', '/api/placements', { enquiryId: nobody, animalId: nobody });
    expect(opened.status).toBe(404);
    expect(opened.body.faults.map((fault: { code: string }) => fault.code)).toEqual([
      'ENQUIRY_UNKNOWN',
      'ANIMAL_UNKNOWN',
    ]);
    expect((await ask('GET', `/api/placements/${nobody}`)).body).toMatchObject({
      faults: [{ code: 'PLACEMENT_UNKNOWN' }],
    });
  });

  test('the doors answer as the action does: shut is 409 with all that is missing, a wrong word is 400, refusing is 200', async () => {
    const [animalId, enquiryId] = [await takeIn(), await enquire()];
    const { id } = (await ask('POST', '/api/placements', { enquiryId, animalId })).body;
    const token = '11111111-1111-4111-8111-111111111111';
    const shut = await ask('POST', `/api/placements/${id}/release`, { outcome: 'sold', token });
    expect(shut.status).toBe(409);
    expect(new Set(shut.body.faults.map((fault: { code: string }) => fault.code))).toEqual(new Set(['RELEASE_SHUT']));
    expect(shut.body.faults.length).toBeGreaterThan(10);
    const absolute = { requirement: 'examination', reason: 'they are in a hurry', takeBack: false, token };
    expect((await ask('POST', `/api/placements/${id}/overrides`, absolute)).status).toBe(403);
    expect((await ask('POST', `/api/placements/${id}/refusal`, { reason: 'mood', text: '', token })).status).toBe(400);
    const refused = await ask('POST', `/api/placements/${id}/refusal`, { reason: 'home', text: '', token });
    expect(refused).toMatchObject({ status: 200, body: { state: 'refused' } });
    const vet = { requirement: 'vet', answer: 'yes', text: 'a practice', place: null, years: null, token };
    expect(await ask('POST', `/api/placements/${id}/statements`, vet)).toMatchObject({ status: 200 });
    const later = { ...vet, token: token.replace('1', '2') };
    expect((await ask('POST', `/api/placements/${id}/statements`, later)).status).toBe(409);
  });
});
