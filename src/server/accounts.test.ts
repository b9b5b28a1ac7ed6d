// Coming and going through real sessions: set-up, sign-in, limits of time, lock, switch by PIN, codes, people, undo.
import type { InjectOptions } from 'light-my-request';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type AppForTests, appForTests, cookieOf, testPassword } from './testing/app-for-tests.ts';

const startMs = Date.parse('2026-01-15T09:00:00Z');
let nowMs = startMs;
let server: AppForTests;
beforeAll(async () => {
  server = await appForTests({ sessionClock: { now: () => new Date(nowMs) } });
});
afterAll(async () => await server.close());

const later = (minutes: number): void => {
  nowMs += minutes * 60_000;
};
let asked = 0;
/** Each request from an address of its own, so that only the test of the limit meets it. */
const remoteAddress = (): string => {
  asked += 1;
  return `10.0.${Math.floor(asked / 250)}.${asked % 250}`;
};
const send = async (method: 'GET' | 'POST' | 'PUT', url: string, payload?: object, cookie?: string) => {
  const options: InjectOptions = {
    method,
    url,
    remoteAddress: remoteAddress(),
    ...(payload === undefined ? {} : { payload }),
  };
  return await server.asked(options, cookie);
};
const codes = (answer: { json: () => { faults?: readonly { code: string }[] } }) =>
  (answer.json().faults ?? []).map((fault) => fault.code);
const signIn = async (name: string, password: string) => await send('POST', '/api/session', { name, password });
const inAs = async (name: string, password = testPassword) => cookieOf(await signIn(name, password));
let owner: string;
beforeEach(async () => {
  later(24 * 60);
  owner = await inAs('tester');
});

let people = 0;
async function newPerson(role: string, branchId: string | null = null) {
  people += 1;
  const name = `Person ${people} abc`;
  const added = await send('POST', '/api/people', { name, role, branchId }, owner);
  expect(added.statusCode, added.body).toBe(201);
  const { id, code } = added.json();
  const cookie = cookieOf(await send('POST', '/api/session/code', { code, password: testPassword }));
  return { id: id as string, name, code: code as string, cookie };
}
const branchHere = async () => (await send('GET', '/api/people', undefined, owner)).json().branches[0].id as string;
const isIn = async (cookie: string) => (await send('GET', '/api/account', undefined, cookie)).statusCode === 200;

describe('set-up', () => {
  const said = { name: 'Second', password: testPassword, shopName: 'Other', branchName: 'Other', place: 'wales' };

  test('is over once there is an owner, whatever the code', async () => {
    const answer = await send('POST', '/api/set-up', { code: 'AAAAA-AAAAA-AAAAA-AAAAA', ...said });
    expect([answer.statusCode, codes(answer)]).toEqual([409, ['ACCOUNT_SET_UP']]);
  });

  test('before there is one, a stranger without the code gets nowhere and everything wrong is said at once', async () => {
    const fresh = await appForTests();
    try {
      await fresh.records.db.deleteFrom('session').execute();
      await fresh.records.db.updateTable('person').set({ role: 'assistant' }).execute();
      const ask = async (payload: object) => await fresh.asked({ method: 'POST', url: '/api/set-up', payload });
      expect((await fresh.asked({ url: '/api/session' })).json()).toMatchObject({ state: 'set-up' });
      expect(codes(await ask({ code: 'AAAAA-AAAAA-AAAAA-AAAAA', ...said }))).toEqual(['ACCOUNT_CODE']);
      const wrong = await ask({
        code: '',
        name: '?',
        password: 'short',
        shopName: '',
        branchName: 'x'.repeat(61),
        place: 'moon',
      });
      expect(wrong.json().faults.map((fault: { field: string }) => fault.field)).toEqual([
        'name',
        'password',
        'shopName',
        'branchName',
        'place',
      ]);
      expect((await fresh.asked({ url: '/api/enquiries' })).statusCode).toBe(401);
    } finally {
      await fresh.close();
    }
  });
});

