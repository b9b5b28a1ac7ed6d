import { describe, expect, test } from 'vitest';
import { loadCareFacts } from '../records/animal-facts.ts';
import { fitFor, type LengthMassFit, sizeCheck } from './size-check.ts';

const fits = loadCareFacts().facts.lengthMass;

describe('which fit is used', () => {
  test.each([
    ['svl', 'Colubridae', 'Colubridae'],
    ['svl', 'Boidae', 'Boidae'],
    ['svl', 'Pythonidae', 'Boidae+Pythonidae'], // six animals are too few
    ['total', 'Pythonidae', 'Pythonidae'], // twelve are enough
    ['svl', 'Natricidae', 'all'],
  ] as const)('%s of %s: %s', (measure, family, group) => {
    expect(fitFor(fits, measure, family)?.group).toBe(group);
  });
});

test('both sides of the middle nine tenths', () => {
  const fit = fitFor(fits, 'svl', 'Colubridae') as LengthMassFit;
  const { lowG, highG, expectedG } = sizeCheck(fit, 900, 200);
  expect(highG / expectedG).toBeCloseTo(10 ** (1.645 * 0.254), 6);
  expect(sizeCheck(fit, 900, lowG * 1.001).plausible).toBe(true);
  expect(sizeCheck(fit, 900, lowG * 0.999).plausible).toBe(false);
  expect(sizeCheck(fit, 900, highG * 0.999).plausible).toBe(true);
  expect(sizeCheck(fit, 900, highG * 1.001).plausible).toBe(false);
});

test('a length beyond the fitted animals is said', () => {
  const fit = fitFor(fits, 'svl', 'Colubridae') as LengthMassFit;
  expect(sizeCheck(fit, 1695, 500).outside).toBe(false);
  expect(sizeCheck(fit, 1696, 500).outside).toBe(true);
});
