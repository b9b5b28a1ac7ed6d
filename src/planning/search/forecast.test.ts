import { expect, it } from 'vitest';
import { seededUniform } from '../../shared/seeded.ts';
import { mayHold } from './forecast.ts';

const of = 64;
const spread = [1];

/** Margins of one need in all versions: `by` of the other kit's, and a scatter of its own. */
function pair(mean: number, scatter: number, seed: number) {
  const chance = seededUniform(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
  const like = Array.from({ length: of }, () => [normal()]);
  return { like, kit: like.map(([m]) => [mean + 0.9 * m! + scatter * normal()]) };
}

it('says nothing of a few versions, and nothing without a kit tried to the end', () => {
  const { like, kit } = pair(0, 0.1, 1);
  expect(mayHold(kit.slice(0, 7), [like], spread)).toBeNull();
  expect(mayHold(kit.slice(0, 20), [], spread)).toBeNull();
});

it('tells most of the versions that are lost, and only in one of two hundred kits one that holds after all', () => {
  let told = 0;
  let lost = 0;
  let wrong = 0;
  const runs = 1000;
  for (let run = 0; run < runs; run++) {
    const { like, kit } = pair(-1.5 + (run % 4), 0.15, run);
    const n = 8 + (run % 24);
    const open = mayHold(kit.slice(0, n), [like], spread)![0]!;
    const misses = kit.slice(n).map(([m]) => m! < 0);
    lost += misses.filter(Boolean).length;
    told += misses.filter((missed, k) => missed && open[k] === 0).length;
    if (misses.some((missed, k) => !missed && open[k] === 0)) wrong++;
  }
  expect(told / lost).toBeGreaterThan(0.5);
  expect(wrong / runs).toBeLessThan(1 / 200);
});

it('of several kits the one that runs most alike is asked, and one that never moves says nothing', () => {
  const { like, kit } = pair(-1.5, 0.1, 3);
  const far = pair(0, 1, 4).like;
  const still = like.map(() => [2]);
  const tried = kit.slice(0, 16);
  const open = (likes: number[][][]) => mayHold(tried, likes, spread)![0]!.reduce((sum, v) => sum + v, 0);
  expect(open([far, like, still])).toBe(open([like]));
  expect(open([like])).toBeLessThan(open([far]) / 2);
  expect(open([still])).toBe(of - 16);
});