describe('signing in', () => {
  test('the cookie is for our pages only and no script reads it', async () => {
    const answer = await signIn('TESTER ', testPassword);
    const cookie = String(answer.headers['set-cookie']);
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/', 'Max-Age=43200']) expect(cookie).toContain(part);
    expect(cookie).not.toContain('Secure');
    expect(answer.headers['cache-control']).toBe('no-store');
  });

  test('a wrong password and a name that does not exist are answered alike, in words and in time', async () => {
    const spent: Record<string, number[]> = { known: [], unknown: [] };
    const bodies = new Set<string>();
    for (let n = 0; n < 4; n++) {
      const tries = [
        ['known', 'tester'],
        ['unknown', `nobody ${n}`],
      ] as const;
      for (const [kind, name] of tries) {
        const from = performance.now();
        const answer = await signIn(name, 'not the password');
        spent[kind]?.push(performance.now() - from);
        expect(answer.statusCode).toBe(401);
        bodies.add(answer.body);
      }
    }
    expect(bodies.size).toBe(1);
    const least = (kind: string) => Math.min(...(spent[kind] ?? []));
    // Without the check against nobody an unknown name would be answered in a tenth of the time.
    expect(least('unknown')).toBeGreaterThan(0.4 * least('known'));
  });

  test('after five wrong tries the next waits, longer each time, also for a name that does not exist', async () => {
    for (const name of ['tester', 'nobody at all']) {
      for (let n = 0; n < 5; n++) expect((await signIn(name, `wrong number ${n}`)).statusCode).toBe(401);
      const waits = await signIn(name, testPassword);
      expect([waits.statusCode, codes(waits)]).toEqual([429, ['ACCOUNT_WAIT']]);
    }
    later(0.3);
    expect((await signIn('tester', 'wrong again')).statusCode).toBe(401);
    later(0.3);
    expect(codes(await signIn('tester', testPassword))).toEqual(['ACCOUNT_WAIT']);
    later(0.3);
    expect((await signIn('tester', testPassword)).statusCode).toBe(200);
  });

  test('one address gets twenty tries a minute at the doors where secrets are guessed', async () => {
    const options: InjectOptions = { method: 'POST', url: '/api/session', remoteAddress: '10.9.9.9' };
    const answers: number[] = [];
    for (let n = 0; n < 25; n++) {
      const payload = { name: `somebody ${n}`, password: 'x' };
      answers.push((await server.asked({ ...options, payload })).statusCode);
    }
    expect(answers.slice(0, 20).every((status) => status === 401)).toBe(true);
    expect(answers.slice(20)).toEqual([429, 429, 429, 429, 429]);
  });

  test('a password is refused when it is short, tried first by everybody, or a name known here', async () => {
    const cases: readonly (readonly [string, string])[] = [
      ['elevenchars', 'short'],
      ['x'.repeat(129), 'long'],
      ['Password1234', 'common'],
      ['123456789012', 'common'],
      ['qwertyuiop12', 'common'],
      ['aaaaaaaaaaaaaa', 'common'],
      ['tester 20262026', 'personal'],
      ['Test shop 2026!', 'personal'],
    ];
    for (const [next, why] of cases) {
      const answer = await send('PUT', '/api/account/password', { now: testPassword, next }, owner);
      expect([answer.statusCode, answer.json().faults?.[0]?.got], next).toEqual([422, why]);
    }
    const good = await send('PUT', '/api/account/password', { now: testPassword, next: 'damp moss, 7 o’clock' }, owner);
    expect(good.statusCode).toBe(200);
    await send('PUT', '/api/account/password', { now: 'damp moss, 7 o’clock', next: testPassword }, owner);
  });

  test('a password may be long, of any letters and signs, and every one of them counts', async () => {
    const long = '蛇 🐍 Äste'.repeat(16);
    expect([...long]).toHaveLength(128);
    const change = async (now: string, next: string) =>
      (await send('PUT', '/api/account/password', { now, next }, owner)).statusCode;
    expect(await change(testPassword, long)).toBe(200);
    expect(await change(long.slice(0, -1), testPassword)).not.toBe(200);
    expect(await change(long, testPassword)).toBe(200);
  });

  test('secrets are kept only as hashes', async () => {
    const { code } = await newPerson('assistant');
    await send('PUT', '/api/account/pin', { password: testPassword, pin: '4711' }, owner);
    const { db } = server.records;
    const token = owner.split('=')[1] ?? '';
    const tables = ['person', 'person_change', 'person_code', 'session', 'sign_in_failure'] as const;
    const kept = JSON.stringify(
      await Promise.all(tables.map(async (table) => await db.selectFrom(table).selectAll().execute())),
    );
    for (const secret of [testPassword, code, code.replaceAll('-', ''), token]) expect(kept).not.toContain(secret);
    expect(kept).toContain('$argon2id$v=19$m=19456,t=2,p=1$');
    expect(kept).not.toContain('"4711"');
  });
});

