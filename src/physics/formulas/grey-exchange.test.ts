import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { greyNetFluxWPerM2, greyParallelFluxWPerM2 } from './grey-exchange.ts';

const facing = [
  [0, 1],
  [1, 0],
];

describe('grey exchange', () => {
  it('moves nothing between faces of one temperature', () => {
    const flux = greyNetFluxWPerM2(
      [
        { tempC: 30, emissivity: 0.9 },
        { tempC: 30, emissivity: 0.1 },
      ],
      facing,
    );
    for (const q of flux) expect(Math.abs(q)).toBeLessThan(1e-10);
  });
  it('agrees with the closed form for two faces, and the warm one loses', () => {
    const temp = fc.double({ min: -20, max: 400, noNaN: true });
    const emissivity = fc.double({ min: 0.03, max: 1, noNaN: true });
    fc.assert(
      fc.property(temp, emissivity, temp, emissivity, (t1, e1, t2, e2) => {
        const [first = 0, second = 0] = greyNetFluxWPerM2(
          [
            { tempC: t1, emissivity: e1 },
            { tempC: t2, emissivity: e2 },
          ],
          facing,
        );
        const closed = greyParallelFluxWPerM2(t1, e1, t2, e2);
        expect(Math.abs(first - closed)).toBeLessThan(1e-7);
        expect(Math.abs(first + second)).toBeLessThan(1e-7);
        if (t1 > t2 + 0.01) expect(first).toBeGreaterThan(0);
      }),
    );
  });
});
