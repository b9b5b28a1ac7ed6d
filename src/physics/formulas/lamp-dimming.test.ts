import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lampPowerFrac, phaseAngleDeg, phaseAnglePowerFrac } from './lamp-dimming.ts';

describe('dimming', () => {
  it('goes to the angle and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (share) => {
        expect(phaseAnglePowerFrac(phaseAngleDeg(share))).toBeCloseTo(share, 9);
      }),
    );
  });
  it('is full at 0°, half at 90°, off at 180°', () => {
    expect(phaseAnglePowerFrac(0)).toBe(1);
    expect(phaseAnglePowerFrac(90)).toBeCloseTo(0.5, 12);
    expect(phaseAnglePowerFrac(180)).toBeCloseTo(0, 12);
  });
  it('leaves a filament more watts than a plain resistance', () => {
    expect(lampPowerFrac(Math.SQRT1_2)).toBeGreaterThan(0.5);
  });
});