describe('sessions', () => {
  test('half an hour without a touch locks, twelve hours after the password end it', async () => {
    later(29);
    expect(await isIn(owner)).toBe(true);
    later(31);
    expect(codes(await send('GET', '/api/account', undefined, owner))).toEqual(['ACCOUNT_LOCKED']);
    expect((await send('GET', '/api/session', undefined, owner)).json().state).toBe('locked');
    const busy = await inAs('tester');
    for (let minutes = 0; minutes < 12 * 60; minutes += 20) {
      expect(await isIn(busy)).toBe(true);
      later(20);
    }
    later(1);
    expect(codes(await send('GET', '/api/account', undefined, busy))).toEqual(['ACCOUNT_NEEDED']);
  });

  test('are listed, ended one by one and all at once', async () => {
    const other = await inAs('tester');
    const { sessions } = (await send('GET', '/api/account', undefined, owner)).json();
    expect(sessions.length).toBeGreaterThanOrEqual(2);
    const elsewhere = sessions.find((one: { here: boolean }) => !one.here);
    expect((await send('POST', `/api/account/sessions/${elsewhere.id}/end`, undefined, owner)).statusCode).toBe(200);
    expect(await isIn(other)).toBe(false);
    const [third, fourth] = [await inAs('tester'), await inAs('tester')];
    await send('POST', '/api/session/end-everywhere', undefined, third);
    for (const cookie of [owner, third, fourth]) expect(await isIn(cookie)).toBe(false);
  });

  test('one cannot end another person’s', async () => {
    const person = await newPerson('assistant');
    const { sessions } = (await send('GET', '/api/account', undefined, owner)).json();
    const answer = await send('POST', `/api/account/sessions/${sessions[0].id}/end`, undefined, person.cookie);
    expect([answer.statusCode, codes(answer)]).toEqual([404, ['ACCOUNT_UNKNOWN']]);
    expect(await isIn(owner)).toBe(true);
  });

  test('a new password ends every other session; signing out ends this one', async () => {
    const person = await newPerson('assistant');
    const other = await inAs(person.name);
    const body = { now: testPassword, next: 'nine dry winters ago' };
    expect((await send('PUT', '/api/account/password', body, person.cookie)).statusCode).toBe(200);
    expect([await isIn(person.cookie), await isIn(other)]).toEqual([true, false]);
    await send('POST', '/api/session/end', undefined, person.cookie);
    expect(await isIn(person.cookie)).toBe(false);
  });

  test('a token that was made up, or a signed-in one with a letter changed, is nobody', async () => {
    for (const cookie of ['warmstead-session=', 'warmstead-session=made-up', `${owner}x`]) {
      expect(codes(await send('GET', '/api/account', undefined, cookie))).toEqual(['ACCOUNT_NEEDED']);
    }
  });
});

