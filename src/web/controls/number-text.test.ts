// Numbers as people write them, at an English and at a German counter.
import { describe, expect, it } from 'vitest';
import { numberFromText, numberMarks, stepped } from './number-text.ts';

const english = numberMarks('en-GB');
const german = numberMarks('de-DE');

function check(typed: string, inEnglish: number | null, inGerman: number | null = inEnglish): void {
  it(`"${typed}"`, () => {
    expect(numberFromText(typed, english)).toBe(inEnglish);
    expect(numberFromText(typed, german)).toBe(inGerman);
  });
}

describe('a number as written', () => {
  check('', null);
  check('  ', null);
  check('115', 115);
  check('23.5', 23.5);
  check('23,5', 23.5);
  check('-2', -2);
  check('−2,5', -2.5);
  check('.5', 0.5);
  check('23.', 23);
  check('0,500', 0.5);
  check('1,234', 1234, 1.234);
  check('1.234', 1.234, 1234);
  check('22,1250', 22.125);
  check('1,234.5', 1234.5);
  check('1.234,5', 1234.5);
  check('1,234,567', 1234567);
  check('12 500', 12500);
  check("12'500", 12500);
  check('1,2,3', Number.NaN);
  check('1.2,3', Number.NaN);
  check('twenty', Number.NaN);
  check('2e3', Number.NaN);
  check('--2', Number.NaN);
  check('-', Number.NaN);
});

describe('a step', () => {
  it('keeps within the limits and begins at one of them', () => {
    expect(stepped(16.5, 1, -10, 45)).toBe(17.5);
    expect(stepped(44.6, 1, -10, 45)).toBe(45);
    expect(stepped(-9.5, -1, -10, 45)).toBe(-10);
    expect(stepped(null, 1, -10, 45)).toBe(-10);
    expect(stepped(null, -1, -10, 45)).toBe(45);
  });
});
