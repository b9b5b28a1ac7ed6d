// Whoever stops what they wait for is told what is true: nothing of it is kept, now or later, or it was kept before. Over a
// real connection that is really cut, at every moment of the work.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { forgetWorkEnds } from '../records/work-ends.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { answeredDocument, takeInFit } from './testing/fit-animal.ts';
import { fittingHome, logFileOf } from './testing/fitting-home.ts';

let server: AppForTests;
let url: string;
let headers: Record<string, string>;
const home = fittingHome();

beforeAll(async () => {
  server = await appForTests();
  url = await server.app.listen({ port: 0, host: '127.0.0.1' });
  headers = { cookie: server.cookie, 'content-type': 'application/json', origin: url };
});
afterAll(async () => await server.close());

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));
const post = async (path: string, body: object | string = {}, signal?: AbortSignal, type = 'application/json') =>
  await fetch(`${url}${path}`, {
    method: 'POST',
    headers: { ...headers, 'content-type': type },
    body: typeof body === 'string' ? body : JSON.stringify(body),
    ...(signal === undefined ? {} : { signal }),
  });
const read = async (path: string) => (await fetch(`${url}${path}`, { headers })).json();
const newHome = async (): Promise<string> =>
  ((await (await post('/api/enquiries', { document: answeredDocument('Attic', home) })).json()) as { id: string }).id;
interface Ended {
  readonly ended: 'kept' | 'stopped';
  readonly keptId: string | null;
}
const stopped = async (workId: string): Promise<Ended> =>
  (await (await post(`/api/work/${workId}/stop`)).json()) as Ended;
const stop = async (workId: string): Promise<'kept' | 'stopped'> => (await stopped(workId)).ended;

interface Work {
  readonly begin: (enquiryId: string, workId: string, signal?: AbortSignal) => Promise<Response>;
  readonly kept: (enquiryId: string) => Promise<number>;
}
const log = logFileOf(home, Date.UTC(2026, 0, 11, 12) / 1000);
const works: Readonly<Record<string, Work>> = {
  plan: {
    begin: async (enquiryId, workId, signal) =>
      await post(`/api/plan?work=${workId}`, { enclosure: home, members: 8, enquiryId }, signal),
    kept: async (enquiryId) => (await read(`/api/enquiries/${enquiryId}/plans`)).results.length,
  },
  file: {
    begin: async (enquiryId, workId, signal) =>
      await post(
        `/api/enquiries/${enquiryId}/reading-files?name=log.csv&work=${workId}`,
        log,
        signal,
        'application/octet-stream',
      ),
    kept: async (enquiryId) => (await read(`/api/enquiries/${enquiryId}/reading-files`)).files.length,
  },
  proof: {
    begin: async (enquiryId, workId, signal) =>
      await post(`/api/enquiries/${enquiryId}/proof?work=${workId}`, {}, signal),
    kept: async (enquiryId) => ((await read(`/api/enquiries/${enquiryId}/proof`)).proof === null ? 0 : 1),
  },
};
/** What takes no longer may be done before any stop arrives. */
const quickMs = 150;
const prepared = async (name: string): Promise<string> => {
  const enquiryId = await newHome();
  if (name === 'proof') expect((await works.file!.begin(enquiryId, randomUUID())).status).toBe(201);
  return enquiryId;
};

test.each(Object.keys(works))(
  '%s: stopped before it is begun, it is refused and nothing is kept',
  {
    timeout: 120_000,
  },
  async (name) => {
    const { begin, kept } = works[name]!;
    const [enquiryId, workId] = [await prepared(name), randomUUID()];
    expect(await stop(workId)).toBe('stopped');
    const refused = await begin(enquiryId, workId);
    expect([refused.status, (await refused.json()).faults[0].code]).toEqual([409, 'WORK_STOPPED']);
    expect(await kept(enquiryId)).toBe(0);
    expect((await begin(enquiryId, randomUUID())).status, 'asked for again it is done').toBeLessThan(300);
    expect(await kept(enquiryId)).toBe(1);
  },
);

test.each(Object.keys(works))(
  '%s: a stop that comes too late says that it is kept',
  {
    timeout: 120_000,
  },
  async (name) => {
    const { begin, kept } = works[name]!;
    const [enquiryId, workId] = [await prepared(name), randomUUID()];
    expect((await begin(enquiryId, workId)).status).toBeLessThan(300);
    expect([await stop(workId), await stop(workId)]).toEqual(['kept', 'kept']);
    expect(await kept(enquiryId)).toBe(1);
  },
);

