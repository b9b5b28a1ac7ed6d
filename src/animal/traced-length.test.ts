import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curveLengthPx, type Spot, tracedLength } from './traced-length.ts';

const errors = { clickMm: 2, shareFrac: 0.02 };
const ruler: readonly [Spot, Spot] = [
  { xPx: 0, yPx: 0 },
  { xPx: 300, yPx: 0 },
];
const circle = (radius: number, n: number): Spot[] =>
  Array.from({ length: n + 1 }, (_, i) => {
    const angle = (Math.PI * i) / n;
    return { xPx: radius * Math.cos(angle), yPx: radius * Math.sin(angle) };
  });

describe('a traced line', () => {
  test('straight: exactly its length, wherever the touches fell', () => {
    const line = [0, 100, 350, 900].map((xPx) => ({ xPx, yPx: 50 }));
    const found = tracedLength(ruler, 150, line, errors);
    if (!found.ok) throw new Error('refused');
    expect(found.value.lengthMm).toBeCloseTo(450, 6);
  });

  test('a half circle by ten touches comes out within half a percent', () => {
    expect(curveLengthPx(circle(400, 10))).toBeGreaterThan(Math.PI * 400 * 0.995);
    expect(curveLengthPx(circle(400, 10))).toBeLessThan(Math.PI * 400 * 1.005);
  });

  test('turning and moving the picture changes nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.integer({ min: -500, max: 500 }),
        (angle, shift) => {
          const turned = circle(200, 6).map(({ xPx, yPx }) => ({
            xPx: xPx * Math.cos(angle) - yPx * Math.sin(angle) + shift,
            yPx: xPx * Math.sin(angle) + yPx * Math.cos(angle),
          }));
          expect(curveLengthPx(turned)).toBeCloseTo(curveLengthPx(circle(200, 6)), 6);
        },
      ),
    );
  });

  test('a longer ruler makes the answer surer', () => {
    const error = (mm: number): number => {
      const found = tracedLength(
        [
          { xPx: 0, yPx: 0 },
          { xPx: mm, yPx: 0 },
        ],
        mm,
        circle(300, 8),
        errors,
      );
      return found.ok ? found.value.errorMm : Number.NaN;
    };
    expect(error(300)).toBeLessThan(error(100));
  });

  test('all that is missing is said at once', () => {
    const found = tracedLength([ruler[0], ruler[0]], 10, circle(10, 1), errors);
    if (found.ok) throw new Error('accepted');
    expect(found.faults.map((fault) => fault.field)).toEqual(['rulerMm', 'ruler', 'line']);
  });
});
