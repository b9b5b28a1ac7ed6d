import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadCareFacts } from '../records/animal-facts.ts';
import { massFinding, nextWeighing, restOn } from './mass-series.ts';
import { entry } from './testing/entry.ts';

const { facts } = loadCareFacts();
const two = (first: number, second: number, from = '2026-03-01', to = '2026-04-01') => [
  entry('weighing', from, { massG: first }),
  entry('weighing', to, { massG: second }),
];

describe('loss against the own series', () => {
  test.each([
    [1000, 951, 'holds', false],
    [1000, 950, 'holds', true],
    [1000, 900.1, 'holds', true],
    [1000, 900, 'fails', true],
    [1000, 1200, 'holds', false],
  ])('from %d g to %d g: %s', (first, second, verdict, watch) => {
    expect(massFinding(two(first, second), facts, '2026-04-01')).toMatchObject({ verdict, watch });
  });

  test('one weighing is not known', () => {
    expect(massFinding([entry('weighing', '2026-03-01', { massG: 5 })], facts, '2026-04-01').verdict).toBe('not-known');
  });

  test('the best is looked for 180 days back and no further', () => {
    expect(massFinding(two(1000, 800, '2026-01-01', '2026-06-30'), facts, '2026-07-01').verdict).toBe('fails');
    expect(massFinding(two(1000, 800, '2025-12-31', '2026-06-30'), facts, '2026-07-01').verdict).toBe('holds');
  });

  test('winter rest and laying are not judged, but watched; after their end it is judged again', () => {
    const rest = entry('rest', '2026-03-10', { step: 'start', why: 'winter' });
    const over = entry('rest', '2026-03-20', { step: 'end', why: 'winter' });
    expect(massFinding([...two(1000, 850), rest], facts, '2026-04-01')).toMatchObject({
      verdict: 'not-known',
      watch: true,
    });
    expect(massFinding([...two(1000, 850), rest, over], facts, '2026-04-01').verdict).toBe('fails');
    expect(restOn([rest, over], '2026-03-15')).toBe('winter');
  });

  test('an examination’s mass counts too', () => {
    const looked = entry('examination', '2026-04-01', { answers: {}, massG: 850, outline: '', note: '' });
    expect(massFinding([entry('weighing', '2026-03-01', { massG: 1000 }), looked], facts, '2026-04-01').verdict).toBe(
      'fails',
    );
  });

  test('the unit of mass does not matter', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        (g, share) => {
          fc.pre(Math.abs(share - 0.9) > 1e-9 && Math.abs(share - 0.95) > 1e-9);
          const plain = massFinding(two(g, g * share), facts, '2026-04-01');
          expect(massFinding(two(g * 7, g * 7 * share), facts, '2026-04-01').verdict).toBe(plain.verdict);
        },
      ),
    );
  });
});

test('after a refusal or a loss it is weighed weekly, else by age', () => {
  const calm = two(100, 100);
  expect(nextWeighing(calm, facts, false, '2026-04-02')).toEqual({ on: '2026-05-01', overdue: false });
  expect(nextWeighing(calm, facts, true, '2026-04-16')).toEqual({ on: '2026-04-15', overdue: true });
  const refused = entry('feeding', '2026-04-01', {
    preyId: 'rat-small',
    preyMassG: null,
    count: 1,
    outcome: 'refused',
  });
  expect(nextWeighing([...calm, refused], facts, false, '2026-04-02').on).toBe('2026-04-08');
});
