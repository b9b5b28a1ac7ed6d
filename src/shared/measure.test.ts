import fc from 'fast-check';
import { expect, it } from 'vitest';
import { measureFor, type QuantityKind, shownFromStored, storedFromShown, type UnitChoice } from './measure.ts';

const us: UnitChoice = { book: 'en', temperature: 'F', length: 'in', mass: 'oz' };
const kinds: readonly QuantityKind[] = ['temperature', 'difference', 'length', 'power', 'mass', 'percent'];

it('comes back from the shown unit to what was stored', () => {
  fc.assert(
    fc.property(fc.constantFrom(...kinds), fc.double({ min: -100, max: 1000, noNaN: true }), (kind, stored) => {
      expect(storedFromShown(kind, shownFromStored(kind, stored, us), us)).toBeCloseTo(stored, 9);
    }),
  );
});

it('knows fixed points', () => {
  expect(shownFromStored('temperature', 100, us)).toBe(212);
  expect(shownFromStored('difference', 10, us)).toBe(18);
  expect(shownFromStored('length', 0.0254, us)).toBe(1);
  expect(shownFromStored('mass', 453.59237, us)).toBe(16);
  expect(measureFor(us).text('mass', 100)).toBe('3.53\u00a0oz');
});

it('writes numbers and clock times as the language does', () => {
  const german = measureFor({ book: 'de', temperature: 'C', length: 'cm', mass: 'g' });
  expect(german.text('temperature', 28.44)).toBe('28,4\u00a0°C');
  expect(german.text('temperature', -0.01)).toBe('0,0\u00a0°C');
  expect(german.text('temperature', -2)).toBe('−2,0\u00a0°C');
  expect(german.clock(6.25)).toBe('06:15');
  expect(measureFor(us).clock(18.5)).toMatch(/^6:30\sPM$/);
});
