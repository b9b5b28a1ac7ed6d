import { describe, expect, it } from 'vitest';
import { uValueWPerM2K } from '../formulas/u-value.ts';
import { steadyConduction } from './steady-2d.ts';
import { transientWall } from './transient-wall.ts';

const lines = (length: number, n: number) => Array.from({ length: n + 1 }, (_, i) => (length * i) / n);

describe('steady conduction', () => {
  const wall = steadyConduction({
    xM: lines(0.4, 8),
    yM: lines(0.05, 10),
    conductivityWPerMK: (_, j) => (j < 5 ? 0.14 : 0.04),
    left: { kind: 'adiabatic' },
    right: { kind: 'adiabatic' },
    bottom: { kind: 'film', tempC: 0, resistanceM2KPerW: 0.13 },
    top: { kind: 'film', tempC: 20, resistanceM2KPerW: 0.1 },
  });
  it('gives the U value of a plain layered wall', () => {
    const u = uValueWPerM2K(
      [
        { thicknessM: 0.025, conductivityWPerMK: 0.14 },
        { thicknessM: 0.025, conductivityWPerMK: 0.04 },
      ],
      [0.13, 0.1],
    );
    expect(wall.inWPerM.top).toBeCloseTo(u * 20 * 0.4, 9);
  });
  it('loses no heat', () => {
    const { left, right, bottom, top } = wall.inWPerM;
    expect(left + right + bottom + top).toBeCloseTo(0, 10);
  });
});

describe('transient wall', () => {
  const run = (stepS: number) =>
    transientWall({
      layers: [
        { thicknessM: 0.018, conductivityWPerMK: 0.14, densityKgPerM3: 600, heatCapacityJPerKgK: 1700 },
        { thicknessM: 0.02, conductivityWPerMK: 0.035, densityKgPerM3: 20, heatCapacityJPerKgK: 1450 },
      ],
      first: { kind: 'film', filmWPerM2K: 8, airC: (t) => 28 + 2 * Math.sin(t / 300) },
      last: { kind: 'film', filmWPerM2K: 8, airC: () => 20 },
      startC: 20,
      stepS,
      durationS: 7200,
      cellsPerLayer: 20,
    });
  it('stores exactly what entered', () => {
    const { enteredJPerM2, storedJPerM2 } = run(20);
    expect(Math.abs(enteredJPerM2 - storedJPerM2) / Math.abs(storedJPerM2)).toBeLessThan(1e-9);
  });
  it('converges with the square of the step', () => {
    const at = (stepS: number) => run(stepS).states.at(-1)?.firstFaceC ?? Number.NaN;
    const ratio = Math.abs(at(120) - at(7.5)) / Math.abs(at(60) - at(7.5));
    expect(ratio).toBeGreaterThan(2.5);
  });
});
