import fc from 'fast-check';
import { expect, it } from 'vitest';
import { spreadAlong } from './spread.ts';

it('leaves labels that do not touch where they belong', () => {
  expect(spreadAlong([100, 300], 50, 0, 400)).toEqual([100, 300]);
});

it('keeps the order of the places they name', () => {
  const [right, left] = spreadAlong([200, 190], 80, 0, 400);
  expect(left).toBeLessThan(right ?? 0);
});

it('never lets labels overlap or leave the line while they fit', () => {
  const centres = fc.array(fc.double({ min: -50, max: 450, noNaN: true }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(centres, (wanted) => {
      const placed = [...spreadAlong(wanted, 80, 0, 400)].sort((a, b) => a - b);
      for (let i = 0; i < placed.length; i++) {
        expect(placed[i]).toBeGreaterThanOrEqual(40 - 1e-9);
        expect(placed[i]).toBeLessThanOrEqual(360 + 1e-9);
        if (i > 0) expect((placed[i] ?? 0) - (placed[i - 1] ?? 0)).toBeGreaterThanOrEqual(80 - 1e-9);
      }
    }),
  );
});
