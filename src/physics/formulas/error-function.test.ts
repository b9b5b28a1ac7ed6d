import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { erf, erfc, erfcScaled } from './error-function.ts';

describe('error function', () => {
  it('and its complement add to one, and it is odd', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (x) => {
        expect(erf(x) + erfc(x)).toBeCloseTo(1, 13);
        expect(erf(-x)).toBeCloseTo(-erf(x), 14);
      }),
    );
  });
  it('joins series and fraction without a step', () => {
    expect(erfc(2.5 - 1e-9) / erfc(2.5 + 1e-9)).toBeCloseTo(1, 7);
  });
  it('keeps its tail where the plain complement is gone', () => {
    expect(erfc(30)).toBe(0);
    expect(erfcScaled(30) * 30 * Math.sqrt(Math.PI)).toBeCloseTo(1 - 1 / 1800 + 3 / 3_240_000, 8);
  });
});
