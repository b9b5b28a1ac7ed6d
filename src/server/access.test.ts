// Who gets through which door: every door against every role, and everything of one branch against another branch.
import { randomUUID } from 'node:crypto';
import type { InjectOptions } from 'light-my-request';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { insertPlacement } from '../records/placements.ts';
import { type AppForTests, appForTests, cookieOf, testPassword } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';
import { needsAccount, roleMay } from './who.ts';

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE' | 'HEAD';
const roles = ['inspector', 'assistant', 'manager', 'owner'] as const;
let server: AppForTests;
let owner: string;
let hereId: string;
let thereId: string;
let asked = 0;
const names: Record<string, string> = { owner: 'tester' };

const send = async (method: string, url: string, cookie?: string, payload?: object) => {
  asked += 1;
  const remoteAddress = `10.1.${Math.floor(asked / 250)}.${asked % 250}`;
  const options: InjectOptions = { method: method as Method, url, remoteAddress, ...(payload ? { payload } : {}) };
  return await server.asked(options, cookie);
};
const inAs = async (name: string) =>
  cookieOf(await send('POST', '/api/session', undefined, { name, password: testPassword }));
const addPerson = async (name: string, role: string, branchId: string | null) => {
  const { code } = (await send('POST', '/api/people', owner, { name, role, branchId })).json();
  return cookieOf(await send('POST', '/api/session/code', undefined, { code, password: testPassword }));
};

beforeAll(async () => {
  server = await appForTests();
  owner = server.cookie;
  hereId = (await send('GET', '/api/people', owner)).json().branches[0].id;
  thereId = (await send('POST', '/api/branches', owner, { name: 'Second', place: 'wales' })).json().id;
  for (const role of ['inspector', 'assistant', 'manager']) {
    names[role] = `The ${role}`;
    await addPerson(`The ${role}`, role, hereId);
  }
});
afterAll(async () => await server.close());

const nobody = '00000000-0000-4000-8000-00000000dead';
const filled = (url: string): string =>
  url
    .replace(/:secret/g, 'x'.repeat(22))
    .replace(/:speciesId/g, 'corn')
    .replace(/:\w+/g, nobody);
/** Doors that end or lock the session that asks. */
const ends = ['/api/session/lock', '/api/session/end', '/api/session/end-everywhere'];
const codeOf = (body: string): string => (body.startsWith('{"faults"') ? JSON.parse(body).faults[0].code : '');

describe('every door', () => {
  test('says who may use it, and there are many', () => {
    expect(server.app.whoTable.length).toBeGreaterThan(70);
    const open = server.app.whoTable.filter((door) => !needsAccount(door.who));
    // Whoever opens another door to strangers has to say so here.
    expect([...new Set(open.map((door) => door.url))].filter((url) => !url.startsWith('/api/session')).sort()).toEqual(
      openDoors,
    );
  });

  test('that needs an account is shut to strangers', async () => {
    for (const { method, url, who } of server.app.whoTable) {
      const answer = await send(method, filled(url));
      const at = `${method} ${url}`;
      if (!needsAccount(who)) expect(codeOf(answer.body), at).not.toBe('ACCOUNT_ROLE');
      else
        expect([answer.statusCode, method === 'HEAD' ? 'ACCOUNT_NEEDED' : codeOf(answer.body)], at).toEqual([
          401,
          'ACCOUNT_NEEDED',
        ]);
    }
  });

  test.each(roles)('lets the %s through or not, as it says', async (role) => {
    const name = names[role] ?? '';
    let cookie = await inAs(name);
    let shut = 0;
    for (const { method, url, who } of server.app.whoTable) {
      if (!needsAccount(who)) continue;
      if (ends.includes(url)) cookie = await inAs(name);
      const answer = await send(method, filled(url), cookie);
      if (ends.includes(url)) cookie = await inAs(name);
      const at = `${role}: ${method} ${url}`;
      expect(answer.statusCode, `${at} ${answer.body.slice(0, 200)}`).toBeLessThan(500);
      if (roleMay(role, who)) {
        expect([401, 403], at).not.toContain(answer.statusCode);
      } else {
        expect(answer.statusCode, at).toBe(403);
        if (method !== 'HEAD') expect(codeOf(answer.body), at).toBe('ACCOUNT_ROLE');
        shut += 1;
      }
    }
    expect(shut > 0).toBe(role !== 'owner');
  });

  test('an inspector changes nothing: every door open to one reads, or is about the own account', () => {
    const writes = server.app.whoTable.filter(
      ({ method, who }) => !['GET', 'HEAD'].includes(method) && needsAccount(who) && roleMay('inspector', who),
    );
    for (const { url } of writes) expect(url).toMatch(/^\/api\/(?:account|session)/);
  });
});

