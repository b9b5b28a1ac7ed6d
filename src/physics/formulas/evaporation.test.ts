import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bowlEvaporation, bowlEvaporationAtWater } from './evaporation-bowl.ts';
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
