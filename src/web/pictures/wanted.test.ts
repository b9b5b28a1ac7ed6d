import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kelvinOutside, levelOf, type WantedClimate, wantedAt } from './wanted.ts';

const climate: WantedClimate = {
  baskingLowC: 30,
  baskingHighC: 32,
  warmLowC: 27,
  warmHighC: 30,
  coolLowC: 20,
  coolHighC: 24,
  nightLowC: 18,
};

describe('wantedAt', () => {
  it('wants warm-end temperatures at the warm wall and cool-end ones at the cool wall', () => {
    expect(wantedAt(0, true, climate)).toEqual({ lowC: 27, highC: 32 });
    expect(wantedAt(1, true, climate)).toEqual({ lowC: 20, highC: 24 });
  });

  it('lets the night minimum alone limit from below at night', () => {
    expect(wantedAt(0, false, climate).lowC).toBe(18);
    expect(wantedAt(1, false, climate).lowC).toBe(18);
  });

  it('never wants more at a place further from the heat, and low stays under high', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (a, b) => {
        const near = wantedAt(Math.min(a, b), true, climate);
        const far = wantedAt(Math.max(a, b), true, climate);
        expect(far.lowC).toBeLessThanOrEqual(near.lowC + 1e-9);
        expect(far.highC).toBeLessThanOrEqual(near.highC + 1e-9);
        expect(near.lowC).toBeLessThan(near.highC);
      }),
    );
  });
});

describe('levelOf', () => {
  it('grows with the distance on both sides and is 0 inside', () => {
    const band = { lowC: 20, highC: 24 };
    const cases: readonly (readonly [number, number])[] = [
      [22, 0],
      [24, 0],
      [24.05, 0],
      [24.5, 1],
      [26, 2],
      [28, 3],
      [40, 4],
      [19, -1],
      [17.5, -2],
      [15.5, -3],
      [5, -4],
    ];
    for (const [tempC, level] of cases) expect(levelOf(kelvinOutside(tempC, band)), `${tempC} °C`).toBe(level);
  });
});
