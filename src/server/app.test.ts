import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

let running: AppForTests;
beforeAll(async () => {
  running = await appForTests({
    before: (app) =>
      app.get('/api/broken', { config: { who: 'anyone' } }, async () => {
        throw new Error('password=secret in table enquiry');
      }),
  });
});
afterAll(async () => await running.close());

test('the program names the versions that answer', async () => {
  const answer = await running.app.inject({ url: '/api/program' });
  expect(answer.json()).toMatchObject({ ok: true, records: 'server', shop: 'Test shop' });
  expect(answer.json().parts.map((one: { part: string }) => one.part)).toEqual(['database', 'tables', 'disk', 'queue']);
  expect(answer.json().model).toMatch(/^\d+\.\d+\.\d+\+[0-9a-f]{12}$/);
  expect(answer.json().data).toMatch(/^[0-9a-f]{12}$/);
});

test.each([
  ['species', 18],
  ['materials', 10],
  ['examples', 6],
])('%s are served from the data', async (name, atLeast) => {
  const rows = (await running.app.inject({ url: `/api/${name}` })).json()[name] as { id: string }[];
  expect(rows.length).toBeGreaterThanOrEqual(atLeast);
  expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
  expect(Object.keys(rows[0] ?? {}).length).toBeGreaterThan(1);
});

test('the description lists every door', async () => {
  const description = (await running.app.inject({ url: '/api/openapi.json' })).json();
  expect(description.openapi).toMatch(/^3\.1/);
  const doors = ['/api/enquiries', '/api/enquiries/{id}', '/api/plan', '/api/species', '/api/examples', '/api/health'];
  expect(Object.keys(description.paths)).toEqual(expect.arrayContaining(doors));
});

test('an unknown error is answered without its own words', async () => {
  const answer = await running.app.inject({ url: '/api/broken' });
  expect(answer.statusCode).toBe(500);
  expect(answer.json().faults[0].say).toMatch(/^Something failed on our side, ref [0-9a-f]{8}\.$/);
  expect(answer.body).not.toContain('secret');
});

test('what is not JSON is said so', async () => {
  const headers = { 'content-type': 'application/json' };
  for (const payload of ['{"document":', '', '{"__proto__": {"a": 1}}']) {
    const answer = await running.app.inject({ method: 'POST', url: '/api/enquiries', headers, payload });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().faults[0].code).toBe('REQUEST_JSON');
  }
});

test('another kind of content is said so', async () => {
  for (const type of ['text/plain', 'application/xml', 'application/octet-stream', 'multipart/form-data; boundary=x']) {
    const headers = { 'content-type': type };
    const answer = await running.app.inject({ method: 'POST', url: '/api/enquiries', headers, payload: '{}' });
    expect([answer.statusCode, answer.json().faults[0].code]).toEqual([415, 'REQUEST_TYPE']);
  }
});

test('every answer says what it is and is taken for nothing else', async () => {
  for (const url of ['/', '/api/enquiries', '/api/nothing', '/api/openapi.json']) {
    const { headers } = await running.app.inject({ url, headers: { accept: 'text/html' } });
    expect(headers['content-type'], url).toMatch(/charset=utf-8|application\/json/);
    expect(headers['x-content-type-options'], url).toBe('nosniff');
    expect(headers['referrer-policy'], url).toBeTruthy();
    expect(headers['content-security-policy'], url).toContain("frame-ancestors 'none'");
    expect(headers['access-control-allow-origin'], url).toBeUndefined();
    expect(headers['x-powered-by'] ?? headers.server, url).toBeUndefined();
  }
});

test('every address of the pages opens the page; unknown API addresses do not', async () => {
  const html = { accept: 'text/html' };
  for (const url of ['/', '/enquiry/7', '/plan?x=1']) {
    const page = await running.app.inject({ url, headers: html });
    expect(page.statusCode).toBe(200);
    expect(page.body).toContain('pages for tests');
  }
  for (const url of ['/api/nothing', '/assets/gone.js']) {
    const answer = await running.app.inject({ url });
    expect(answer.statusCode).toBe(404);
    expect(answer.json().faults[0].code).toBe('REQUEST_UNKNOWN');
  }
});

test('pages carry the policy, and only named files are kept for long', async () => {
  const page = await running.app.inject({ url: '/', headers: { accept: 'text/html' } });
  const policy = String(page.headers['content-security-policy']);
  expect(policy).toContain("default-src 'self'");
  expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
  expect(policy).not.toContain('upgrade-insecure-requests');
  expect(page.headers['strict-transport-security']).toBeUndefined();
  expect(page.headers['cache-control']).toBe('no-cache');
  const file = await running.app.inject({ url: '/assets/main-abc123.js' });
  expect(file.headers['cache-control']).toContain('immutable');
});

test('other sites and made-up host names are turned away', async () => {
  const post = { method: 'POST', url: '/api/enquiries', payload: { document: {} } } as const;
  for (const site of ['cross-site', 'same-site']) {
    expect((await running.app.inject({ ...post, headers: { 'sec-fetch-site': site } })).statusCode).toBe(403);
  }
  expect((await running.app.inject({ ...post, headers: { 'sec-fetch-site': 'same-origin' } })).statusCode).toBe(201);
  const host = await running.app.inject({ url: '/api/enquiries', headers: { host: 'evil.example:7430' } });
  expect(host.statusCode).toBe(403);
  expect(host.json().faults[0].code).toBe('REQUEST_FOREIGN');
});
