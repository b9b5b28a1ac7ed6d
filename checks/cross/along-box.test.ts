// Means over equal parts must be exact for columns of any width, and points must lie on the program's own lines.
import { describe, expect, test } from 'vitest';
import { type Along, airAt, lengthMean, partMeans } from './along-box.ts';

const edgeM = [0, 0.1, 0.35, 0.4, 1];
const middles = edgeM.slice(1).map((e, i) => (e + edgeM[i]!) / 2);
const along: Along = {
  edgeM,
  layerZM: [0.15, 0.45],
  columns: { xM: middles, floorC: [], ceilingC: [], rhPct: [], airC: [middles, middles.map((x) => x + 3)] },
};

describe('reading a box at the places of another program', () => {
  test('parts are means by overlap', () => {
    const [first, second] = partMeans(along, [10, 20, 30, 40], 2);
    expect(first).toBeCloseTo((0.1 * 10 + 0.25 * 20 + 0.05 * 30 + 0.1 * 40) / 0.5, 12);
    expect(second).toBeCloseTo(40, 12);
  });

  test('one part is the mean of all', () => {
    expect(lengthMean(along, [10, 20, 30, 40])).toBeCloseTo(0.1 * 10 + 0.25 * 20 + 0.05 * 30 + 0.6 * 40, 12);
  });

  test('a straight profile is met at any point, and carried on below the lowest layer', () => {
    expect(airAt(along, 0.3, 0.15)).toBeCloseTo(0.3, 12);
    expect(airAt(along, 0.3, 0.05)).toBeCloseTo(0.3 - 1, 12);
  });
});