const openDoors = [
  '/api/calendar/:secret',
  '/api/health',
  '/api/keeper/:secret',
  '/api/keeper/:secret/aftercare',
  '/api/keeper/:secret/calendar.ics',
  '/api/keeper/:secret/readings',
  '/api/languages',
  '/api/languages/:code',
  '/api/live/:secret',
  '/api/ready',
  '/api/set-up',
];

describe('another branch', () => {
  let stranger: string;
  const ids: Record<string, string> = {};

  beforeAll(async () => {
    owner = await inAs('tester');
    stranger = await addPerson('From there', 'manager', thereId);
    const ask = async (url: string, body: object) => (await send('POST', url, owner, body)).json();
    ids.enquiries = (await ask('/api/enquiries', { document: exampleDocument() })).id;
    const values = { speciesId: 'corn', callName: 'Sorrel', sex: 'female', bred: 'bred' };
    ids.animals = (await ask('/api/animals', { values, enclosure: 'A1', quarantine: null })).id;
    ids.instruments = (await ask('/api/instruments', { name: 'probe 1' })).id;
    const overlay = { path: 'species.corn.all.rhPct', value: { low: 45, high: 70 }, why: 'dry rooms' };
    ids.overlays = (await ask('/api/overlays', overlay)).id;
    ids.keeperLinks = (await ask(`/api/enquiries/${ids.enquiries}/keeper-links`, { days: 14 })).id;
    const what = { branchId: hereId, enquiryId: ids.enquiries ?? '', animalId: ids.animals ?? '' };
    ids.placements = await insertPlacement(server.records.db, what, { at: new Date(0), by: 'tester' });
    for (const [kind, id] of Object.entries(ids)) expect(id, kind).toMatch(/^[0-9a-f-]{36}$/);
  });

  test('reads nothing by its id', async () => {
    const doors = server.app.whoTable.filter(({ method, url }) => method === 'GET' && kindOf(url) !== null);
    expect(doors.length).toBeGreaterThan(8);
    for (const { url } of doors) {
      const path = withIds(url);
      const own = await send('GET', path, owner);
      const other = await send('GET', path, stranger);
      expect([own.statusCode === 401, other.statusCode], `${url}: ${other.body.slice(0, 120)}`).toEqual([false, 404]);
    }
  });

  test('changes nothing by its id, whatever it sends', async () => {
    const doors = server.app.whoTable.filter(
      ({ method, url }) => method !== 'GET' && method !== 'HEAD' && kindOf(url) !== null,
    );
    expect(doors.length).toBeGreaterThan(12);
    const got: string[] = [];
    for (const { method, url } of doors) {
      const body = bodies[url.replace(/^\/api\//, '')] ?? {};
      const options: InjectOptions = {
        method: method as Method,
        url: withIds(url),
        payload: body,
        headers: { 'if-match': '"1"' },
      };
      const answer = await server.asked(options, stranger);
      expect(answer.statusCode, `${method} ${url}: ${answer.body.slice(0, 200)}`).toBeGreaterThanOrEqual(400);
      expect(answer.statusCode, `${method} ${url}`).toBeLessThan(500);
      if (answer.statusCode === 404) got.push(url);
    }
    // The bodies below are such that the door is really tried; the others stop at their form.
    expect(got.length).toBeGreaterThanOrEqual(Object.keys(bodies).length);
    const { version } = (await send('GET', `/api/enquiries/${ids.enquiries}`, owner)).json();
    expect(version).toBe(1);
  });

  test('is in no list', async () => {
    const lists = [
      '/api/enquiries',
      '/api/animals',
      '/api/animals?all=yes',
      '/api/instruments',
      '/api/inspection',
      '/api/round',
      '/api/placements',
    ];
    for (const url of lists) {
      const mine = (await send('GET', url, owner)).body;
      const theirs = (await send('GET', url, stranger)).body;
      const found = Object.values(ids).filter((id) => mine.includes(id));
      expect(found.length, `${url} shows the own branch`).toBeGreaterThan(0);
      expect(
        Object.values(ids).filter((id) => theirs.includes(id)),
        url,
      ).toEqual([]);
    }
    expect((await send('GET', '/api/inspection.csv', stranger)).body).not.toContain('Sorrel');
  });

  test('an animal that moved there is seen by both: the register of the first keeps it', async () => {
    const movement = { kind: 'movement', body: { toPlace: 'Z1', toBranchId: thereId, why: 'more room' } };
    const moved = await send('POST', `/api/animals/${ids.animals}/entries`, owner, movement);
    expect(moved.statusCode, moved.body).toBe(201);
    for (const cookie of [owner, stranger]) {
      expect((await send('GET', `/api/animals/${ids.animals}`, cookie)).statusCode).toBe(200);
    }
    expect((await send('GET', '/api/round', owner)).body).not.toContain(ids.animals);
  });

  test('a person of every branch chooses where to work, one of a single branch cannot', async () => {
    const elsewhere = await inAs('tester');
    await send('PUT', '/api/account/branch', elsewhere, { branchId: thereId });
    expect((await send('GET', '/api/enquiries', elsewhere)).json().enquiries).toEqual([]);
    expect((await send('PUT', '/api/account/branch', stranger, { branchId: hereId })).statusCode).toBe(422);
  });

  test('a keeper’s link opens its own home only, from whichever branch', async () => {
    const made = await send('POST', `/api/enquiries/${ids.enquiries}/keeper-links`, owner, { days: 14 });
    const page = await send('GET', `/api/keeper/${made.json().secret}`);
    expect(page.statusCode).toBe(200);
    expect(Object.keys(page.json()).sort()).toEqual(['expiresAt', 'home', 'places', 'readings', 'state']);
    expect(page.body).not.toContain('Test home');
    expect(page.headers['cache-control']).toBe('no-store');
    expect((await send('GET', `/api/keeper/${'a'.repeat(22)}`)).statusCode).toBe(404);
  });

  const kinds = ['enquiries', 'animals', 'instruments', 'overlays', 'placements'];
  const kindOf = (url: string): string | null => kinds.find((kind) => url.startsWith(`/api/${kind}/:id`)) ?? null;
  const withIds = (url: string): string =>
    url
      .replace(':id', ids[kindOf(url) ?? ''] ?? '')
      .replace(':linkId', ids.keeperLinks ?? '')
      .replace(/:\w+/g, nobody)
      .replace(/move-up$/, 'move-up?boxLengthCm=90&lengthShare=1');

  const bodies: Readonly<Record<string, object>> = {
    'enquiries/:id': { document: { answers: { label: 'taken over' } } },
    'enquiries/:id/hand-readings': {
      readings: [{ at: '2026-01-15T09:00', valuesC: { room: 20 }, clientKey: randomUUID() }],
    },
    'enquiries/:id/proof': {},
    'enquiries/:id/keeper-links': { days: 14 },
    'enquiries/:id/keeper-links/:linkId/withdraw': {},
    'enquiries/:id/reading-files/:fileId/aside': { why: 'x' },
    'animals/:id/register': { values: { sex: 'male' }, reason: 'x' },
    'animals/:id/entries': { kind: 'weighing', body: { massG: 1 } },
    'instruments/:id/checks': { quantity: 'tempC', how: 'beside', readings: [20, 20], truth: 20 },
    'overlays/:id/withdrawal': { why: 'x' },
  };
});
