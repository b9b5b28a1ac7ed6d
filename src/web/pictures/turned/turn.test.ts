// Laws of the turned view: the front view is the section, the view from above is the floor plan, a turn hides nothing.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { farSides, type Point, seenFrom } from './turn.ts';

const size = { x: 1.2, y: 0.6, z: 0.5 };
const metres = fc.double({ min: 0, max: 2, noNaN: true });
const point = fc.record({ x: metres, y: metres, z: metres });
const turn = fc.record({
  aroundDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  aboveDeg: fc.double({ min: 0, max: 90, noNaN: true }),
});
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

it('looks like the section from the front and like the floor plan from above', () => {
  const front = seenFrom({ aroundDeg: 0, aboveDeg: 0 }, size);
  expect(front({ x: 1, y: 0.1, z: 0.4 })).toMatchObject({ x: expect.closeTo(0.4), y: expect.closeTo(-0.15) });
  const above = seenFrom({ aroundDeg: 0, aboveDeg: 90 }, size);
  expect(above({ x: 1, y: 0.1, z: 0.4 })).toMatchObject({ x: expect.closeTo(0.4), y: expect.closeTo(0.2) });
});

it('keeps every distance when depth is counted too', () => {
  fc.assert(
    fc.property(turn, point, point, (at, a, b) => {
      const see = seenFrom(at, size);
      const [p, q] = [see(a), see(b)];
      expect(Math.hypot(p.x - q.x, p.y - q.y, p.depth - q.depth)).toBeCloseTo(apart(a, b), 9);
    }),
  );
});

it('sees the inside of three sides at most, never of two that face each other', () => {
  fc.assert(
    fc.property(turn, (at) => {
      const far = farSides(at, size);
      expect(far.length).toBeGreaterThan(0);
      expect(far.length).toBeLessThanOrEqual(3);
      for (const [a, b] of [
        ['front', 'back'],
        ['left', 'right'],
        ['top', 'bottom'],
      ] as const)
        expect(far.includes(a) && far.includes(b)).toBe(false);
    }),
  );
  expect(farSides({ aroundDeg: 30, aboveDeg: 20 }, size)).toEqual(['back', 'left', 'bottom']);
});
