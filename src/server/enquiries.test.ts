import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

let running: AppForTests;
beforeAll(async () => {
  running = await appForTests();
});
afterAll(async () => await running.close());

const document = { format: 'warmstead-enquiry', version: 1, answers: { label: 'Corn snake, attic' }, enclosure: null };

async function open(body: object = { document }) {
  return await running.app.inject({ method: 'POST', url: '/api/enquiries', payload: body });
}

async function change(id: string, payload: object, headers: Record<string, string>) {
  return await running.app.inject({ method: 'PUT', url: `/api/enquiries/${id}`, payload, headers });
}

test('an enquiry is opened, found in the list and read again', async () => {
  const opened = await open();
  expect(opened.statusCode).toBe(201);
  expect(opened.headers.etag).toBe('"1"');
  const { id } = opened.json();
  const read = await running.app.inject({ url: `/api/enquiries/${id}` });
  expect(read.json()).toEqual(opened.json());
  expect(read.json()).toMatchObject({ version: 1, title: 'Corn snake, attic', createdBy: 'tester', document });
  const list = await running.app.inject({ url: '/api/enquiries' });
  expect(list.json().enquiries[0]).toMatchObject({ id, title: 'Corn snake, attic' });
  expect(list.json().enquiries[0].document).toBeUndefined();
});

test('a change from an old version answers 409, overwrites nothing and says so', async () => {
  const { id } = (await open()).json();
  const first = await change(id, { document: { n: 1 } }, { 'if-match': '"1"' });
  expect(first.statusCode).toBe(200);
  expect(first.headers.etag).toBe('"2"');
  const second = await change(id, { document: { n: 2 } }, { 'if-match': '"1"' });
  expect(second.statusCode).toBe(409);
  expect(second.json().faults[0]).toMatchObject({ code: 'ENQUIRY_CHANGED', allowed: expect.stringContaining('2') });
  const now = await running.app.inject({ url: `/api/enquiries/${id}` });
  expect(now.json().document).toEqual({ n: 1 });
  const history = await running.app.inject({ url: `/api/enquiries/${id}/versions` });
  expect(history.json().versions.map((row: { document: object }) => row.document)).toEqual([document, { n: 1 }]);
});

test('a change without its version is refused', async () => {
  const { id } = (await open()).json();
  for (const headers of [{}, { 'if-match': '*' }, { 'if-match': '"x"' }]) {
    const answer = await change(id, { document: {} }, headers);
    expect(answer.statusCode).toBe(428);
    expect(answer.json().faults[0].code).toBe('REQUEST_VERSION_MISSING');
  }
});

test('every wrong field is named at once', async () => {
  const answer = await open({ document: 'text', extra: 1, more: 2 });
  expect(answer.statusCode).toBe(400);
  const faults = answer.json().faults as { field: string }[];
  expect(faults.map((fault) => fault.field).sort()).toEqual(['document', 'extra', 'more']);
});

test('what PostgreSQL cannot keep is refused before it gets there', async () => {
  for (const text of ['\u0000', 'a\ud800b']) {
    const answer = await open({ document: { answers: { label: text } } });
    expect(answer.statusCode).toBe(422);
    expect(answer.json().faults[0].code).toBe('ENQUIRY_TEXT');
  }
  const honest = { answers: { label: 'a \\u0000 written out, and an emoji \u{1F40D}' } };
  expect((await open({ document: honest })).json().document).toEqual(honest);
});

test('a document that is too large is refused', async () => {
  const answer = await open({ document: { text: 'x'.repeat(300_000) } });
  expect(answer.statusCode).toBe(413);
  expect(answer.json().faults[0].code).toBe('ENQUIRY_TOO_LARGE');
  const larger = await open({ document: { text: 'x'.repeat(700_000) } });
  expect(larger.statusCode).toBe(413);
  expect(larger.json().faults[0].code).toBe('REQUEST_TOO_LARGE');
});

test('an enquiry that does not exist is not found', async () => {
  const id = '00000000-0000-4000-8000-000000000000';
  for (const url of [`/api/enquiries/${id}`, `/api/enquiries/${id}/versions`, `/api/enquiries/${id}/plans`]) {
    expect((await running.app.inject({ url })).statusCode).toBe(404);
  }
  expect((await change(id, { document: {} }, { 'if-match': '"1"' })).statusCode).toBe(404);
  expect((await running.app.inject({ url: '/api/enquiries/nonsense' })).statusCode).toBe(400);
});
