import { createHash, randomUUID } from 'node:crypto';
import { sql } from 'kysely';
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

  test('is kept as it was given: years later the same bytes, and what would be different today', async () => {
    const id = await placed(exampleDocument());
    const at = `/api/placements/${id}`;
    const get = async (url: string) => await server.app.inject({ url });
    const packs = async () => (await get(`${at}/packs`)).json().packs as { id: string; sha256: string; by: string }[];
    expect(await packs()).toEqual([]);
    const given = await get(`${at}/pack.pdf?language=de`);
    await get(`${at}/pack.pdf?language=de`);
    const [first, ...more] = await packs();
    expect([more, first?.by], 'the same paper is kept once').toEqual([[], 'tester']);
    expect(first?.sha256).toBe(createHash('sha256').update(given.rawPayload).digest('hex'));
    const differences = async () =>
      (await get(`${at}/packs/${first?.id}/differences`)).json().differences as {
        title: string;
        was: string[];
        now: string[];
      }[];
    expect(await differences()).toEqual([]);

    const statement = {
      requirement: 'vet',
      answer: 'yes',
      text: 'Praxis Quoxley, 01234 567',
      place: null,
      years: null,
    };
    await send(`${at}/statements`, { ...statement, token: randomUUID() });
    const told = await differences();
    expect(told.flatMap(({ now }) => now).join(' ')).toContain('Praxis Quoxley');
    expect(told.flatMap(({ was }) => was).join(' ')).not.toContain('Praxis Quoxley');
    expect(await packs(), 'comparing keeps nothing').toHaveLength(1);
    const renewed = await get(`${at}/pack.pdf?language=de`);
    expect(renewed.rawPayload.equals(given.rawPayload)).toBe(false);
    expect((await packs()).map((one) => one.sha256)[1]).toBe(first?.sha256);
    const copy = await get(`${at}/packs/${first?.id}/pack.pdf`);
    expect(copy.headers['content-type']).toBe('application/pdf');
    expect(copy.rawPayload.equals(given.rawPayload), 'byte for byte').toBe(true);
    const { db } = server.records;
    await expect(sql`update pack_given set by = 'somebody else'`.execute(db)).rejects.toThrow(/kept as they are/);
    await expect(sql`delete from pack_given`.execute(db)).rejects.toThrow(/kept as they are/);
    const other = await placed(exampleDocument());
    const elsewhere = await get(`/api/placements/${other}/packs/${first?.id}/pack.pdf`);
    expect([elsewhere.statusCode, elsewhere.json().faults[0].code]).toEqual([404, 'PACK_UNKNOWN']);
  }, 60_000);

  test('goes with the words of its buyer when these are erased, and is given out before', async () => {
    const id = await placed(exampleDocument());
    const at = `/api/placements/${id}`;
    const get = async (url: string) => await server.app.inject({ url });
    const made = await get(`${at}/pack.pdf`);
    const buyer = (await get(`${at}/buyer`)).json();
    expect(Buffer.from(buyer.rows.packs[0].bytes_base64, 'base64').equals(made.rawPayload)).toBe(true);
    await send(`${at}/refusal`, { reason: 'home', text: '', token: randomUUID() });
    const erased = await server.app.inject({
      method: 'POST',
      url: `${at}/buyer/erasure`,
      payload: { reason: 'asked for it' },
    });
    expect(erased.statusCode).toBe(200);
    const [pack] = (await get(`${at}/packs`)).json().packs;
    expect(pack.sizeBytes).toBe(0);
    const gone = await get(`${at}/packs/${pack.id}/pack.pdf`);
    expect([gone.statusCode, gone.json().faults[0].code]).toEqual([410, 'PACK_ERASED']);
    const { rows } = await sql<{ what: string }>`
      select what from chain_link where table_name = 'pack_given' and row_key = ${pack.id} order by number
    `.execute(server.records.db);
    expect(rows.map(({ what }) => what)).toEqual(['added', 'erased']);
  }, 60_000);
});
