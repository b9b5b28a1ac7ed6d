import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import { askedBy, covers, measure, servesUpToM } from './space.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const standards = Object.values(facts.standards);
const anyStandard = fc.constantFrom(...standards);
const side = fc.double({ min: 0.15, max: 3, noNaN: true });
const anyBox = fc.record({ lengthM: side, depthM: side, heightM: side });
const anyLength = fc.double({ min: 0.1, max: 3, noNaN: true });
const meets = (
  rule: (typeof standards)[number]['rule'],
  length: number,
  box: { lengthM: number; depthM: number; heightM: number },
) => measure(askedBy(rule, length), box).short.length === 0;

describe('space', () => {
  test('a box larger on every side never fails where the smaller one held', () => {
    fc.assert(
      fc.property(anyStandard, anyLength, anyBox, fc.double({ min: 1, max: 2, noNaN: true }), (s, length, box, by) => {
        const larger = { lengthM: box.lengthM * by, depthM: box.depthM * by, heightM: box.heightM * by };
        return !meets(s.rule, length, box) || meets(s.rule, length, larger);
      }),
    );
  });

  test('a longer snake never needs less', () => {
    fc.assert(
      fc.property(
        anyStandard,
        anyLength,
        anyBox,
        fc.double({ min: 1, max: 2, noNaN: true }),
        (s, length, box, by) => !meets(s.rule, length * by, box) || meets(s.rule, length, box),
      ),
    );
  });

  test('turning the box round changes nothing', () => {
    fc.assert(
      fc.property(
        anyStandard,
        anyLength,
        anyBox,
        (s, length, box) =>
          meets(s.rule, length, box) === meets(s.rule, length, { ...box, lengthM: box.depthM, depthM: box.lengthM }),
      ),
    );
  });

  test('more animals never need less', () => {
    fc.assert(
      fc.property(anyStandard, anyLength, anyBox, fc.integer({ min: 1, max: 6 }), (s, length, box, n) => {
        const short = (k: number) => measure(askedBy(s.rule, length, k), box).short.length;
        return short(n + 1) > 0 || short(n) === 0;
      }),
    );
  });

  test('what a box serves up to is met there and not a centimetre further', () => {
    fc.assert(
      fc.property(anyStandard, anyBox, (s, box) => {
        const upTo = servesUpToM(s, box);
        const end = Math.min(s.toLengthM ?? 5, 5);
        return (
          (upTo < 0.05 || meets(s.rule, upTo, box)) &&
          (upTo + 0.01 > end + 1e-9 || !meets(s.rule, Math.max(0.05, upTo + 0.01), box))
        );
      }),
    );
  });

  test('a tolerated shortfall is named, a larger one fails', () => {
    const rule = facts.standards['de-royal']!.rule;
    const asked = askedBy(rule, 1.3);
    const box = (lengthM: number) => ({ lengthM, depthM: 0.65, heightM: 0.98 });
    expect(measure(asked, box(1.3))).toMatchObject({ short: [], tolerated: [] });
    expect(measure(asked, box(1.17))).toMatchObject({ short: [], tolerated: [{ side: 'length' }] });
    expect(measure(asked, box(1.16)).short).toMatchObject([{ side: 'length', asked: 1.3, found: 1.16 }]);
  });

  test('height is capped where the standard caps it', () => {
    expect(askedBy(facts.standards['de-boa-large']!.rule, 3).heightM).toBe(2);
  });

  test.each([
    ['de-boa-small', 'boa', false, 1.5, true],
    ['de-boa-small', 'boa', false, 1.51, false],
    ['de-boa-large', 'boa', false, 1.5, false],
    ['de-boa-large', 'boa', false, 1.51, true],
    ['de-boa-large', 'corn', false, 1.51, false],
    ['at-ground', 'milk', false, 2.5, true],
    ['at-ground', 'milk', true, 1, false],
    ['at-climb', 'rat', true, 1, true],
    ['at-climb', 'rat', true, 2.51, false],
    ['home-third', 'anything', true, 4, true],
  ])('%s for %s (climbs %s) of %s m: %s', (id, speciesId, climbs, length, expected) => {
    expect(covers(facts.standards[id]!, speciesId, climbs, length)).toBe(expected);
  });
});
