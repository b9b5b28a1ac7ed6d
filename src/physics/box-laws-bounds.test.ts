// How cold and how hot any node of any box at rest may be, wet or dry. Worked out on paper in docs/theory/box-bounds.md.
// WARMSTEAD_SOAK multiplies the number of boxes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Block, blocksOf, coldestC, hottestSourceC, mostC } from '../../checks/box/law-bounds.ts';
import { day, dried, runs, soak } from '../../checks/box/law-runs.ts';
import { anyEnclosure, testMaterials } from '../../checks/box/random-enclosure.ts';
import type { Enclosure } from './enclosure.ts';
import type { BoxModel } from './model.ts';
import { shadeFallK } from './shade.ts';
import { buildModel, type SettledBox, type SteadyConditions, settleBox } from './simulate.ts';

/** Rounds go on until none moves anything further [K], or for as long as the program tries. */
const settledK = 1e-6;

/** Sprays of any strength, up to far more than a floor can dry; rooms of any damp; any power, or none. */
const moments = fc.record({
  waterGPerDay: fc.constantFrom(0, 0, 20, 100, 600, 3000),
  rhPct: fc.double({ min: 5, max: 100, noNaN: true }),
  powerFrac: fc.constantFrom(0, 0.1, 0.3, 1),
  isDay: fc.boolean(),
});

interface Asked {
  readonly e: Enclosure;
  readonly model: BoxModel;
  readonly conditions: SteadyConditions;
  readonly box: SettledBox;
  /** What the last round still moved, the only margin of these laws [K]. */
  readonly movedK: number;
}

/** Boxes as they rest, each wet and dry. A few in a hundred still move by more than a thousandth: they say so in their answer. */
function everyBox(boxes: number, ask: (asked: Asked) => void): void {
  fc.assert(
    fc.property(anyEnclosure, moments, (any, m) => {
      const misting = m.waterGPerDay > 0 ? { waterGPerDay: m.waterGPerDay, atHours: [8] } : null;
      for (const e of [{ ...any, misting }, dried(any)]) {
        const model = buildModel(e, testMaterials);
        const conditions = day(e, {
          fixedW: e.heaters.map((h) => h.powerW * m.powerFrac),
          roomRhPct: m.rhPct,
          ...(m.isDay ? {} : { sunWPerM2: 0 }),
        });
        const box = settleBox(model, conditions, undefined, settledK);
        ask({ e, model, conditions, box, movedK: Math.max(settledK, box.change) });
      }
    }),
    runs(boxes),
  );
}

const isWet = (e: Enclosure): boolean => e.bowl !== null || e.misting !== null || (e.substrate?.wetFrac ?? 0) > 0;

describe('no node of any box at rest', { timeout: 240_000 * soak }, () => {
  test('is colder than what surrounds the box, or in a wet one than the dew point of the air that comes in', () => {
    everyBox(80, ({ e, model, conditions, box, movedK }) => {
      const least = coldestC(e, conditions, isWet(e)) - movedK;
      expect(Math.min(...box.state.row)).toBeGreaterThan(least);
      model.grid.patches.forEach((p, s) => {
        if (p.facing === 'floor') expect(box.state.surfaceC[s]! - shadeFallK(model, box, s)).toBeGreaterThan(least);
      });
    });
  });

  test('is hotter than the hottest body and what the watts that fall on a face can make of it, dew or not', () => {
    let lit = 0;
    everyBox(80, ({ e, model, conditions, box, movedK }) => {
      const hottest = Math.max(...box.state.row);
      const source = hottestSourceC(model, e, conditions, box);
      const blocks = blocksOf(model, e, conditions, box);
      if (hottest <= source) return;
      lit++;
      expect(hottest).toBeLessThan(Math.max(source, ...blocks.map((b) => mostC(b, 0, 0, b.beyondC))) + movedK);
      for (const b of blocks) {
        const around = Math.max(source, ...box.state.airC, ...others(blocks, b));
        expect(Math.max(...b.tempC)).toBeLessThan(mostC(b, b.inward, around, around) + movedK);
      }
    });
    // where beams, sheets or sun are the hottest; without such boxes nothing would have been asked
    expect(lit).toBeGreaterThan(10);
  });
});

const others = (blocks: readonly Block[], one: Block): number[] =>
  blocks.flatMap((b) => (b === one ? [] : [Math.max(...b.tempC)]));
