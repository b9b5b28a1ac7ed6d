// The branch's shelf through the doors: changed, brought in as a table, put back; nothing lost, everything wrong at once.
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Shelf, ShelfItem } from '../planning/shelf/shelf.ts';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

let running: AppForTests;
beforeAll(async () => {
  running = await appForTests();
});
afterAll(async () => await running.close());

interface Shown {
  readonly version: number;
  readonly shelf: Shelf;
  readonly changes: readonly { readonly version: number; readonly step: string; readonly by: string }[];
}
const shown = async (): Promise<Shown> => (await running.app.inject({ url: '/api/shelf' })).json();
const send = async (method: 'PUT' | 'POST', url: string, payload: object) =>
  await running.app.inject({ method, url, payload });
const codes = (answer: { json: () => { faults: readonly { code: string; field: string }[] } }) =>
  answer.json().faults.map(({ code, field }) => `${code} ${field}`);

test('the starter shelf stands until the branch has its own, and says that its prices are invented', async () => {
  const { version, shelf, changes } = await shown();
  expect({ version, invented: shelf.invented, changes }).toEqual({ version: 0, invented: true, changes: [] });
});

test('an article changed, sold out and put back: every shelf stays readable', async () => {
  const first = await shown();
  const items = first.shelf.items.map(
    (item): ShelfItem => (item.id === 'emitter-60' ? { ...item, price: 21.5, inStock: false } : item),
  );
  const kept = await send('PUT', '/api/shelf', { shelf: { ...first.shelf, items }, base: 0, why: 'dearer' });
  expect(kept.json()).toEqual({ version: 1, items: items.length });
  const now = await shown();
  expect(now.shelf.items.find((item) => item.id === 'emitter-60')).toMatchObject({ price: 21.5, inStock: false });
  // a second person still has the shelf as it was
  const late = await send('PUT', '/api/shelf', { shelf: first.shelf, base: 0, why: '' });
  expect([late.statusCode, codes(late)]).toEqual([409, ['SHELF_CHANGED base']]);

  const back = await send('POST', '/api/shelf/back', { version: 0, base: 1 });
  expect(back.json().version).toBe(2);
  const again = await shown();
  expect(again.shelf).toEqual(first.shelf);
  expect(again.changes).toMatchObject([
    { version: 2, step: 'put-back', backTo: 0, by: 'tester' },
    { version: 1, step: 'changed', why: 'dearer' },
  ]);
  expect(codes(await send('POST', '/api/shelf/back', { version: 9, base: 2 }))).toEqual(['SHELF_VERSION version']);
});

test('the table goes out and comes in again without loss', async () => {
  const before = await shown();
  const csv = (await running.app.inject({ url: '/api/shelf.csv' })).body;
  const own = csv
    .replace('Starter shelf', 'Our shelf, front room')
    .replace(',invented', ',charged')
    .replace('GBP', 'EUR');
  const quoted = own.replace('Our shelf, front room', '"Our shelf, front room"');
  const kept = await send('POST', '/api/shelf/table', { text: quoted, base: before.version, why: 'stock-taking' });
  expect(kept.statusCode).toBe(200);
  const after = await shown();
  expect(after.shelf).toEqual({ ...before.shelf, name: 'Our shelf, front room', currency: 'EUR', invented: false });
  expect((await running.app.inject({ url: '/api/shelf.csv' })).body).toBe(quoted);
});

test('a bad table changes nothing and tells every fault with its line', async () => {
  const before = await shown();
  const text = [
    'warmstead-shelf,1,Bad,GBB,charged',
    'id,kind,name,price,inStock,materialId,thicknessM,packL',
    'a,insulation,A,-4,yes,xps,0.02,',
    'a,substrate,=1+1,3,perhaps,moonrock,,10',
  ].join('\r\n');
  const answer = await send('POST', '/api/shelf/table', { text, base: before.version, why: '' });
  expect(answer.statusCode).toBe(422);
  expect(codes(answer).sort()).toEqual(
    [
      'SHELF_FIELD currency',
      'SHELF_FIELD line 3, price',
      'SHELF_FIELD line 4, inStock',
      'SHELF_FIELD line 4, materialId',
      'SHELF_FIELD line 4, name',
      'SHELF_TWICE line 4, id',
    ].sort(),
  );
  expect((await shown()).version).toBe(before.version);
});
