import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pulseRippleK, relayCycle, relayCycleWithLag } from './thermostat-cycle.ts';

const plant = { roomC: 20, risePerWattK: 0.25, powerW: 60, timeConstantS: 1800 };

describe('thermostat cycle', () => {
  it('is null when the heater is too weak or the room too warm', () => {
    expect(relayCycle({ ...plant, powerW: 30 }, 28, 0.5)).toBeNull();
    expect(relayCycle({ ...plant, roomC: 28 }, 28, 0.5)).toBeNull();
    expect(relayCycleWithLag({ ...plant, powerW: 30 }, 28, 0.5, 60)).toBeNull();
  });
  it('uses as much heat as is lost at its mean', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 22, max: 33, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (set, half) => {
          const cycle = relayCycle(plant, set, half);
          if (cycle === null) return;
          expect(cycle.meanC).toBeGreaterThan(cycle.minC);
          expect(cycle.meanC).toBeLessThan(cycle.maxC);
          expect(cycle.dutyFrac * plant.powerW * plant.risePerWattK).toBeCloseTo(cycle.meanC - plant.roomC, 9);
        },
      ),
    );
  });
  it('with a slow probe swings further and slower, and without lag not at all differently', () => {
    const ideal = relayCycle(plant, 28, 0.5);
    const slow = relayCycleWithLag(plant, 28, 0.5, 120);
    const quick = relayCycleWithLag(plant, 28, 0.5, 0.01);
    expect(slow?.maxC).toBeGreaterThan(28.5);
    expect(slow?.minC).toBeLessThan(27.5);
    expect(slow?.periodS).toBeGreaterThan(ideal?.periodS ?? Number.POSITIVE_INFINITY);
    expect(quick?.periodS).toBeCloseTo(ideal?.periodS ?? 0, 0);
    expect(quick?.maxC).toBeCloseTo(28.5, 3);
  });
  it('ripples most at half duty and by K P d (1 - d) Tc / tau for short cycles', () => {
    expect(pulseRippleK(plant, 20, 0.5)).toBeGreaterThan(pulseRippleK(plant, 20, 0.2));
    expect(pulseRippleK(plant, 1, 0.5)).toBeCloseTo((0.25 * 60 * 0.25) / 1800, 6);
  });
});
