import { randomUUID } from 'node:crypto';
import ICAL from 'ical.js';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Clock } from '../desk/desk-context.ts';
import { startPlanner } from '../desk/planner.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { firstColdNight } from '../proving/aftercare/season.ts';
import { allFacts } from '../records/animal-facts.ts';
import type { Records } from '../records/open.ts';
import { addPlacementEvent } from '../records/placements.ts';
import { type Branch, firstBranch } from '../records/shops.ts';
import { freshRecords } from '../records/testing/fresh-database.ts';

import { appAsOwner } from './testing/app-for-tests.ts';
import { exampleDocument } from './testing/example-document.ts';
import { postTo, type ReleasedForTests, releasedPlacement } from './testing/released-placement.ts';

import type { App } from './types.ts';

let records: Records;
let branch: Branch;
let app: App;
let planner: ReturnType<typeof startPlanner>;
let nowMs = 0;
const clock: Clock = { now: () => new Date(nowMs) };
const at = (text: string) => {
  nowMs = new Date(text).getTime();
};

beforeAll(async () => {
  records = await freshRecords();
  at('2026-09-01T10:00:00');
  branch = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: clock.now() });
  planner = startPlanner(1);
  app = (await appAsOwner({ records, branch, planner, db: records.db, clock })).app;
});
afterAll(async () => {
  await app.close();
  await planner.close();
  await records.close();
});

let one: ReleasedForTests;
beforeEach(async () => {
  at('2026-09-01T10:00:00');
  one = await releasedPlacement(postTo(app), records.db, branch.branchId, { at: clock.now(), arrivedOn: '2026-07-01' });
});

// biome-ignore lint/suspicious/noExplicitAny: answers of the doors, read as the test needs them
const ask = async (method: 'GET' | 'POST', url: string, payload?: object): Promise<{ status: number; body: any }> => {
  const response = await app.inject({ method, url, ...(payload ? { payload } : {}) });
  const type = String(response.headers['content-type']);
  return { status: response.statusCode, body: type.includes('json') ? response.json() : response.body };
};
const sheet = async () => (await ask('GET', `/api/placements/${one.placementId}/aftercare`)).body;
const step = (what: object, token = randomUUID()) =>
  ask('POST', `/api/placements/${one.placementId}/aftercare`, { token, step: what });
const tasksIn = (body: { tasks: { key: string; state: string }[] }) =>
  Object.fromEntries(body.tasks.map((task) => [task.key, task.state]));
const codes = (body: { faults: { code: string }[] }) => body.faults.map((fault) => fault.code);
const todays = async () =>
  (await ask('GET', '/api/today')).body.tasks.filter(
    (row: { placementId: string }) => row.placementId === one.placementId,
  );

describe('the tasks of a placement', () => {
  test('are made from the release, the animal and the home, and are not due yet on its day', async () => {
    const tasks = tasksIn(await sheet());
    expect(tasks).toMatchObject({ 'call-first': 'later', 'call-week': 'later', 'prove-home': 'due' });
    expect(tasks).toHaveProperty(['weigh:2026-07-01']);
    at('2026-09-03T10:00:00');
    expect(tasksIn(await sheet())['call-first']).toBe('due');
    at('2026-09-04T10:00:00');
    expect(tasksIn(await sheet())['call-first']).toBe('overdue');
    expect((await todays())[0]).toMatchObject({ key: 'call-first', state: 'overdue', callName: 'Jürgen' });
  });

  test('are none before the release, and end when the animal comes back', async () => {
    const open = await releasedPlacement(postTo(app), records.db, branch.branchId, {
      at: clock.now(),
      arrivedOn: '2026-07-01',
      release: false,
    });
    expect((await ask('GET', `/api/placements/${open.placementId}/aftercare`)).body).toMatchObject({
      released: null,
      tasks: [],
    });
    expect((await ask('GET', `/api/placements/${randomUUID()}/aftercare`)).status).toBe(404);
    expect((await sheet()).tasks.length).toBeGreaterThan(4);
    await records.db
      .transaction()
      .execute((tx) =>
        addPlacementEvent(
          tx,
          one.placementId,
          { kind: 'taken-back', body: {}, token: randomUUID() },
          { at: new Date('2026-09-02T12:00:00'), by: 'x' },
        ),
      );
    expect(await sheet()).toMatchObject({ tasks: [], released: { returnedOn: '2026-09-02' } });
  });

  test('a room that the proof read makes another task', async () => {
    await records.db
      .insertInto('proof_result')
      .values({
        id: randomUUID(),
        enquiry_id: one.enquiryId,
        enquiry_version: 1,
        answer: JSON.stringify({ verdict: 'proven', roomReadC: { low: 18.5, high: 23 } }),
        inputs: '{}',
        model_version: 'm',
        data_version: 'd',
        at: clock.now(),
        by: 'x',
      })
      .execute();
    const tasks = tasksIn(await sheet());
    expect(tasks).not.toHaveProperty(['prove-home']);
    expect(Object.keys(tasks).some((key) => key.startsWith('prove-cold:') || key.startsWith('prove-heat:'))).toBe(true);
  });
});

