import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, daysBetween, isIsoDate, monthOf } from './calendar.ts';

test.each([
  ['2026-02-28', 1, '2026-03-01'],
  ['2024-02-28', 1, '2024-02-29'],
  ['2026-12-31', 1, '2027-01-01'],
  ['2026-03-29', -1, '2026-03-28'], // the night the clocks change is a day like any other
])('%s and %i days is %s', (from, days, to) => {
  expect(addDays(from, days)).toBe(to);
  expect(daysBetween(from, to)).toBe(days);
});

test.each(['2026-02-29', '2026-13-01', '2026-1-1', '', 'yesterday', 20260101])('"%s" is no day', (text) => {
  expect(isIsoDate(text)).toBe(false);
});

test('adding and counting are each other’s opposite', () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 40_000 }), fc.integer({ min: -9_000, max: 9_000 }), (start, days) => {
      const from = addDays('1970-01-01', start);
      expect(isIsoDate(from)).toBe(true);
      expect(daysBetween(from, addDays(from, days))).toBe(days);
    }),
  );
});

test('the month is counted from one', () => expect(monthOf('2026-01-31')).toBe(1));
