import { join } from 'node:path';
import { expect, it } from 'vitest';
import { measure } from '../../husbandry/space.ts';
import { loadFacts } from '../../records/facts.ts';
import { compareSpace, floorOf } from './compare-space.ts';

const { facts } = loadFacts(join(import.meta.dirname, '../../../data'));
const corn = facts.species.corn;
if (!corn) throw new Error('the corn snake is gone from data/');
const box = { lengthM: 1.2, depthM: 0.4, heightM: 0.4 };
const lines = compareSpace(Object.values(facts.standards), corn, 1.2, box);
const line = (id: string) => lines.find(({ standard }) => standard.id === id);

it('sorts the floors and draws each with the area or way round that is asked', () => {
  expect(lines.map(({ areaM2 }) => areaM2)).toEqual(lines.map(({ areaM2 }) => areaM2).sort((a, b) => a - b));
  expect(line('awc-aim')?.areaM2).toBeCloseTo(1.2 * 0.8, 9);
  for (const { asked, floor } of lines) {
    const drawn = (share: number) => ({ lengthM: floor.lengthM * share, depthM: floor.depthM * share, heightM: 9 });
    expect(measure(asked, drawn(1)).short).toEqual([]);
    const smaller = measure(asked, drawn(0.97));
    expect(smaller.short.length + smaller.tolerated.length).toBeGreaterThan(0);
  }
  for (const one of lines) if (one.asked.floorM2 !== null) expect(one.areaM2).toBeCloseTo(one.asked.floorM2);
});

it('agrees with the charity’s own example: 120 × 40 × 40 cm serves 120 cm, a centimetre less does not', () => {
  expect(line('home-third')?.short).toEqual([]);
  const less = compareSpace(Object.values(facts.standards), corn, 1.2, { ...box, lengthM: 1.19 });
  expect(less.find(({ standard }) => standard.id === 'home-third')?.short.map(({ side }) => side)).toEqual(['length']);
});

it('leaves out standards of other animals and general rules that a special one replaces', () => {
  expect(line('de-royal')).toBeUndefined();
  expect(line('nsw-carpet')).toBeUndefined();
  const replaced = lines.flatMap(({ standard }) => standard.replaces ?? []);
  expect(lines.filter(({ standard }) => replaced.includes(standard.id))).toEqual([]);
});

it('marks a shape as ours where only an area is asked', () => {
  const silent = { lengthM: null, widthM: null, heightM: null, perimeterM: null, sumM: null, underFrac: 0 };
  expect(floorOf({ ...silent, floorM2: 0.5 })).toEqual({ lengthM: 1, depthM: 0.5, free: true });
});
