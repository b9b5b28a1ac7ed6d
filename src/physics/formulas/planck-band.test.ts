import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blackBodyFractionBelow, blackBodyFractionBetween } from './planck-band.ts';

describe('black-body share', () => {
  it('grows from nothing to all', () => {
    expect(blackBodyFractionBelow(0, 3000)).toBe(0);
    expect(blackBodyFractionBelow(1000, 3000)).toBeCloseTo(1, 6);
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 50, noNaN: true }),
        fc.double({ min: 280, max: 3200, noNaN: true }),
        (um, k) => {
          expect(blackBodyFractionBetween(um, um * 1.1, k)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
  it('depends only on wavelength times temperature', () => {
    expect(blackBodyFractionBelow(2, 1500)).toBeCloseTo(blackBodyFractionBelow(1, 3000), 14);
  });
});
