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
