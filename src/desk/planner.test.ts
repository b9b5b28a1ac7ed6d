// Plans in real workers: several at once on one worker, too many, and a program that stops in the middle.
import { expect, test } from 'vitest';
import { dataFolder } from '../records/data-files.ts';
import { startPlanner } from './planner.ts';

const enclosure = dataFolder('examples')['tub-mat-600'];

test('one worker answers several plans, each with its own result', async () => {
  const planner = startPlanner(1);
  const seeds = [1, 2, 3];
  const results = await Promise.all(seeds.map((seed) => planner.plan({ enclosure, members: 2, seed })));
  expect(results.map((result) => (result.ok ? result.value.seed : result.faults))).toEqual(seeds);
  await planner.close();
});

test('beyond the queue "busy" is said at once, and closing leaves nobody waiting', async () => {
  const planner = startPlanner(1);
  const asked = Array.from({ length: 20 }, (_, seed) => planner.plan({ enclosure, members: 2, seed }));
  expect(await asked[19]).toMatchObject({ ok: false, faults: [{ code: 'PLAN_BUSY' }] });
  const first = await asked[0];
  expect(first?.ok).toBe(true);
  await planner.close();
  const settled = await Promise.allSettled(asked);
  expect(settled).toHaveLength(20);
});

test('what nobody waits for any more leaves its worker and the queue, and the others go on', async () => {
  const planner = startPlanner(1);
  const [working, queued] = [new AbortController(), new AbortController()];
  const long = planner.plan({ enclosure, members: 1024 }, working.signal);
  const next = planner.plan({ enclosure, members: 2, seed: 7 });
  const last = planner.plan({ enclosure, members: 1024 }, queued.signal);
  expect(planner.waiting()).toBe(2);
  queued.abort();
  expect(planner.waiting()).toBe(1);
  working.abort();
  const stopped = { ok: false, faults: [{ code: 'WORK_STOPPED' }] };
  expect([await long, await last]).toMatchObject([stopped, stopped]);
  expect(planner.waiting(), 'the one between has the worker').toBe(0);
  expect(await next).toMatchObject({ ok: true, value: { seed: 7 } });
  const gone = new AbortController();
  gone.abort();
  expect(await planner.plan({ enclosure, members: 2 }, gone.signal)).toMatchObject(stopped);
  await planner.close();
});
