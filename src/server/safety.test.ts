// What a browser, a proxy, a log and a disk may learn or be made to do: cookies over https, other sites, uploads, logs,
// readiness.
import { statfs } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import Fastify from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readiness } from '../desk/readiness.ts';
import { logChoice } from './log.ts';
import { type AppForTests, appForTests, testPassword } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';

let server: AppForTests;
beforeAll(async () => {
  server = await appForTests();
});
afterAll(async () => await server.close());

describe('other sites', () => {
  const change = { method: 'POST', url: '/api/enquiries', payload: { document: {} } } as const;

  test.each([
    [{ 'sec-fetch-site': 'cross-site' }, 403],
    [{ 'sec-fetch-site': 'same-site' }, 403],
    [{ origin: 'http://evil.example' }, 403],
    [{ origin: 'http://localhost:1' }, 403],
    [{ origin: 'null' }, 403],
    [{ origin: 'http://localhost:80', host: 'localhost:80' }, 403],
    [{ origin: 'http://localhost', host: 'localhost' }, 201],
    [{ 'sec-fetch-site': 'same-origin', origin: 'http://localhost' }, 201],
  ])('a change with %o is answered %i, even with a good cookie', async (headers, status) => {
    expect((await server.app.inject({ ...change, headers })).statusCode).toBe(status);
  });

  test('a form of another site cannot be sent at all', async () => {
    for (const type of ['application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'text/plain']) {
      const options = {
        method: 'POST',
        url: '/api/enquiries',
        headers: { 'content-type': type },
        payload: 'a=b',
      } as const;
      expect((await server.app.inject(options)).statusCode).toBe(415);
    }
  });
});

describe('behind a proxy that brings https', () => {
  test('the cookie is Secure and host-bound and browsers are told to stay with https; a stranger’s word does not count', async () => {
    const { records } = server;
    const { buildApp } = await import('./app.ts');
    const { startPlanner } = await import('../desk/planner.ts');
    const { firstBranch } = await import('../records/shops.ts');
    const planner = startPlanner(1);
    const branch = await firstBranch(records.db, { shopName: '', branchName: '', at: new Date(0) });
    const clock = { now: () => new Date('2026-01-15T09:00:00Z') };
    const app = await buildApp(
      { records, branch, planner, db: records.db, clock },
      { webFolder: '', hosts: [], proxies: ['127.0.0.1'] },
    );
    const payload = { name: 'tester', password: testPassword };
    const headers = { 'x-forwarded-proto': 'https' };
    const through = await app.inject({ method: 'POST', url: '/api/session', headers, payload });
    expect(String(through.headers['set-cookie'])).toMatch(/^__Host-warmstead=.*Secure/);
    expect(through.headers['strict-transport-security']).toBe('max-age=31536000');
    const past = await app.inject({ method: 'POST', url: '/api/session', headers, payload, remoteAddress: '10.2.3.4' });
    expect(String(past.headers['set-cookie'])).not.toContain('Secure');
    await app.close();
    await planner.close();
  });
});

describe('uploads', () => {
  const page = '<!doctype html><script>alert(1)</script>';
  const ask = async (method: 'GET' | 'POST', url: string, payload?: object) =>
    await server.app.inject({ method, url, ...(payload ? { payload } : {}) });

  test('a picture is what its first bytes say, is never a page, and can do nothing when opened by itself', async () => {
    const values = { speciesId: 'corn', callName: 'Sorrel', sex: 'female', bred: 'bred' };
    const { id } = (await ask('POST', '/api/animals', { values, enclosure: 'A1', quarantine: null })).json();
    const photos = `/api/animals/${id}/photos`;
    const base64 = (bytes: string) => Buffer.from(bytes, 'latin1').toString('base64');
    for (const bytes of [page, `GIF89a${page}`, `<svg xmlns="http://www.w3.org/2000/svg">${page}</svg>`, '']) {
      expect((await ask('POST', photos, { data: base64(bytes), of: 'x' })).statusCode).toBeGreaterThanOrEqual(400);
    }
    const hidden = `\x89PNG\r\n\x1a\n${page}`;
    const { photoId } = (await ask('POST', photos, { data: base64(hidden), of: 'x' })).json();
    const back = await ask('GET', `${photos}/${photoId}`);
    expect(back.headers).toMatchObject({
      'content-type': 'image/png',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      'cross-origin-resource-policy': 'same-origin',
    });
    const large = Buffer.alloc(400_001, 0xff);
    large.set([0xff, 0xd8, 0xff]);
    expect((await ask('POST', photos, { data: large.toString('base64'), of: 'x' })).statusCode).toBeGreaterThanOrEqual(
      400,
    );
  });

  test('a logger file comes back as what was understood of it, never as a file; a page is no logger file', async () => {
    const { id } = (await ask('POST', '/api/enquiries', { document: exampleDocument() })).json();
    const url = `/api/enquiries/${id}/reading-files?name=${encodeURIComponent('../../x.html')}`;
    const headers = { 'content-type': 'application/octet-stream' };
    for (const payload of [page, '\x7fELF\x02\x01', 'PK\x03\x04']) {
      const answer = await server.app.inject({ method: 'POST', url, headers, payload });
      expect(answer.statusCode).toBeGreaterThanOrEqual(400);
      expect(answer.headers['content-type']).toContain('application/json');
    }
  });

  test('what is printed or written as a table is a fixed kind of file', async () => {
    const csv = await ask('GET', '/api/inspection.csv');
    expect(csv.headers).toMatchObject({
      'content-type': 'text/csv; charset=utf-8',
      'x-content-type-options': 'nosniff',
    });
    expect(csv.headers['content-disposition']).toContain('attachment');
  });
});

describe('the log', () => {
  test('holds where something failed and nothing of a person: no name, token, header, body or address', async () => {
    const lines: string[] = [];
    const app = Fastify({ logger: logChoice({ write: (line) => lines.push(line) }) });
    app.post('/api/people/:id', async (request) => {
      request.log.error({ req: request, password: 'hunter-twelve-long', token: 'tok-en-of-a-session' }, 'failed');
      throw Object.assign(new Error('duplicate key (name)=(Demo owner) "Demo owner" Zm9vYmFyYmF6cXV4cXV1eA'), {
        code: '23505',
      });
    });
    app.setErrorHandler(async (error, request, reply) => {
      request.log.error({ err: error, method: request.method, path: request.routeOptions.url }, 'failed');
      return reply.code(500).send({});
    });
    await app.inject({
      method: 'POST',
      url: '/api/people/4711?secret=in-the-address',
      headers: { cookie: 'warmstead-session=the-token', 'user-agent': 'Some Agent' },
      payload: { name: 'Demo owner' },
      remoteAddress: '10.7.7.7',
    });
    const log = lines.join('');
    expect(lines).toHaveLength(2);
    for (const secret of [
      'Maren',
      'hunter',
      'tok-en',
      'the-token',
      'Some Agent',
      '10.7.7.7',
      '4711',
      'in-the-address',
      'Zm9vYmFy',
    ]) {
      expect(log).not.toContain(secret);
    }
    for (const kept of ['23505', '/api/people/:id', 'POST', 'safety.test']) expect(log).toContain(kept);
  });
});

describe('readiness', () => {
  test('a stranger learns yes or no, and nothing else', async () => {
    for (const url of ['/api/health', '/api/ready']) {
      const answer = await server.asked({ url });
      expect([answer.statusCode, answer.json()], url).toEqual([200, { ok: true }]);
    }
    expect((await server.asked({ url: '/api/program' })).statusCode).toBe(401);
  });

  test('says no when tables are missing, the queue is full or the database is gone', async () => {
    const free = { waiting: () => 0, isFull: () => false } as never;
    const full = { waiting: () => 16, isFull: () => true } as never;
    const oks = async (records: AppForTests['records'], planner: never) =>
      (await readiness(records, planner)).filter((part) => !part.ok).map((part) => part.part);
    expect(await oks(server.records, free)).toEqual([]);
    expect(await oks(server.records, full)).toEqual(['queue']);
    const room = await statfs(tmpdir());
    const here = { ...server.records, folder: tmpdir() };
    expect((await readiness(here, free)).find((part) => part.part === 'disk')).toMatchObject({
      ok: room.bavail * room.bsize >= 200_000_000,
    });
    const other = await appForTests();
    await other.records.db.deleteFrom('migration' as never).execute();
    expect(await oks(other.records, free)).toEqual(['tables']);
    const { records } = other;
    await other.close();
    expect(await oks(records, free)).toEqual(['database', 'tables']);
  });
});
