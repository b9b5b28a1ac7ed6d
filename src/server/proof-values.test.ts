// A value of the shop's own and the proof: a changed need turns its verdict, is named in it, and makes a proof of before an
// old one; withdrawn, everything is as it was.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';
import { fittingHome, logFileOf } from './testing/fitting-home.ts';

let server: AppForTests;
let id: string;

async function ask(method: 'GET' | 'POST', url: string, payload?: object) {
  const response = await server.app.inject({ method, url, ...(payload ? { payload } : {}) });
  expect(response.statusCode, `${url} ${response.body}`).toBeLessThan(300);
  return response.json();
}
const set = async (path: string, value: object): Promise<string> =>
  (await ask('POST', '/api/overlays', { path, value, why: 'our vet asks' })).id;
const withdraw = (value: string) => ask('POST', `/api/overlays/${value}/withdrawal`, { why: 'seen' });
const prove = async () => (await ask('POST', `/api/enquiries/${id}/proof`, {})) as Proof;
const current = async (): Promise<boolean> => (await ask('GET', `/api/enquiries/${id}/proof`)).current;

interface Proof {
  readonly answer: { readonly verdict: string; readonly needs: readonly { readonly id: string; state: string }[] };
  readonly inputs: { readonly shopValues: readonly { readonly path: string }[] };
}
const stateOf = ({ answer }: Proof, need: string) => answer.needs.find((one) => one.id === need)?.state;

const firstS = Date.UTC(2026, 0, 10, 12) / 1000;

beforeAll(async () => {
  server = await appForTests();
  const box = fittingHome();
  id = (await ask('POST', '/api/enquiries', { document: { answers: { label: 'Test home' }, enclosure: box } })).id;
  const file = await server.app.inject({
    method: 'POST',
    url: `/api/enquiries/${id}/reading-files?name=log.csv`,
    headers: { 'content-type': 'application/octet-stream' },
    payload: logFileOf(box, firstS),
  });
  expect(file.statusCode).toBe(201);
}, 60_000);
afterAll(async () => await server.close());

test('a need of the shop turns a proof, is named in it, and its withdrawal turns it back', {
  timeout: 120_000,
}, async () => {
  const shipped = await prove();
  expect([shipped.answer.verdict, stateOf(shipped, 'basking-surface'), await current()]).toEqual([
    'proven',
    'held',
    true,
  ]);
  expect(shipped.inputs.shopValues).toEqual([]);

  const path = 'species.corn.all.baskingSurfaceC';
  const value = await set(path, { low: 36, high: 38 });
  expect(await current(), 'made by another need').toBe(false);
  const own = await prove();
  expect([own.answer.verdict, stateOf(own, 'basking-surface'), await current()]).toEqual(['failed', 'failed', true]);
  expect(own.inputs.shopValues).toMatchObject([{ path, value: { low: 36, high: 38 }, by: 'tester' }]);

  await withdraw(value);
  expect(await current(), 'the need of before holds again').toBe(false);
  const back = await prove();
  expect([back.answer.verdict, stateOf(back, 'basking-surface'), await current()]).toEqual(['proven', 'held', true]);
});

test('a value that no proof of this home looks at leaves it as it is', { timeout: 60_000 }, async () => {
  const proof = await prove();
  await set('species.royal.all.baskingSurfaceC', { low: 33, high: 36 });
  expect([proof.answer.verdict, await current()]).toEqual(['proven', true]);
});