test('a home where winter comes in July is proven again before that', async () => {
  const proof = (enquiryId: string) =>
    records.db
      .insertInto('proof_result')
      .values({
        id: randomUUID(),
        enquiry_id: enquiryId,
        enquiry_version: 1,
        answer: JSON.stringify({ verdict: 'proven', roomReadC: { low: 17, high: 40 } }),
        inputs: '{}',
        model_version: 'm',
        data_version: 'd',
        at: clock.now(),
        by: 'x',
      })
      .execute();
  const coldOf = async (place: string | null) => {
    const home = await releasedPlacement(postTo(app), records.db, branch.branchId, {
      at: clock.now(),
      arrivedOn: '2026-07-01',
      ...(place === null ? {} : { place }),
    });
    await proof(home.enquiryId);
    const { tasks } = (await ask('GET', `/api/placements/${home.placementId}/aftercare`)).body;
    return tasks.find((task: { kind: string }) => task.kind === 'prove-cold') as { to: string } | undefined;
  };
  const [here, there] = [await coldOf(null), await coldOf('victoria')];
  const { room } = (exampleDocument() as { enclosure: Enclosure }).enclosure;
  const cold = (southern: boolean) => firstColdNight(room, 17, '2026-09-01', allFacts().care.aftercare, southern)?.to;
  expect([here?.to, there?.to]).toEqual([cold(false), cold(true)]);
  expect(here?.to).not.toBe(there?.to);
});

describe('an answer', () => {
  const good = { well: 'well', ate: 'taken', massG: 424, droppings: 'seen' };

  test('sent twice is written once; it settles its task and can be taken back', async () => {
    at('2026-09-03T10:00:00');
    const token = randomUUID();
    const first = await step({ what: 'answer', key: 'call-first', answers: good }, token);
    expect(first).toMatchObject({ status: 201, body: { again: false, triage: null } });
    const second = await step({ what: 'answer', key: 'call-first', answers: good }, token);
    expect(second.body).toMatchObject({ id: first.body.id, again: true });
    const after = await sheet();
    expect(tasksIn(after)['call-first']).toBe('done');
    expect(after.told).toHaveLength(1);
    // The mass that was told moves the next weighing.
    expect(tasksIn(after)).not.toHaveProperty(['weigh:2026-07-01']);
    expect(tasksIn(after)).toHaveProperty(['weigh:2026-09-03']);
    expect((await ask('GET', '/api/today')).body.done).toContainEqual(
      expect.objectContaining({ key: 'call-first', placementId: one.placementId }),
    );
    expect((await step({ what: 'undone', of: first.body.id })).status).toBe(201);
    expect(tasksIn(await sheet())).toMatchObject({ 'call-first': 'due', 'weigh:2026-07-01': 'later' });
    expect(codes((await step({ what: 'undone', of: first.body.id })).body)).toEqual(['AFTERCARE_EVENT']);
  });

  test('that cannot be is refused with every fault at once', async () => {
    const refused = await step({
      what: 'answer',
      key: 'call-first',
      on: '2026-08-01',
      answers: { well: 'fine', massG: -1 },
    });
    expect(refused.status).toBe(422);
    expect(codes(refused.body)).toEqual(['AFTERCARE_DAY', 'AFTERCARE_ANSWER', 'AFTERCARE_ANSWER']);
    expect(codes((await step({ what: 'answer', key: 'call-never', answers: good })).body)).toEqual(['AFTERCARE_TASK']);
    expect(codes((await step({ what: 'set-aside', key: 'call-week', why: ' ' })).body)).toEqual(['AFTERCARE_WHY']);
  });

  test('that asks for a second look comes up on the list, with the enclosure before the vet', async () => {
    at('2026-09-08T10:00:00');
    const told = await step({
      what: 'answer',
      key: 'call-week',
      answers: { well: 'well', ate: 'refused', coolAirC: 40 },
    });
    expect(told.body.triage).toMatchObject({ next: 'enclosure', wrong: ['coolAirC'] });
    const concernOf = async () =>
      (await ask('GET', '/api/today')).body.concerns.filter(
        (row: { placementId: string }) => row.placementId === one.placementId,
      );
    expect(await concernOf()).toMatchObject([{ urgency: 'look', callName: 'Jürgen', eventId: told.body.id }]);
    expect((await step({ what: 'looked-at', of: told.body.id })).status).toBe(201);
    expect(await concernOf()).toEqual([]);
    const flagged = await step({ what: 'answer', key: 'call-first', answers: { well: 'not-well', flags: ['burn'] } });
    expect(flagged.body.triage.next).toBe('vet-now');
    expect(await concernOf()).toMatchObject([{ urgency: 'now' }]);
  });

  test('of a death ends the tasks and counts', async () => {
    at('2026-09-08T10:00:00');
    await step({ what: 'answer', key: 'call-week', on: '2026-09-05', answers: { well: 'died' } });
    const after = await sheet();
    expect(after.released.diedOn).toBe('2026-09-05');
    expect(Object.values(tasksIn(after))).toEqual(['done']);
  });

  test('nobody reached leaves the task, set aside ends it with the reason', async () => {
    at('2026-09-03T10:00:00');
    await step({ what: 'not-reached', key: 'call-first' });
    expect(tasksIn(await sheet())['call-first']).toBe('due');
    await step({ what: 'set-aside', key: 'call-first', why: 'spoke at the counter' });
    const after = await sheet();
    expect(tasksIn(after)['call-first']).toBe('set-aside');
    expect(after.told[0].body).toMatchObject({ what: 'set-aside', why: 'spoke at the counter' });
  });
});

