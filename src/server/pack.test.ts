import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

const send = async (url: string, payload: object) =>
  (await server.app.inject({ method: 'POST', url, payload })).json() as { id: string };

async function placed(document: object): Promise<string> {
  const values = { speciesId: 'corn', callName: 'Juniper', sex: 'female', hatched: '2024-07-01' };
  const animal = await send('/api/animals', { values, enclosure: 'A1', quarantine: null });
  const enquiry = await send('/api/enquiries', { document });
  return (await send('/api/placements', { enquiryId: enquiry.id, animalId: animal.id })).id;
}

describe('the pack of a placement', () => {
  test('comes as a PDF, twice the same, and in another language as another', async () => {
    const id = await placed(exampleDocument());
    const ask = async (query: string) => await server.app.inject({ url: `/api/placements/${id}/pack.pdf?${query}` });
    const [english, again, german] = [await ask('language=en'), await ask('language=en'), await ask('language=de')];
    expect(english.statusCode).toBe(200);
    expect(english.headers['content-type']).toBe('application/pdf');
    expect(english.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect(again.rawPayload.equals(english.rawPayload)).toBe(true);
    expect(german.rawPayload.equals(english.rawPayload)).toBe(false);
    // A code that no file brought words for is said in English.
    expect((await ask('language=xx')).rawPayload.length).toBeGreaterThan(english!.rawPayload.length * 0.9);
    expect((await ask('language=English')).statusCode).toBe(400);
  }, 60_000);

  test('is refused with every fault where there is no home to print, and where there is no placement', async () => {
    const bare = await placed({ answers: { label: 'nothing drawn' } });
    const refused = await server.app.inject({ url: `/api/placements/${bare}/pack.pdf` });
    expect(refused.statusCode).toBeGreaterThanOrEqual(400);
    expect(refused.json().faults.map((fault: { code: string }) => fault.code)).toEqual(['PROOF_NO_HOME']);
    const unknown = await server.app.inject({ url: '/api/placements/00000000-0000-4000-8000-000000000000/pack.pdf' });
    expect(unknown.statusCode).toBe(404);
    expect(unknown.json().faults[0].code).toBe('PLACEMENT_UNKNOWN');
  });

  test('a home with faults is told about whole, nothing is printed', async () => {
    const { enclosure } = exampleDocument() as { enclosure: { box: object } };
    const id = await placed({
      answers: { label: 'wrong' },
      enclosure: { ...enclosure, box: { ...enclosure.box, lengthM: 120, depthM: -1 } },
    });
    const refused = await server.app.inject({ url: `/api/placements/${id}/pack.pdf` });
    expect(refused.statusCode).toBeGreaterThanOrEqual(400);
    expect(refused.json().faults.map((fault: { field: string }) => fault.field)).toEqual(
      expect.arrayContaining(['box.lengthM', 'box.depthM']),
    );
  });
});