describe('the shared tablet', () => {
  const withPin = async (pin: string) => {
    const person = await newPerson('assistant');
    expect((await send('PUT', '/api/account/pin', { password: testPassword, pin }, person.cookie)).statusCode).toBe(
      200,
    );
    return person;
  };
  const go = async (personId: string, pin: string, cookie: string) =>
    await send('POST', '/api/session/switch', { personId, pin }, cookie);

  test('locked by one, opened by the next with a PIN; the old token is dead and the day stays limited', async () => {
    const next = await withPin('4093');
    await send('POST', '/api/session/lock', undefined, owner);
    expect(codes(await send('GET', '/api/enquiries', undefined, owner))).toEqual(['ACCOUNT_LOCKED']);
    const shown = (await send('GET', '/api/session', undefined, owner)).json();
    expect(shown.people.map((one: { id: string }) => one.id)).toContain(next.id);
    later(60);
    const opened = cookieOf(await go(next.id, '4093', owner));
    expect((await send('GET', '/api/session', undefined, opened)).json()).toMatchObject({
      state: 'in',
      me: { name: next.name, how: 'pin' },
    });
    expect(codes(await send('GET', '/api/account', undefined, owner))).toEqual(['ACCOUNT_NEEDED']);
    for (let n = 0; n < 36; n++) {
      later(20);
      await isIn(opened);
    }
    expect(await isIn(opened)).toBe(false);
  });

  test('wrong PINs wait longer and longer, and ten close it until the password is given', async () => {
    const next = await withPin('5180');
    await send('POST', '/api/session/lock', undefined, owner);
    for (let n = 0; n < 5; n++) expect((await go(next.id, '0000', owner)).statusCode).toBe(401);
    expect(codes(await go(next.id, '5180', owner))).toEqual(['ACCOUNT_WAIT']);
    for (let n = 5; n < 10; n++) {
      later(60);
      expect((await go(next.id, '0000', owner)).statusCode, `try ${n}`).toBe(401);
    }
    later(65);
    expect(codes(await go(next.id, '5180', owner))).toEqual(['ACCOUNT_PIN_SPENT']);
    await inAs(next.name);
    expect((await go(next.id, '5180', owner)).statusCode).toBe(200);
  });

  test('a PIN opens nothing where nobody gave a password, and changes no accounts', async () => {
    const next = await withPin('6027');
    expect((await send('POST', '/api/session/switch', { personId: next.id, pin: '6027' })).statusCode).toBe(401);
    await send('PUT', '/api/account/pin', { password: testPassword, pin: '7391' }, owner);
    const { id } = (await send('GET', '/api/session', undefined, owner)).json().me;
    const opened = cookieOf(await go(id, '7391', owner));
    const add = { name: 'By Pin', role: 'assistant', branchId: null };
    expect(codes(await send('POST', '/api/people', add, opened))).toEqual(['ACCOUNT_PROVE']);
    const proven = cookieOf(await send('POST', '/api/session/prove', { password: testPassword }, opened));
    expect((await send('POST', '/api/people', add, proven)).statusCode).toBe(201);
  });

  test.each(['123', '1234', '4321', '7777', '12a4', '123456789'])('the PIN %s is refused', async (pin) => {
    expect(codes(await send('PUT', '/api/account/pin', { password: testPassword, pin }, owner))).toEqual([
      'ACCOUNT_PIN',
    ]);
  });
});

