// Laws that every box must obey, over random enclosures. WARMSTEAD_SOAK multiplies the number of boxes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day, runs, soak } from '../../checks/box/law-runs.ts';
import { anyEnclosure, mirrored, testMaterials } from '../../checks/box/random-enclosure.ts';
import { type PlaceId, placeIds, type SteadyAnswer } from './answer.ts';
import { boxGeometry, buildModel, modelFrom, simulateDay, solveSteady } from './simulate.ts';

const temperatures = (a: SteadyAnswer): [PlaceId, number][] =>
  placeIds.flatMap((p): [PlaceId, number][] => (a.places[p] === null ? [] : [[p, a.places[p]]]));

/** More than twice the columns of any box. */
const mostColumns = 64;

describe('every box at rest', { timeout: 120_000 * soak }, () => {
  test('closes its books of heat to 1e-6 and of water to 1e-6, and nothing is not a number', () => {
    const unsettled: string[] = [];
    let asked = 0;
    fc.assert(
      fc.property(anyEnclosure, (e) => {
        const a = solveSteady(buildModel(e, testMaterials), day(e));
        expect(a.balance.relative).toBeLessThan(1e-6);
        expect(a.balance.waterRelative).toBeLessThan(1e-6);
        for (const [place, t] of temperatures(a)) expect(Number.isFinite(t), place).toBe(true);
        for (const row of [a.columns.floorC, a.columns.ceilingC, a.columns.rhPct, ...a.columns.airC, a.heaterW])
          for (const v of row) expect(Number.isFinite(v)).toBe(true);
        asked++;
        for (const note of a.notes) if (note.code === 'PHYS_NOT_SETTLED') unsettled.push(note.got);
      }),
      runs(200),
    );
    // a box that keeps swinging between two states says so in a note; they are rare
    expect(unsettled.length / asked, unsettled.join(', ')).toBeLessThan(0.01);
  });

  test('a mirrored box gives mirrored answers', () => {
    fc.assert(
      fc.property(anyEnclosure, (e) => {
        const a = solveSteady(buildModel(e, testMaterials), day(e));
        const b = solveSteady(buildModel(mirrored(e), testMaterials), day(e));
        // with one heater the columns are mirrored too; with two, ties between equal stretches may fall the other way
        const near = e.heaters.length === 1 ? 0.1 : 0.3;
        for (const place of ['basking-surface', 'warm-air', 'cool-air', 'cool-floor', 'probe'] as const) {
          if (e.heaters.length > 1 && e.heaters[0]!.powerW === e.heaters[1]!.powerW) continue;
          expect(Math.abs(a.places[place]! - b.places[place]!), place).toBeLessThan(near);
        }
      }),
      runs(40),
    );
  });

  test('twice the columns change the named places by less than 0.3 K', () => {
    const misses: string[] = [];
    let asked = 0;
    fc.assert(
      fc.property(anyEnclosure, fc.constantFrom(0, 100, 300), (any, waterGPerDay) => {
        const e = waterGPerDay > 0 ? { ...any, misting: { waterGPerDay, atHours: [8] } } : any;
        // a lamp hangs at least 0.2 m above the floor, as no guard fits below that
        fc.pre(e.heaters.every((h) => h.mount !== 'inside' || h.zM >= 0.2));
        // watts that warm the basking surface 12 K above the room, as a thermostat would allow
        const model = buildModel(e, testMaterials);
        const full = solveSteady(model, day(e, { fixedW: e.heaters.map((h) => h.powerW) }));
        const rise = full.places['basking-surface']! - e.room.winter.lowC;
        const fixedW = e.heaters.map((h) => (h.powerW * 12) / Math.max(12, rise));
        const coarse = solveSteady(model, day(e, { fixedW }));
        // every surface exchanges with every other, so that nothing but the columns differs
        const finer = boxGeometry(e, testMaterials, 2 * model.grid.columns, mostColumns);
        const fine = solveSteady(modelFrom(finer), day(e, { fixedW }));
        for (const place of [
          'basking-surface',
          'warm-air',
          'cool-air',
          'cool-floor',
          'warm-hide',
          'cool-hide',
        ] as const) {
          asked++;
          const d = Math.abs(coarse.places[place]! - fine.places[place]!);
          if (d > 0.3)
            misses.push(
              `${place} ${d.toFixed(2)} K: ${e.heaters.map((h) => `${h.kind} ${h.powerW.toFixed(0)} W`).join(' + ')}, ${e.box.lengthM.toFixed(2)} m`,
            );
        }
      }),
      runs(25),
    );
    // none in the usual run; in a soak one in two thousand may miss it, each named here
    expect(misses.length / asked, `${misses.join('; ')} of ${asked}`).toBeLessThanOrEqual(soak > 1 ? 0.0005 : 0);
  });
});

describe('every box through a day', () => {
  test(
    'closes its books of heat and water',
    () => {
      fc.assert(
        fc.property(anyEnclosure, (e) => {
          const a = simulateDay(buildModel(e, testMaterials), e.room.winter, { stepS: 60, leadH: 2 });
          expect(a.balance.relative).toBeLessThan(1e-6);
          expect(a.balance.waterRelative).toBeLessThan(1e-6);
          for (const row of a.floorC) for (const t of row) expect(Number.isFinite(t)).toBe(true);
          expect(a.hours.length).toBe(96);
        }),
        runs(5),
      );
    },
    60_000 * soak,
  );
});
