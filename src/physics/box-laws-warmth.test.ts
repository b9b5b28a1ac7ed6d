// More heat, more warmth: what more watts and a warmer room may do to any box at rest, and what they may not.
// Worked out on paper in docs/theory/box-air.md. WARMSTEAD_SOAK multiplies the number of boxes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day, dried, runs, shut, soak } from '../../checks/box/law-runs.ts';
import { anyEnclosure, testMaterials } from '../../checks/box/random-enclosure.ts';
import { type PlaceId, placeIds } from './answer.ts';
import type { Enclosure } from './enclosure.ts';
import type { BoxModel } from './model.ts';
import { runBox, runStateFrom, startTally } from './run.ts';
import { buildModel, type SettledBox, type SteadyConditions, settleBox, solveSteady } from './simulate.ts';
import { steadyAnswer } from './steady-answer.ts';

/** What the last round of a settled box may still move [K]; see steady.ts. */
const settledK = 1e-3;

/** What the joints of a sealed box pass; see moisture.ts. */
const jointsKgPerS = 1e-9;

const share = fc.double({ min: 0.05, max: 0.9, noNaN: true });

/** Watts up to a basking surface 20 K above the room, as far as any thermostat lets a box go. */
function modestWatts(model: BoxModel, e: Enclosure, part: number): number[] {
  const full = solveSteady(model, day(e, { fixedW: e.heaters.map((h) => h.powerW) }));
  const rise = full.places['basking-surface']! - e.room.winter.lowC;
  return e.heaters.map((h) => (h.powerW * part * 20) / Math.max(20, rise));
}

/** Furthest that any number of the box fell from one state to the other [K]: air, surfaces and all that lies behind. */
const furthestFall = (from: SettledBox, to: SettledBox): number =>
  from.state.row.reduce((most, t, k) => Math.max(most, t - to.state.row[k]!), Number.NEGATIVE_INFINITY);

/** Each named place that is a mean of the box, hides too. Left out: extremes. */
function places(model: BoxModel, conditions: SteadyConditions, box: SettledBox): Map<PlaceId, number> {
  const { places } = steadyAnswer(model, conditions, box);
  const isLeftOut = (p: PlaceId) => ['heater-surface', 'hottest-reachable'].includes(p);
  return new Map(placeIds.flatMap((p) => (places[p] === null || isLeftOut(p) ? [] : [[p, places[p]]])));
}

function placesNeverCooler(before: Map<PlaceId, number>, after: Map<PlaceId, number>): void {
  for (const [place, t] of before) expect(after.get(place), place).toBeGreaterThan(t - settledK);
}

/** Heat held by the air and in the panels, as the mean of what holds it [degC]. */
function meanC({ state: { row, layout } }: SettledBox): number {
  let joules = 0;
  let capacity = 0;
  for (let k = 0; k < row.length; k++) {
    joules += layout.capacity[k]! * row[k]!;
    capacity += layout.capacity[k]!;
  }
  return joules / capacity;
}

describe('more heat in any dry box at rest', { timeout: 120_000 * soak }, () => {
  test('cools nothing at all while the air keeps its ways: neither more watts nor a warmer room', () => {
    fc.assert(
      fc.property(anyEnclosure, share, (wet, part) => {
        const e = dried(wet);
        const model = buildModel(e, testMaterials);
        const fixedW = modestWatts(model, e, part);
        const more = settleBox(model, day(e, { fixedW: fixedW.map((w) => w * 1.3) }));
        const warmer = settleBox(model, day(e, { fixedW, roomC: e.room.winter.lowC + 2 }));
        for (const after of [more, warmer]) {
          const held = day(e, { fixedW, heldAir: after.net });
          const before = settleBox(model, held);
          expect(furthestFall(before, after)).toBeLessThan(settledK);
          placesNeverCooler(places(model, held, before), places(model, held, after));
        }
      }),
      runs(60),
    );
  });

  test('warms the box as a whole and never lessens its draught, wherever the air goes', () => {
    fc.assert(
      fc.property(anyEnclosure, share, (wet, part) => {
        const e = dried(wet);
        const model = buildModel(e, testMaterials);
        const fixedW = modestWatts(model, e, part);
        const less = settleBox(model, day(e, { fixedW }));
        const more = settleBox(model, day(e, { fixedW: fixedW.map((w) => w * 1.3) }));
        expect(meanC(more)).toBeGreaterThan(meanC(less));
        // flows go with the root of a difference that is known to what the last round moves
        const nearestK = Math.min(...less.state.airC.map((t) => Math.abs(t - e.room.winter.lowC)));
        const known = 1 - Math.min(1, settledK / nearestK);
        const fresh = less.net.ventilation.freshKgPerS;
        // and less than the joints of any box let through counts as none
        expect(more.net.ventilation.freshKgPerS).toBeGreaterThanOrEqual(fresh * known - jointsKgPerS);
      }),
      runs(60),
    );
  });

  test('cools nothing in a box that is shut', () => {
    fc.assert(
      fc.property(anyEnclosure, share, (open, part) => {
        const e = shut(dried(open));
        const model = buildModel(e, testMaterials);
        const fixedW = modestWatts(model, e, part);
        const less = settleBox(model, day(e, { fixedW }));
        const more = settleBox(model, day(e, { fixedW: fixedW.map((w) => w * 1.3) }));
        expect(furthestFall(less, more)).toBeLessThan(settledK);
        placesNeverCooler(places(model, day(e), less), places(model, day(e), more));
      }),
      runs(60),
    );
  });

  test('in a warmer room cools no place, even as the draught changes', () => {
    fc.assert(
      fc.property(anyEnclosure, share, (wet, part) => {
        const e = dried(wet);
        const model = buildModel(e, testMaterials);
        const fixedW = modestWatts(model, e, part);
        const before = settleBox(model, day(e, { fixedW }));
        const after = settleBox(model, day(e, { fixedW, roomC: e.room.winter.lowC + 2 }));
        expect(furthestFall(before, after)).toBeLessThan(settledK);
      }),
      runs(60),
    );
  });
});

describe('a heater without current', { timeout: 120_000 * soak }, () => {
  test('carries heat from what it sees into the air; an hour leaves such a box at rest where it was', () => {
    fc.assert(
      fc.property(anyEnclosure, (wet) => {
        const e = dried(wet);
        fc.pre(e.heaters.some((h) => h.mount === 'inside'));
        const model = buildModel(e, testMaterials);
        const { lowC, rhPct } = e.room.winter;
        const box = settleBox(
          model,
          day(e, { fixedW: e.heaters.map(() => 0), sunWPerM2: 0 }),
          undefined,
          settledK / 1000,
        );
        box.now.forEach((n, h) => {
          if (model.heaters[h]!.body.form === 'body') expect(n.convectedW).toBeCloseTo(-n.radiatedW, 9);
        });
        const still = { lowC, highC: lowC, rhPct, sunPeakWPerM2: 0 };
        const options = { stepS: 60, renewS: 300, powerCut: { fromH: 0, toH: 1 } };
        const end = runBox(model, still, runStateFrom(model, box), 0, 1, options, startTally(model), () => {});
        box.state.row.forEach((t, k) => {
          expect(Math.abs(end.box.row[k]! - t)).toBeLessThan(settledK);
        });
      }),
      runs(20),
    );
  });
});
