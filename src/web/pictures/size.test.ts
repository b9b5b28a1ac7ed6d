import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Enclosure } from '../../physics/enclosure.ts';
import { enclosureFrom } from '../../physics/validate-enclosure.ts';
import { loadFacts } from '../../records/facts.ts';
import { sizedBox, sizeLimits } from './size.ts';

const data = new URL('../../../data/', import.meta.url);
const { materials } = loadFacts(data.pathname).facts;
const examples = readdirSync(new URL('examples/', data)).map(
  (name) => JSON.parse(readFileSync(new URL(`examples/${name}`, data), 'utf8')) as Enclosure,
);
const within = ([low, high]: readonly [number, number]) =>
  fc.integer({ min: Math.round(low * 100), max: Math.round(high * 100) }).map((cm) => cm / 100);

it('gives a sound home of the size asked for, whatever stood in it', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...examples),
      fc.record({
        lengthM: within(sizeLimits.lengthM),
        depthM: within(sizeLimits.depthM),
        heightM: within(sizeLimits.heightM),
      }),
      (home, size) => {
        const read = enclosureFrom(sizedBox(home, size), materials);
        expect(read.ok ? [] : read.faults.map((f) => `${f.code} ${f.field} ${f.got} ${f.allowed}`)).toEqual([]);
        if (read.ok) expect(read.value.box).toMatchObject(size);
      },
    ),
    { numRuns: 300 },
  );
});

it('changes nothing when the size stays', () => {
  for (const home of examples) {
    const { lengthM, depthM, heightM } = home.box;
    expect(sizedBox(home, { lengthM, depthM, heightM })).toEqual(home);
  }
});

it('keeps a lamp as far below the lid, and its share of the length', () => {
  const wood = examples.find((e) => e.name?.includes('120')) as Enclosure;
  const large = sizedBox(wood, { lengthM: 1.8, depthM: 0.6, heightM: 0.9 });
  const [was, now] = [wood.heaters[0]!, large.heaters[0]!];
  expect(now.xM).toBeCloseTo(was.xM * 1.5, 3);
  expect(large.box.heightM - now.zM).toBeCloseTo(wood.box.heightM - was.zM, 3);
});
