// What stirs the air is one law at rest, through a day and in a year. WARMSTEAD_SOAK multiplies the number of boxes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day, dried, runs, soak } from '../../checks/box/law-runs.ts';
import { bareEnclosure, heaterOf } from '../../checks/box/plain-box.ts';
import { anyEnclosure, panelOf, testMaterials } from '../../checks/box/random-enclosure.ts';
import type { PlaceId } from './answer.ts';
import type { Enclosure } from './enclosure.ts';
import type { BoxModel } from './model.ts';
import { coldRunState, type Moment, runBox, runStateFrom, startTally } from './run.ts';
import { buildModel, type SettledBox, settleBox } from './simulate.ts';
import { steadyAnswer } from './steady-answer.ts';
import { riseFrac } from './stirring.ts';
import { runSlowly } from './year-run.ts';

/** Full watts at every hour, in a room that stays as it is. */
const constant = (e: Enclosure): Enclosure => ({
  ...e,
  heaters: e.heaters.map((h) => ({ ...h, thermostatId: null, period: 'all' as const })),
});

const still = (e: Enclosure) => {
  const { lowC, rhPct } = e.room.winter;
  return { lowC, highC: lowC, rhPct, sunPeakWPerM2: 0 };
};
const atRest = (e: Enclosure) => day(e, { sunWPerM2: 0, isDay: true });

/** Dry boxes with one mat of up to 400 W/m2 or one panel of up to 1200 W/m2, no thermostat: as much as such sheets have. */
const sheetBox = fc.tuple(anyEnclosure, fc.boolean()).map(([e, isPanel]) => {
  const lengthM = Math.min(0.4, e.box.lengthM / 3);
  const depthM = Math.min(0.4, e.box.depthM / 2);
  const powerW = (e.heaters[0]!.powerW / 200) * (isPanel ? 1200 : 400) * lengthM * depthM;
  const made = isPanel
    ? ({ kind: 'radiant-panel', mount: 'ceiling' } as const)
    : ({ kind: 'heat-mat', mount: 'under-floor' } as const);
  return constant({ ...dried(e), heaters: [{ ...e.heaters[0]!, ...made, lengthM, depthM, powerW }] });
});

const oneStep = 900;
const mostDays = 200;

/** The box run from the room's own temperature until two days move nothing by more than a thousandth of a kelvin. */
function runToRest(model: BoxModel, e: Enclosure): Moment {
  const room = still(e);
  const cold = settleBox(model, { ...atRest(e), fixedW: e.heaters.map(() => 0) });
  let state = coldRunState(model, cold.state, room.lowC, room.rhPct);
  let last: Moment | null = null;
  for (let at = 0; at < mostDays; at += 2) {
    const before = state.box.row.slice();
    state = runBox(model, room, state, 0, 48, { stepS: oneStep, renewS: oneStep }, startTally(model), (m) => {
      last = m;
    });
    if (state.box.row.every((t, k) => Math.abs(t - before[k]!) < 1e-3)) break;
  }
  return last!;
}

const placesOf = (model: BoxModel, e: Enclosure, box: SettledBox) => steadyAnswer(model, atRest(e), box).places;

describe('a box at rest is where a long day of the same watts ends', { timeout: 300_000 * soak }, () => {
  test('every box with mats or panels alone: named places within 0.05 K', () => {
    fc.assert(
      fc.property(sheetBox, (e) => {
        const model = buildModel(e, testMaterials);
        const rest = settleBox(model, atRest(e));
        const end = runToRest(model, e);
        const ran = placesOf(model, e, { ...rest, state: end.state.box, net: end.net, now: end.now });
        for (const [place, t] of Object.entries(placesOf(model, e, rest)) as [PlaceId, number | null][])
          if (t !== null) expect(Math.abs(ran[place]! - t), place).toBeLessThan(0.05);
      }),
      runs(20),
    );
  });

  test('every box: the first step of a day is stirred as the box at rest', () => {
    fc.assert(
      fc.property(anyEnclosure, (wet) => {
        const e = constant(dried(wet));
        const model = buildModel(e, testMaterials);
        const rest = settleBox(model, atRest(e), undefined, 1e-5);
        let stirred = Number.NaN;
        runBox(
          model,
          still(e),
          runStateFrom(model, rest),
          0,
          1 / 60,
          { stepS: 60, renewS: 300 },
          startTally(model),
          (m) => {
            stirred = m.net.mixing.along[0]!;
          },
        );
        expect(stirred / rest.net.mixing.along[0]!).toBeCloseTo(1, 3);
      }),
      runs(60),
    );
  });

  test('a tub over a mat stays where it is for two days of the year', () => {
    const e = tub();
    const model = buildModel(e, testMaterials);
    const rest = settleBox(model, atRest(e));
    const room = { hourlyC: new Float64Array(48).fill(20), rhPct: 50 };
    let end = runStateFrom(model, rest);
    runSlowly(model, room, end, { stepS: 1800, renewS: 7200 }, startTally(model), (m) => {
      end = m.state;
    });
    rest.state.row.forEach((t, k) => {
      expect(Math.abs(end.box.row[k]! - t)).toBeLessThan(0.01);
    });
  });
});

const tub = (): Enclosure =>
  bareEnclosure({
    name: 'tub',
    sizeM: [0.55, 0.35, 0.2],
    wall: panelOf('tub', 0.003),
    heaters: [
      heaterOf({
        kind: 'heat-mat',
        powerW: 10,
        mount: 'under-floor',
        xM: 0.1,
        yM: 0.17,
        zM: 0,
        lengthM: 0.2,
        depthM: 0.3,
      }),
    ],
    roomC: 20,
    roomRhPct: 50,
  });

const alongOf = (e: Enclosure, fixedW: number[]): number => {
  const model = buildModel(e, testMaterials);
  return settleBox(model, { ...atRest(e), fixedW }, undefined, 1e-6).net.mixing.along[0]!;
};

describe('heat stirs by the way that it rises', () => {
  test('all of the height from the floor, half from the middle, nothing below the ceiling or beyond', () => {
    expect([0, 0.3, 0.6, 0.7].map((z) => riseFrac(z, 0.6))).toEqual([1, 0.5, 0, 0]);
  });

  test('the first watts of a mat change the stirring by no jump', () => {
    const e = tub();
    const watts = [0, 1e-6, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1];
    const along = watts.map((w) => alongOf(e, [w]));
    expect(along[1]! / along[0]!).toBeCloseTo(1, 5);
    for (let i = 1; i < watts.length; i++) {
      expect(along[i]!).toBeGreaterThanOrEqual(along[i - 1]! * (1 - 1e-4));
      // at most the slope of a cube root at the least that stirs
      expect(along[i]! / along[i - 1]! - 1).toBeLessThan(1e-4 + (watts[i]! - watts[i - 1]!) / 0.5);
    }
  });

  test('an emitter that hangs low stirs more than the same below the ceiling', () => {
    const hung = (zM: number) =>
      bareEnclosure({
        name: 'hung',
        sizeM: [1.2, 0.6, 0.6],
        wall: panelOf('wood', 0.015),
        heaters: [heaterOf({ kind: 'ceramic-emitter', powerW: 60, mount: 'inside', xM: 0.3, yM: 0.3, zM })],
        roomC: 20,
        roomRhPct: 50,
      });
    expect(alongOf(hung(0.3), [60]) / alongOf(hung(0.5), [60])).toBeGreaterThan(1.15);
  });
});
