import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bowlEvaporation, bowlEvaporationAtWater, bowlSurplusWPerM2 } from './evaporation-bowl.ts';
import { evaporationNaturalShahKgPerM2H } from './evaporation-pool.ts';
import { dewPointCFromRh } from './moist-air.ts';
import { wetBulbC } from './wet-bulb.ts';

const airs = fc.record({
  diameterM: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
  airC: fc.double({ min: 12, max: 40, noNaN: true }),
  rhFrac: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
});

describe('bowl', () => {
  it('rests between wet bulb and air when the walls are as warm as the air', () => {
    fc.assert(
      fc.property(airs, (air) => {
        const bowl = bowlEvaporation({ ...air, surroundingsC: air.airC });
        expect(bowl.waterC).toBeLessThan(air.airC);
        expect(bowl.waterC).toBeGreaterThan(wetBulbC(air.airC, air.rhFrac) - 0.5);
        expect(bowl.gPerH).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });
  it('takes dew when its water is colder than the dew point, and gives water when warmer', () => {
    fc.assert(
      fc.property(airs, (air) => {
        const dew = dewPointCFromRh(air.airC, air.rhFrac);
        expect(bowlEvaporationAtWater({ ...air, surroundingsC: air.airC }, dew - 3).gPerH).toBeLessThan(0);
        expect(bowlEvaporationAtWater({ ...air, surroundingsC: air.airC }, dew + 4).gPerH).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });
  it('has one state at rest, whatever the air and the walls', { timeout: 60_000 }, () => {
    const states = fc.record({
      diameterM: fc.double({ min: 0.05, max: 1, noNaN: true }),
      airC: fc.double({ min: 5, max: 50, noNaN: true }),
      rhFrac: fc.double({ min: 0, max: 1, noNaN: true }),
      wallsAboveK: fc.double({ min: -20, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(states, ({ wallsAboveK, ...air }) => {
        const bowl = { ...air, surroundingsC: air.airC + wallsAboveK };
        const low = Math.min(bowl.airC, bowl.surroundingsC) - 40;
        const high = Math.max(bowl.airC, bowl.surroundingsC) + 40;
        let changes = 0;
        let before = bowlSurplusWPerM2(bowl, low);
        for (let waterC = low + 0.1; waterC <= high; waterC += 0.1) {
          const now = bowlSurplusWPerM2(bowl, waterC);
          if (now > 0 !== before > 0) changes++;
          before = now;
        }
        expect(changes).toBe(1);
      }),
      { numRuns: Math.round(5000 * Number(process.env.WARMSTEAD_SOAK ?? 1)), seed: 11 },
    );
  });
  it('changes without a jump where the air over it turns', () => {
    const at = (airC: number) => bowlEvaporation({ diameterM: 0.15, airC, rhFrac: 0.2, surroundingsC: 41 });
    let before = at(25);
    for (let airC = 25.05; airC < 45; airC += 0.05) {
      const now = at(airC);
      expect(Math.abs(now.waterC - before.waterC)).toBeLessThan(0.1);
      expect(Math.abs(now.gPerH / before.gPerH - 1)).toBeLessThan(0.01);
      before = now;
    }
  });
  it('evaporates more in drier air', () => {
    const at = (rhFrac: number) => bowlEvaporation({ diameterM: 0.15, airC: 28, rhFrac, surroundingsC: 27 }).gPerH;
    expect(at(0.3)).toBeGreaterThan(at(0.6));
  });
});

describe('pool', () => {
  it('does not rise by itself when the air is much warmer', () => {
    expect(evaporationNaturalShahKgPerM2H(22, 35, 0.6)).toBe(0);
  });
});
