import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  filmStableAlamdariHammond,
  filmUnstableAlamdariHammond,
  filmVerticalAlamdariHammond,
} from './convection-alamdari-hammond.ts';
import { dryAir } from './dry-air.ts';
import { emitterSplit } from './emitter-radiant-fraction.ts';
import { nusseltSphereChurchill, nusseltVerticalPlateChurchillChu } from './nusselt-churchill-chu.ts';
import { nusseltPlateDriven } from './nusselt-horizontal-plate.ts';
import { rayleighNumber } from './rayleigh.ts';

describe('films', () => {
  it('do not care for the sign, grow with the difference, and vanish without one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (d, l) => {
          for (const film of [filmVerticalAlamdariHammond, filmUnstableAlamdariHammond, filmStableAlamdariHammond]) {
            expect(film(-d, l)).toBe(film(d, l));
            expect(film(2 * d, l)).toBeGreaterThan(film(d, l));
            expect(film(0, l)).toBe(0);
          }
          expect(filmUnstableAlamdariHammond(d, l)).toBeGreaterThan(filmStableAlamdariHammond(d, Math.max(l, 0.3)));
        },
      ),
    );
  });
  it('of a sphere in still air tend to pure conduction', () => {
    expect(nusseltSphereChurchill(1e-9, 0.7)).toBeCloseTo(2, 2);
  });
  it('of a flat plate step by 6 % where the published law changes; of an upright one not', () => {
    expect(nusseltPlateDriven(1e7 * (1 + 1e-9)) / nusseltPlateDriven(1e7)).toBeCloseTo(1.064, 3);
    expect(nusseltVerticalPlateChurchillChu(1e9, 0.71)).toBeGreaterThan(nusseltVerticalPlateChurchillChu(9e8, 0.71));
  });
  it('use air that thins when warmed', () => {
    expect(dryAir(40).densityKgPerM3).toBeLessThan(dryAir(20).densityKgPerM3);
    expect(rayleighNumber(dryAir(25), -5, 0.6)).toBe(rayleighNumber(dryAir(25), 5, 0.6));
  });
  it('leave a hotter emitter a larger radiated share', () => {
    const at = (surfaceC: number) =>
      emitterSplit({ diameterM: 0.075, emissivity: 0.93, surfaceC, airC: 30, wallsC: 28 }).radiantFrac;
    expect(at(400)).toBeGreaterThan(at(200));
  });
});
