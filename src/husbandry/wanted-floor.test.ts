import { expect, it } from 'vitest';
import type { ClimateNeeds } from './climate.ts';
import { kelvinOutside, wantedFloorAt } from './wanted-floor.ts';

const range = (low: number, high: number) => ({ low, high, source: 'COMMON', at: '', read: 'memory' as const });
const climate: ClimateNeeds = {
  speciesId: 'corn',
  stage: 'adult',
  baskingSurfaceC: range(30, 32),
  warmAirC: range(27, 30),
  coolAirC: range(20, 24),
  nightMinC: range(18, 21),
  rhPct: range(40, 60),
  reachableMaxC: { target: 35, alarm: 40, cutOut: 45, source: 'OUR-CHOICE' },
  climbs: true,
};

it.each([
  [0, true, 27, 32],
  [1 / 6, true, 27, 32],
  [1 / 3, true, 23.5, 32],
  [1 / 2, true, 20, 32],
  [2 / 3, true, 20, 28],
  [1, true, 20, 24],
  [0, false, 18, 32],
  [1, false, 18, 24],
])('at %f of the way from the warm end, day %s: %f to %f', (frac, isDay, lowC, highC) => {
  const wanted = wantedFloorAt(frac, isDay, climate);
  expect(wanted.lowC).toBeCloseTo(lowC, 9);
  expect(wanted.highC).toBeCloseTo(highC, 9);
});

it('measures outwards from the band', () => {
  expect(kelvinOutside(18, { lowC: 20, highC: 24 })).toBe(-2);
  expect(kelvinOutside(22, { lowC: 20, highC: 24 })).toBe(0);
  expect(kelvinOutside(27, { lowC: 20, highC: 24 })).toBe(3);
});
