import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Species } from '../husbandry/fact.ts';
import { allFacts } from '../records/animal-facts.ts';
import {
  daysToReach,
  type GrowthBand,
  growthBand,
  lengthAfterCm,
  lengthSeries,
  moveUp,
  ownRateCmPerMonth,
} from './growth.ts';
import { entry } from './testing/entry.ts';

const { care, facts } = allFacts();
const band = growthBand(facts.species.corn as Species, care) as GrowthBand;

describe('the growth curve', () => {
  test('never shrinks, never passes the adult length, and two steps are one', () => {
    const days = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 5, max: 129, noNaN: true }), days, days, (from, a, b) => {
        const once = lengthAfterCm(band.middle, from, a + b);
        expect(once).toBeGreaterThanOrEqual(from - 1e-9);
        expect(once).toBeLessThanOrEqual(band.middle.adultCm + 1e-9);
        expect(lengthAfterCm(band.middle, lengthAfterCm(band.middle, from, a), b)).toBeCloseTo(once, 8);
      }),
    );
  });
  test('reaches a length after as many days as it says', () => {
    const days = daysToReach(band.middle, 30, 100) ?? Number.NaN;
    expect(lengthAfterCm(band.middle, 30, days)).toBeCloseTo(100, 9);
    expect(daysToReach(band.slow, 30, band.slow.adultCm)).toBeNull();
  });
  test('every species has a band, slow below fast', () => {
    for (const species of Object.values(facts.species)) {
      const one = growthBand(species, care);
      expect(one, species.id).not.toBeNull();
      if (one)
        expect(lengthAfterCm(one.slow, one.hatchlingCm, 365)).toBeLessThan(
          lengthAfterCm(one.fast, one.hatchlingCm, 365),
        );
    }
  });
});

describe('the move-up', () => {
  const last = { on: '2026-01-01', totalLengthCm: 60, errorMm: 10 };
  test('a box as long as the animal is outgrown; earliest before likely', () => {
    const move = moveUp(band, last, 90, 1);
    expect(move).toMatchObject({ limitCm: 90, now: false });
    expect((move.earliest ?? '') < (move.likely ?? '')).toBe(true);
  });
  test('both sides of the limit', () => {
    expect(moveUp(band, { ...last, totalLengthCm: 90 }, 90, 1).now).toBe(false);
    expect(moveUp(band, { ...last, totalLengthCm: 90.1 }, 90, 1).now).toBe(true);
    expect(moveUp(band, { ...last, totalLengthCm: 90.1 }, 90, 2 / 3).now).toBe(false);
  });
  test('a box longer than any adult is never outgrown', () => {
    expect(moveUp(band, last, 200, 1)).toMatchObject({ earliest: null, likely: null, latest: null });
  });
});

test('the own rate needs sixty days between', () => {
  const at = (on: string, cm: number) =>
    entry('length', on, { totalLengthCm: cm, snoutVentMm: null, errorMm: null, how: 'ruler' });
  expect(ownRateCmPerMonth(lengthSeries([at('2026-01-01', 50), at('2026-03-01', 56)]), care)).toBeNull();
  expect(ownRateCmPerMonth(lengthSeries([at('2026-01-01', 50), at('2026-03-02', 56)]), care)).toBeCloseTo(3.04, 2);
});
