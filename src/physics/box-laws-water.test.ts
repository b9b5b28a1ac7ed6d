// Water in any box through a day: no store ever holds less than nothing, and all that was sprayed is found again.
// WARMSTEAD_SOAK multiplies the number of boxes.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day, dried, runs, soak } from '../../checks/box/law-runs.ts';
import { anyEnclosure, testMaterials } from '../../checks/box/random-enclosure.ts';
import { runBox, runStateFrom, startTally } from './run.ts';
import { buildModel, settleBox } from './simulate.ts';

const sprays = fc.record({
  waterGPerDay: fc.double({ min: 1, max: 600, noNaN: true }),
  atHours: fc.uniqueArray(fc.integer({ min: 0, max: 11 }), { minLength: 1, maxLength: 4 }),
});

describe('water in any box', { timeout: 120_000 * soak }, () => {
  test('no film and no air ever holds less than nothing, and what was sprayed is in the air or still lies there', () => {
    let driedUp = 0;
    fc.assert(
      fc.property(anyEnclosure, sprays, fc.boolean(), (any, misting, alone) => {
        const e = { ...(alone ? dried(any) : any), misting };
        const model = buildModel(e, testMaterials);
        const settled = settleBox(model, day({ ...e, misting: null }));
        const tally = startTally(model);
        let wasWet = false;
        const options = { stepS: 150, renewS: 300 };
        const end = runBox(model, e.room.winter, runStateFrom(model, settled), 0, 12, options, tally, (m) => {
          const { filmKg, ratio } = m.state.moisture;
          expect(filmKg).toBeGreaterThanOrEqual(0);
          for (const w of ratio) expect(w).toBeGreaterThanOrEqual(0);
          if (wasWet && filmKg === 0) driedUp++;
          wasWet = filmKg > 0;
        });
        const sprayedKg = misting.waterGPerDay / 1000;
        if (alone) expect(tally.waterInKg + end.moisture.filmKg).toBeCloseTo(sprayedKg, 9);
      }),
      runs(40),
    );
    expect(driedUp).toBeGreaterThan(0);
  });
});