describe('the keeper', () => {
  const linked = async () =>
    (await ask('POST', `/api/enquiries/${one.enquiryId}/keeper-links`, { days: 30 })).body.secret as string;

  test('sees what is due and answers once, without an account', async () => {
    const secret = await linked();
    at('2026-09-03T10:00:00');
    const page = (await ask('GET', `/api/keeper/${secret}/aftercare`)).body;
    expect(page.tasks[0]).toMatchObject({ key: 'call-first', state: 'due' });
    expect(page.species.id).toBe('corn');
    expect(JSON.stringify(page)).not.toContain('Jürgen');
    const answer = { token: randomUUID(), key: 'call-first', on: '2026-09-03', answers: { well: 'well' } };
    const [a, b] = await Promise.all([
      ask('POST', `/api/keeper/${secret}/aftercare`, answer),
      ask('POST', `/api/keeper/${secret}/aftercare`, answer),
    ]);
    expect([a.status, b.status]).toEqual([201, 201]);
    expect(a.body.id).toBe(b.body.id);
    const after = await sheet();
    expect(after.told).toHaveLength(1);
    expect(after.told[0]).toMatchObject({ by: 'keeper', body: { via: 'keeper' } });
  });

  test('a link to another home, or none, opens nothing', async () => {
    expect((await ask('GET', '/api/keeper/abcdefghijklmnopqrstuv/aftercare')).status).toBe(404);
    expect((await ask('GET', '/api/keeper/abcdefghijklmnopqrstuv/calendar.ics')).status).toBe(404);
  });
});

