import { expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { driveSearch, type SurfaceSolver } from './drive-search.ts';
import { prepareSearch } from './prepare-search.ts';
import type { SearchInput } from './search-input.ts';
import { surfaceStore } from './surface-store.ts';

const store = surfaceStore();

/** A search with the store, and how many versions had to be solved for it. */
async function searched(input: SearchInput, cancelAfter = Number.POSITIVE_INFINITY) {
  const prepared = prepareSearch(input);
  let solved = 0;
  const solver: SurfaceSolver = {
    solve: async (task) => {
      solved += task.to - task.from;
      return prepared.solve(task);
    },
  };
  const cancelled = () => solved >= cancelAfter;
  const answer = await driveSearch(input, [solver], { prepared, store, cancelled });
  return { answer, solved };
}

it('another price of power asks no box again and answers as a search of its own would', async () => {
  const input = searchInputOf('wood-1200', { members: 8 });
  const first = await searched(input);
  expect(first.solved).toBeGreaterThan(20);
  const dear = { ...input, tariffPerKWh: 0.5, years: 3 };
  const again = await searched(dear);
  const own = prepareSearch(dear);
  const alone = await driveSearch(dear, [{ solve: async (task) => own.solve(task) }], { prepared: own });
  expect(again.solved).toBeLessThan(first.solved / 2);
  expect(again.answer?.choices.map((c) => `${c.id} ${c.cost.total.toFixed(0)} ${c.verdict}`)).toEqual(
    alone?.choices.map((c) => `${c.id} ${c.cost.total.toFixed(0)} ${c.verdict}`),
  );
  const same = await searched(dear);
  expect(same.solved).toBe(0);
}, 60_000);

it('another room is another box', async () => {
  const input = searchInputOf('wood-1200', { members: 8 });
  const { room } = input.enclosure;
  const colder = { ...room, winter: { ...room.winter, lowC: room.winter.lowC - 3 } };
  const found = await searched({ ...input, enclosure: { ...input.enclosure, room: colder } });
  expect(found.solved).toBeGreaterThan(20);
});

it('a search that is cancelled gives no answer, and what it solved is not lost', async () => {
  const input = searchInputOf('wood-1200', { members: 4, seed: 3 });
  const cut = await searched(input, 30);
  expect(cut.answer).toBeNull();
  expect(cut.solved).toBeGreaterThanOrEqual(30);
  const whole = await searched(input);
  const alone = prepareSearch(input);
  let needed = 0;
  const solver: SurfaceSolver = {
    solve: async (task) => {
      needed += task.to - task.from;
      return alone.solve(task);
    },
  };
  await driveSearch(input, [solver], { prepared: alone });
  expect(whole.answer?.settled).toBe(true);
  // all that was solved before the stop is asked no more, but for the piece that was under way
  expect(whole.solved).toBeLessThanOrEqual(needed - cut.solved + 4);
}, 60_000);
