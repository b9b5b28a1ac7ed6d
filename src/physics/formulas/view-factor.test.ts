import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { viewFactorDisks } from './view-factor-element.ts';
import { viewFactorParallel } from './view-factor-parallel.ts';
import { viewFactorPerpendicular } from './view-factor-perpendicular.ts';
import { solidAngleSr, viewFactorPointToRectangle } from './view-factor-point.ts';

type Span = readonly [number, number];
const span = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }))
  .map(([from, size]): Span => [from, from + size]);
const distance = fc.double({ min: 0.05, max: 2, noNaN: true });
const size = ([from, to]: Span) => to - from;

describe('view factors', () => {
  it('are reciprocal between parallel rectangles', () => {
    fc.assert(
      fc.property(span, span, span, span, distance, (x1, y1, x2, y2, d) => {
        const there = size(x1) * size(y1) * viewFactorParallel({ x: x1, y: y1 }, { x: x2, y: y2 }, d);
        const back = size(x2) * size(y2) * viewFactorParallel({ x: x2, y: y2 }, { x: x1, y: y1 }, d);
        expect(there).toBeCloseTo(back, 10);
      }),
    );
  });
  it('add up when the target is cut in two, and stay within 0 and 1', () => {
    fc.assert(
      fc.property(span, span, span, span, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (a, o, b, p, cut) => {
        const middle = b[0] + cut * size(b);
        const to = (along: Span) => viewFactorPerpendicular({ along: a, out: o }, { along, out: p });
        expect(to([b[0], middle]) + to([middle, b[1]])).toBeCloseTo(to(b), 10);
        expect(to(b)).toBeLessThanOrEqual(1);
        expect(to(b)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('do not depend on the unit of length', () => {
    const small = viewFactorPerpendicular({ along: [0, 1], out: [0.2, 0.7] }, { along: [0.5, 2], out: [0, 0.4] });
    const large = viewFactorPerpendicular({ along: [0, 1000], out: [200, 700] }, { along: [500, 2000], out: [0, 400] });
    expect(large).toBeCloseTo(small, 10);
  });
  it('of a large near plate tend to one, of a point to half its sky', () => {
    expect(viewFactorParallel({ x: [0, 1], y: [0, 1] }, { x: [-50, 50], y: [-50, 50] }, 0.01)).toBeCloseTo(1, 3);
    expect(viewFactorPointToRectangle({ x: [-1e4, 1e4], y: [-1e4, 1e4] }, 0.1)).toBeCloseTo(0.5, 4);
    expect(solidAngleSr({ x: [-1, 1], y: [-1, 1] }, 1)).toBeCloseTo((4 * Math.PI) / 6, 12);
  });
  it('of discs are reciprocal', () => {
    expect(0.3 ** 2 * viewFactorDisks(0.3, 0.7, 0.5)).toBeCloseTo(0.7 ** 2 * viewFactorDisks(0.7, 0.3, 0.5), 12);
  });
});
