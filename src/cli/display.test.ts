import { expect, it } from 'vitest';
import { celsiusFromF, displayFor, fahrenheitFromC } from './display.ts';
import { wantsColour } from './terminal.ts';
import { widthOf, wrapped } from './wrap.ts';

const us = displayFor('us', 'en');

it.each([
  ['30 to 32 °C', '86 to 90 °F'],
  ['31.0 °C (29.9 to 32.1)', '87.8 °F (85.8 to 89.8)'],
  ['at most 38 °C, better 35', 'at most 100 °F, better 95 °F'],
  ['at most 27 °C (25 °C and 2 K for a hot day)', 'at most 81 °F (77 °F and 3.6 °F for a hot day)'],
  ['-5 °C', '23 °F'],
  ['120 cm × 60 cm, a gap of 12 mm', '47.2 in × 23.6 in, a gap of 0.5 in'],
  ['42.7 % (40.5 to 51.5)', '42.7 % (40.5 to 51.5)'],
])('%s reads %s in US units', (metric, expected) => {
  expect(us.prose(metric)).toBe(expected);
  expect(displayFor('metric', 'en').prose(metric)).toBe(metric);
});

it('converts there and back', () => {
  for (const valueC of [-40, 0, 37, 100]) expect(celsiusFromF(fahrenheitFromC(valueC))).toBeCloseTo(valueC, 12);
  expect(fahrenheitFromC(-40)).toBe(-40);
});

it('writes numbers as the language does', () => {
  expect(displayFor('metric', 'de').temp(21.44)).toBe('21,4 °C');
  expect(displayFor('metric', 'en').temp(21.46)).toBe('21.5 °C');
  expect(displayFor('metric', 'en').temp(-0.01)).toBe('0.0 °C');
  expect(us.temp(30)).toBe('86 °F');
  expect(us.length(1.2)).toBe('47.2 in');
});

it.each([
  [{}, true, true],
  [{}, false, false],
  [{ NO_COLOR: '1' }, true, false],
  [{ NO_COLOR: '' }, true, true],
  [{ FORCE_COLOR: '1' }, false, true],
  [{ FORCE_COLOR: '0' }, true, false],
  [{ NO_COLOR: '1', FORCE_COLOR: '1' }, true, false],
  [{ TERM: 'dumb' }, true, false],
])('colour for %j, terminal %s: %s', (env, isTerminal, expected) =>
  expect(wantsColour(env, isTerminal)).toBe(expected),
);

it('wraps words within the width and indents what follows', () => {
  const lines = wrapped('one two three four five six', 14, '  -> ');
  expect(lines).toEqual(['  -> one two', '     three', '     four five', '     six']);
  for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(14);
});
