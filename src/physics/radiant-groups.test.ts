// A finely cut box radiates in groups of neighbours: the same answers as the full exchange, within what is stated here.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyEnclosure, testMaterials } from '../../checks/box/random-enclosure.ts';
import type { PlaceId, SteadyAnswer } from './answer.ts';
import type { Enclosure } from './enclosure.ts';
import { cutBox } from './grid.ts';
import { type BoxGeometry, boxGeometry, columnsFor, modelFrom, radiantColumnsFor } from './model.ts';
import { simulateDay, solveSteady } from './simulate.ts';

const soak = Number(process.env.WARMSTEAD_SOAK ?? 1);
const runs = (n: number) => ({ numRuns: Math.round(n * soak), seed: 31, endOnFailure: true });
const dried = (e: Enclosure): Enclosure => ({
  ...e,
  bowl: null,
  misting: null,
  substrate: e.substrate ? { ...e.substrate, wetFrac: 0 } : null,
});
const means = ['basking-surface', 'basking-spot', 'warm-air', 'cool-air', 'warm-hide', 'cool-hide'] as const;
/** The cool end, where columns are joined first, a probe on a wall, and places that are the coldest or hottest of many. */
const others = ['cool-floor', 'probe', 'front-glass', 'hottest-reachable'] as const;

/** At rest with watts that warm the basking surface up to 20 K above the room, as far as any thermostat lets a box go. */
function atRest(e: Enclosure, geometry: BoxGeometry, fixedW?: readonly number[]): SteadyAnswer {
  const room = e.room.winter;
  const at = { roomC: room.lowC, roomRhPct: room.rhPct, sunWPerM2: room.sunPeakWPerM2, isDay: true };
  return solveSteady(modelFrom(geometry), { ...at, fixedW: fixedW ?? e.heaters.map((h) => h.powerW) });
}

function wattsFor(e: Enclosure, geometry: BoxGeometry): number[] {
  const rise = atRest(e, geometry).places['basking-surface']! - e.room.winter.lowC;
  return e.heaters.map((h) => (h.powerW * 20) / Math.max(20, rise));
}

const largest = (places: readonly PlaceId[], a: SteadyAnswer, b: SteadyAnswer): number =>
  places.reduce((most, p) => (a.places[p] === null ? most : Math.max(most, Math.abs(a.places[p] - b.places[p]!))), 0);

describe('radiant groups', { timeout: 120_000 * soak }, () => {
  test('are of one surface in every cut that the program takes by itself', () => {
    fc.assert(
      fc.property(anyEnclosure, (e) => {
        expect(columnsFor(e)).toBeLessThanOrEqual(radiantColumnsFor(e));
        expect(boxGeometry(e, testMaterials).radiant.single).toBe(true);
      }),
      runs(20),
    );
  });

  test('of one surface are the full exchange: the way to groups makes no jump', () => {
    fc.assert(
      fc.property(anyEnclosure, (e) => {
        const full = boxGeometry(e, testMaterials);
        const grouped = { ...full, radiant: { ...full.radiant, single: false } };
        const a = atRest(e, full);
        const b = atRest(e, grouped);
        expect(largest([...means, ...others], a, b)).toBeLessThan(1e-3);
      }),
      runs(20),
    );
  });

  test('have no patch and no hole as thin as rounding, however the box is cut', () => {
    fc.assert(
      fc.property(anyEnclosure, fc.integer({ min: 8, max: 64 }), (e, columns) => {
        for (const { rect, holes = [] } of cutBox(e, columns).patches)
          for (const r of [rect, ...holes]) expect(Math.min(r.a1 - r.a0, r.b1 - r.b0)).toBeGreaterThan(1e-7);
      }),
      runs(1000),
    );
  });

  test('send and get the same both ways, and all that they send arrives', () => {
    fc.assert(
      fc.property(anyEnclosure, fc.integer({ min: 17, max: 64 }), (e, columns) => {
        const { radiant, longShares, greyExchange } = boxGeometry(e, testMaterials, columns);
        const n = radiant.count;
        const members = new Float64Array(n);
        for (let s = 0; s < radiant.share.length; s++)
          members[radiant.groupOf[s]!] = members[radiant.groupOf[s]!]! + radiant.share[s]!;
        for (let i = 0; i < n; i++) {
          expect(members[i]).toBeCloseTo(1, 12);
          expect(longShares.subarray(i * n, (i + 1) * n).reduce((s, v) => s + v, 0)).toBeCloseTo(1, 9);
          for (let j = 0; j < i; j++) {
            expect(greyExchange[i * n + j]).toBe(greyExchange[j * n + i]!);
            expect(greyExchange[i * n + j]).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      runs(10),
    );
  });

  test('give basking places, air and hides of the full exchange within 0.1 K, cool floor, probe and extremes within 0.3 K', () => {
    fc.assert(
      fc.property(anyEnclosure, fc.constantFrom(20, 24, 32, 48, 64), (wet, columns) => {
        const e = dried(wet);
        const full = boxGeometry(e, testMaterials, columns, columns);
        const grouped = boxGeometry(e, testMaterials, columns);
        const watts = wattsFor(e, grouped);
        const a = atRest(e, full, watts);
        const b = atRest(e, grouped, watts);
        expect(b.balance.relative).toBeLessThan(1e-9);
        expect(largest(means, a, b)).toBeLessThan(0.1);
        expect(largest(others, a, b)).toBeLessThan(0.3);
      }),
      runs(15),
    );
  });

  test('keep the books of a day', () => {
    fc.assert(
      fc.property(anyEnclosure, (e) => {
        const model = modelFrom(boxGeometry(e, testMaterials, 40));
        const a = simulateDay(model, e.room.winter, { stepS: 120, leadH: 2 });
        expect(a.balance.relative).toBeLessThan(1e-9);
        expect(a.balance.waterRelative).toBeLessThan(1e-6);
      }),
      runs(3),
    );
  });
});
