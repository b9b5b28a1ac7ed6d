import { expect, it } from 'vitest';
import { kitNeeds } from './judge-kit.ts';
import { boundsOf, certainlyFails, count, emptyTally } from './tally.ts';

const of = 64;
const first = (margin: number) => kitNeeds.map((_, i) => (i === 0 ? margin : 1));
/** Spread evenly, as the versions are: `spread` times what lies between -1.7 and 1.7. */
const even = (i: number, n: number) => (((i * 29) % n) / (n - 1) - 0.5) * 3.4;

it('a need that never held and lies far below is given up before all versions are tried', () => {
  const tally = emptyTally();
  const gaveUp: number[] = [];
  for (let n = 1; n <= of; n++) {
    count(tally, first(-2.6 + even(n, of)));
    if (certainlyFails(tally, of)) gaveUp.push(n);
  }
  expect(gaveUp[0]).toBeGreaterThan(8);
  expect(gaveUp[0]).toBeLessThan(24);
  expect(gaveUp.at(-1)).toBe(of);
  expect(boundsOf(tally, of).worst.verdict).toBe('fails');
});

it('a need that holds now and then is not given up', () => {
  const tally = emptyTally();
  for (let n = 1; n <= of; n++) {
    count(tally, first(n % 7 === 0 ? 0.2 : -1));
    expect(certainlyFails(tally, of), `${n} versions`).toBe(false);
  }
});

it('what is given up early fails in the end too: 2000 needs near the limit, of which at most one in two hundred is misjudged', () => {
  let seed = 11;
  const chance = () => {
    seed = (seed * 1664525 + 1013904223) >>> 0;
    return (seed + 0.5) / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(chance())) * Math.cos(2 * Math.PI * chance());
  let early = 0;
  let wrong = 0;
  for (let run = 0; run < 2000; run++) {
    const mean = -0.8 - 1.4 * chance();
    const tally = emptyTally();
    let gaveUpAt = 0;
    for (let n = 1; n <= of; n++) {
      count(tally, first(mean + normal()));
      if (gaveUpAt === 0 && n < of && certainlyFails(tally, of)) gaveUpAt = n;
    }
    if (gaveUpAt === 0) continue;
    early++;
    if (boundsOf(tally, of).best.verdict !== 'fails') wrong++;
  }
  expect(early).toBeGreaterThan(300);
  expect(wrong / 2000).toBeLessThan(1 / 200);
});
