import { describe, expect, it } from 'vitest';
import { blanksOf, filledPattern, isPattern, withTextChanged } from './pattern.ts';

describe('filledPattern', () => {
  it('fills every blank and leaves an unknown one visible', () => {
    expect(filledPattern('{a} and {b} and {a}', { a: 1, b: 'two' }, 'en')).toBe('1 and two and 1');
    expect(filledPattern('{a} and {c}', { a: 1 }, 'en')).toBe('1 and {c}');
  });

  it('leaves a bracket that a person typed as it is', () => {
    expect(filledPattern('{name} sits', { name: '{ # } {a}' }, 'en')).toBe('{ # } {a} sits');
  });

  it('counts by the rules of each language', () => {
    const czech = '{n, plural, one {# had} few {# hadi} many {# hada} other {# hadů}}';
    const counted = (n: number | string) => filledPattern(czech, { n }, 'cs');
    expect([1, 2, 4, 5, '1,5', 0].map(counted)).toEqual(['1 had', '2 hadi', '4 hadi', '5 hadů', '1,5 hada', '0 hadů']);
    const slovene = '{n, plural, one {#a} two {#b} few {#c} other {#d}}';
    expect([1, 2, 3, 5, 101, 102].map((n) => filledPattern(slovene, { n }, 'sl'))).toEqual([
      '1a',
      '2b',
      '3c',
      '5d',
      '101a',
      '102b',
    ]);
  });

  it('takes an exact count before a plural, and a word by its name', () => {
    const pattern =
      '{n, plural, =0 {none} one {# box} other {# boxes}} at the {end, select, warm {warm} other {cool}} end';
    expect(filledPattern(pattern, { n: 0, end: 'warm' }, 'en')).toBe('none at the warm end');
    expect(filledPattern(pattern, { n: '2', end: 'x' }, 'en')).toBe('2 boxes at the cool end');
  });

  it('counts a number that was written for a reader', () => {
    const pattern = '{n, plural, one {# row} other {# rows}}';
    expect(filledPattern(pattern, { n: '1.001' }, 'en')).toBe('1.001 rows');
    expect(filledPattern(pattern, { n: '1' }, 'en')).toBe('1 row');
    expect(filledPattern(pattern, { n: 'many' }, 'en')).toBe('many rows');
  });
});

describe('a pattern', () => {
  it.each(['{a', '{a, plural, one {x}}', '{a, sum, other {x}}', 'a}', '{a, plural, other {x}'])('%s is none', (bad) => {
    expect(isPattern(bad)).toBe(false);
  });

  it('names the blanks of its branches too', () => {
    expect(blanksOf('{b} {n, plural, one {{a}} other {{c} #}}')).toEqual(['a', 'b', 'c', 'n']);
  });

  it('can have its text changed without its brackets', () => {
    expect(withTextChanged('one {a} {n, plural, one {two} other {three #}}', (text) => text.toUpperCase())).toBe(
      'ONE {a} {n, plural, one {TWO} other {THREE #}}',
    );
  });
});