describe('people', () => {
  test('a code works once, and an old password holds until it is used', async () => {
    const person = await newPerson('assistant');
    expect(codes(await send('POST', '/api/session/code', { code: person.code, password: testPassword }))).toEqual([
      'ACCOUNT_CODE',
    ]);
    const { code } = (await send('POST', `/api/people/${person.id}/code`, undefined, owner)).json();
    expect((await signIn(person.name, testPassword)).statusCode).toBe(200);
    const typed = code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
    const next = 'six old keys on hooks';
    expect(codes(await send('POST', '/api/session/code', { code: typed, password: 'short' }))).toEqual([
      'ACCOUNT_PASSWORD',
    ]);
    expect((await send('POST', '/api/session/code', { code: typed, password: next })).statusCode).toBe(200);
    expect((await signIn(person.name, testPassword)).statusCode).toBe(401);
    expect((await signIn(person.name, next)).statusCode).toBe(200);
  });

  test('a code runs out after a day, and an undone one does not work', async () => {
    const person = await newPerson('assistant');
    const give = async () => (await send('POST', `/api/people/${person.id}/code`, undefined, owner)).json().code;
    const first = await give();
    const { changes } = (await send('GET', '/api/people', undefined, owner)).json();
    await send('POST', `/api/people/changes/${changes[0].id}/undo`, undefined, owner);
    expect(codes(await send('POST', '/api/session/code', { code: first, password: testPassword }))).toEqual([
      'ACCOUNT_CODE',
    ]);
    const second = await give();
    later(24 * 60 + 1);
    expect(codes(await send('POST', '/api/session/code', { code: second, password: testPassword }))).toEqual([
      'ACCOUNT_CODE',
    ]);
  });

  test('disabled at once, and undo lets in again; a change that was followed is not undone', async () => {
    const person = await newPerson('assistant');
    const put = async (part: object) => await send('PUT', `/api/people/${person.id}`, part, owner);
    expect((await put({ disabled: true })).statusCode).toBe(200);
    expect(await isIn(person.cookie)).toBe(false);
    expect((await signIn(person.name, testPassword)).statusCode).toBe(401);
    const [disabling] = (await send('GET', '/api/people', undefined, owner)).json().changes;
    expect((await send('POST', `/api/people/changes/${disabling.id}/undo`, undefined, owner)).statusCode).toBe(200);
    const again = await inAs(person.name);
    await put({ role: 'inspector' });
    expect((await send('GET', '/api/enquiries', undefined, again)).statusCode).toBe(403);
    expect(codes(await send('POST', `/api/people/changes/${disabling.id}/undo`, undefined, owner))).toEqual([
      'ACCOUNT_CHANGED',
    ]);
  });

  test('the last owner can neither be disabled nor made less', async () => {
    const { id } = (await send('GET', '/api/session', undefined, owner)).json().me;
    for (const part of [{ disabled: true }, { role: 'manager' }]) {
      const answer = await send('PUT', `/api/people/${id}`, part, owner);
      expect([answer.statusCode, codes(answer)]).toEqual([409, ['ACCOUNT_LAST_OWNER']]);
    }
  });

  test('a manager manages assistants and inspectors of the own branch, and nobody else', async () => {
    const here = await branchHere();
    const manager = await newPerson('manager', here);
    const assistant = await newPerson('assistant', here);
    const everywhere = await newPerson('assistant');
    const as = async (method: 'POST' | 'PUT', url: string, body?: object) =>
      await send(method, url, body, manager.cookie);
    expect((await as('PUT', `/api/people/${assistant.id}`, { role: 'inspector' })).statusCode).toBe(200);
    expect(codes(await as('PUT', `/api/people/${assistant.id}`, { role: 'owner' }))).toEqual(['ACCOUNT_ROLE']);
    expect(codes(await as('PUT', `/api/people/${assistant.id}`, { branchId: null }))).toEqual(['ACCOUNT_ROLE']);
    expect(codes(await as('POST', `/api/people/${everywhere.id}/code`))).toEqual(['ACCOUNT_UNKNOWN']);
    expect(codes(await as('POST', '/api/people', { name: 'New Owner', role: 'owner', branchId: here }))).toEqual([
      'ACCOUNT_ROLE',
    ]);
    const { people: seen } = (await send('GET', '/api/people', undefined, manager.cookie)).json();
    expect(seen.map((one: { id: string }) => one.id)).not.toContain(everywhere.id);
  });

  test('a name is one of a kind, whatever its capitals, and can be read', async () => {
    for (const name of ['TESTER', 'x', ' ', 'a\u202Eb', '<b>bold</b>']) {
      const answer = await send('POST', '/api/people', { name, role: 'assistant', branchId: null }, owner);
      expect([answer.statusCode, codes(answer)], name).toEqual([422, ['ACCOUNT_NAME']]);
    }
  });
});
