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
});
