// Finding the day on which a heater comes off its stop, on duties that fall in a straight line as the room grows warmer.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SeasonPoint, turningPoints } from './turning-point.ts';

const season = (turnFrac: number, perSeason: number) => {
  let solves = 0;
  const at = (seasonFrac: number): SeasonPoint => ({
    seasonFrac,
    dutyFrac: Math.max(0, Math.min(1, 1 - (seasonFrac - turnFrac) * perSeason)),
  });
  const found = turningPoints([at(0), at(0.5), at(1)], (frac) => {
    solves++;
    return at(frac);
  });
  return { found, solves };
};

describe('the day on which the heater comes off its stop', () => {
  it('is found to within a twelfth of the way from winter to summer in four steps, wherever it lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.97, noNaN: true }),
        fc.double({ min: 0.3, max: 1.6, noNaN: true }),
        (turnFrac, perSeason) => {
          fc.pre((1 - turnFrac) * perSeason > 0.01);
          const { found, solves } = season(turnFrac, perSeason);
          // the ends and the middle are judged anyway
          const days = [0, 0.5, 1, ...found.map((p) => p.seasonFrac)];
          expect(solves).toBeLessThanOrEqual(4);
          expect(Math.min(...days.map((frac) => Math.abs(frac - turnFrac)))).toBeLessThan(0.08);
        },
      ),
      { numRuns: 500, seed: 7 },
    );
  });

  it('is not looked for where the heater has something in hand in winter, or is still flat out on the hottest day', () => {
    expect(season(-0.2, 0.8)).toEqual({ found: [], solves: 0 });
    expect(season(1.2, 0.8)).toEqual({ found: [], solves: 0 });
  });
});