test.each(Object.keys(works))(
  '%s: cut off at any moment, what is told is what stands, then and later',
  {
    timeout: 300_000,
  },
  async (name) => {
    const { begin, kept } = works[name]!;
    const first = await prepared(name);
    const beganMs = performance.now();
    await begin(first, randomUUID());
    const wholeMs = performance.now() - beganMs;
    const rounds: { readonly told: string; readonly enquiryId: string }[] = [];
    for (let n = 0; n < 8; n++) {
      const [enquiryId, workId] = [await prepared(name), randomUUID()];
      const cut = new AbortController();
      const working = begin(enquiryId, workId, cut.signal).catch(() => null);
      // From the first moment to past the end of what it took before.
      await wait((wholeMs * n) / 6);
      cut.abort();
      const told = await stop(workId);
      expect(await kept(enquiryId), `${name}, cut in round ${n}, told "${told}"`).toBe(told === 'kept' ? 1 : 0);
      await working;
      rounds.push({ told, enquiryId });
    }
    await wait(2 * wholeMs);
    for (const { told, enquiryId } of rounds) expect(await kept(enquiryId)).toBe(told === 'kept' ? 1 : 0);
    if (wholeMs > quickMs) expect(rounds[0]?.told, 'the first was cut before it could be done').toBe('stopped');
  },
);

test('a plan that was kept before the stop came is named, set aside and let count again', async () => {
  const [enquiryId, workId] = [await newHome(), randomUUID()];
  const at = `/api/enquiries/${enquiryId}/plans`;
  const plans = async () => (await read(at)).results as { id: string; aside: { by: string } | null }[];
  await works.plan!.begin(enquiryId, workId);
  const { ended, keptId } = await stopped(workId);
  expect([ended, (await plans()).map((one) => one.id)]).toEqual(['kept', [keptId]]);
  const animalId = await takeInFit(
    async (path, body) => (await post(path, body)).json() as Promise<Record<string, unknown>>,
    (days) => new Date(Date.UTC(2026, 0, 15) - days * 86_400_000).toISOString().slice(0, 10),
  );
  const placement = (await (await post('/api/placements', { enquiryId, animalId })).json()) as { id: string };
  const planOfPlacement = async () => (await read(`/api/placements/${placement.id}`)).plan?.id ?? null;
  expect(await planOfPlacement()).toBe(keptId);
  expect((await post(`${at}/${keptId}/aside`)).status).toBe(200);
  expect((await plans())[0]?.aside?.by).toBe('tester');
  expect(await planOfPlacement(), 'nothing is decided by it any more').toBeNull();
  expect((await post(`${at}/${keptId}/back`)).status).toBe(200);
  expect([await planOfPlacement(), (await plans())[0]?.aside]).toEqual([keptId, null]);
  await works.plan!.begin(enquiryId, randomUUID());
  expect((await plans()).length).toBe(2);
  const newest = (await read(`${at}?most=1`)).results as { id: string }[];
  expect(
    newest.map((one) => one.id),
    'as the sheet of the plan asks',
  ).toEqual([(await plans())[0]?.id]);
  const elsewhere = await post(`/api/enquiries/${await newHome()}/plans/${keptId}/aside`);
  expect([elsewhere.status, (await elsewhere.json()).faults[0].code]).toEqual([404, 'PLAN_UNKNOWN']);
}, 120_000);

test('a proof stopped by its name alone, with its asker still waiting, leaves off computing', async () => {
  const first = await prepared('proof');
  const beganMs = performance.now();
  await works.proof!.begin(first, randomUUID());
  const wholeMs = performance.now() - beganMs;
  const [enquiryId, workId] = [await prepared('proof'), randomUUID()];
  const from = performance.now();
  const working = works.proof!.begin(enquiryId, workId);
  await wait(wholeMs / 10);
  expect(await stop(workId)).toBe('stopped');
  const answer = await working;
  expect([answer.status, (await answer.json()).faults[0].code]).toEqual([409, 'WORK_STOPPED']);
  console.log(
    `a proof takes ${Math.round(wholeMs)} ms; stopped it ended after ${Math.round(performance.now() - from)} ms`,
  );
  expect(performance.now() - from, 'ended before it could have been done').toBeLessThan(wholeMs);
  expect(await works.proof!.kept(enquiryId)).toBe(0);
  expect((await works.proof!.begin(enquiryId, randomUUID())).status, 'the next one gets a new worker').toBeLessThan(
    300,
  );
}, 120_000);

test('how work ended is forgotten after a day', async () => {
  const workId = randomUUID();
  await stop(workId);
  await forgetWorkEnds(server.records.db, new Date('2020-01-01'));
  const rows = async () =>
    (await server.records.db.selectFrom('work_end').select('id').where('id', '=', workId).execute()).length;
  expect(await rows()).toBe(1);
  await forgetWorkEnds(server.records.db, new Date('2030-01-01'));
  expect(await rows()).toBe(0);
});