describe('the calendar', () => {
  const parsed = (text: string) => {
    const root = new ICAL.Component(ICAL.parse(text));
    const events = root.getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
    return { root, events };
  };

  test('is read by another parser as it was meant', async () => {
    const response = await app.inject({
      method: 'GET',
      url: `/api/placements/${one.placementId}/calendar.ics?language=de`,
    });
    expect(response.headers['content-type']).toBe('text/calendar; charset=utf-8');
    const text = response.body;
    expect(text.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75);
    const { root, events } = parsed(text);
    expect(root.getFirstPropertyValue('version')).toBe('2.0');
    expect(root.getFirstPropertyValue('method')).toBe('PUBLISH');
    const tasks = (await sheet()).tasks as { from: string; kind: string }[];
    expect(events).toHaveLength(tasks.length);
    expect(events.map((event) => event.startDate.toString()).sort()).toEqual(tasks.map((task) => task.from).sort());
    for (const event of events) {
      expect(event.startDate.isDate).toBe(true);
      expect(event.endDate.subtractDate(event.startDate).toSeconds()).toBe(86_400);
      expect(event.component.getFirstPropertyValue('dtstamp')).toBeTruthy();
      expect(event.summary).toContain('Jürgen, Ümläut, flat above');
    }
    expect(events.some((event) => event.description.includes('Hat sie gefressen?'))).toBe(true);
    expect(new Set(events.map((event) => event.uid)).size).toBe(events.length);
  });

  test('keeps the name of an entry, and counts up when it changes', async () => {
    const feed = async () => {
      const text = (await ask('GET', `/api/placements/${one.placementId}/calendar.ics`)).body as string;
      return new Map(parsed(text).events.map((event) => [event.uid, event]));
    };
    const before = await feed();
    expect([...(await feed()).keys()].sort()).toEqual([...before.keys()].sort());
    at('2026-09-03T10:00:00');
    const told = await step({ what: 'answer', key: 'call-first', answers: { well: 'well' } });
    const after = await feed();
    const changed = [...after.values()].filter((event) => event.sequence > (before.get(event.uid)?.sequence ?? -1));
    expect(changed.map((event) => event.component.getFirstPropertyValue('status'))).toEqual(['CANCELLED']);
    expect(changed[0]?.summary).toMatch(/^Done: /);
    await step({ what: 'undone', of: told.body.id });
    const again = (await feed()).get(changed[0]!.uid)!;
    expect(again.component.getFirstPropertyValue('status')).toBe('CONFIRMED');
    expect(again.sequence).toBeGreaterThan(changed[0]!.sequence);
    await step({ what: 'answer', key: 'call-first', answers: { well: 'well' } });
    at('2026-10-10T10:00:00');
    expect((await feed()).has(changed[0]!.uid)).toBe(false);
  });

  test('at an address of its own holds one placement or all, and nothing once it was taken back', async () => {
    const own = (await ask('POST', `/api/placements/${one.placementId}/calendar-feeds`, { language: 'en' })).body;
    const all = (await ask('POST', '/api/calendar-feeds', { language: 'en' })).body;
    const mine = parsed((await ask('GET', `/api/calendar/${own.secret}.ics`)).body).events;
    const every = parsed((await ask('GET', `/api/calendar/${all.secret}`)).body).events;
    expect(mine.length).toBeGreaterThan(4);
    expect(every.length).toBeGreaterThan(mine.length);
    const uids = new Set(every.map((event) => event.uid));
    // The whole branch's looks a good year ahead.
    const within = mine.filter((event) => event.startDate.toString() < '2027-10-01');
    expect(within.length).toBeGreaterThan(3);
    expect(within.map((event) => event.uid).filter((uid) => !uids.has(uid))).toEqual([]);
    // The keeper's has no names in it.
    expect(mine.some((event) => event.summary.includes('Jürgen'))).toBe(false);
    const stored = await records.db.selectFrom('calendar_feed').select('secret_sha256').execute();
    expect(stored.some((row) => row.secret_sha256.includes(own.secret))).toBe(false);
    await ask('POST', `/api/placements/${one.placementId}/calendar-feeds/${own.id}/withdraw`);
    expect((await ask('GET', `/api/calendar/${own.secret}.ics`)).status).toBe(404);
    expect((await ask('GET', `/api/calendar/${all.secret}.ics`)).status).toBe(200);
    expect((await ask('POST', `/api/calendar-feeds/${own.id}/withdraw`)).status).toBe(404);
  });
});

test('the list of today tells what is half done and where it goes on', async () => {
  const open = await releasedPlacement(postTo(app), records.db, branch.branchId, {
    at: clock.now(),
    arrivedOn: '2026-07-01',
    name: 'Open one',
    release: false,
  });
  const { body } = await ask('GET', '/api/today');
  expect(body.placements).toContainEqual(
    expect.objectContaining({ placementId: open.placementId, callName: 'Open one', next: 'plan' }),
  );
  expect(body.waiting).toBe(0);
  expect(body.fresh).toBe(false);
});

test('own figures: who was heard of again, and too few to say', async () => {
  at('2026-10-05T10:00:00');
  const { body } = await ask('GET', '/api/own-figures');
  const early = body.horizons[0];
  expect(early.days).toBe(30);
  const all = early.figures[0];
  // One died and one came back in the tests before; nobody else was heard of at 30 days.
  expect(all).toMatchObject({
    speciesId: null,
    died: { count: 1, followed: 2, share: null, fewest: 30 },
    returned: { count: 1, followed: 2 },
  });
  expect(all.died.released).toBeGreaterThan(8);
  expect(body.horizons[1].figures[0].died.released).toBe(0);
});
