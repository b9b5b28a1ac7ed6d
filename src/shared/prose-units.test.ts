import { expect, it } from 'vitest';
import { measureFor, type UnitChoice } from './measure.ts';
import { proseInUnits } from './prose-units.ts';

const metric: UnitChoice = { book: 'en', temperature: 'C', length: 'cm', mass: 'g' };
const us = measureFor({ ...metric, temperature: 'F', length: 'in' });

it('leaves metric sentences alone', () => {
  const say = 'At 6.0 °C the warm hide is at 6.8 °C (6.6 to 6.9); 2 K under, 120 cm × 60 cm, 15 mm.';
  expect(proseInUnits(say, measureFor(metric))).toBe(say);
});

it('writes every temperature, range, difference and length of a sentence in the units read', () => {
  const check = (prose: string, expected: string) => expect(proseInUnits(prose, us)).toBe(expected);
  check('28.4 °C (27.1 to 29.9)', '83.1 °F (80.8 to 85.8)');
  check('30 to 32 °C', '86 to 90 °F');
  check('at −2 °C outside', 'at 28 °F outside');
  check(
    'at most 27 °C (25 °C and 2 K for a hot day, our choice)',
    'at most 81 °F (77 °F and 3.6 °F for a hot day, our choice)',
  );
  check(
    'At 6.0 °C the warm hide is at 6.8 °C; this animal needs 17.',
    'At 42.8 °F the warm hide is at 44.2 °F; this animal needs 63 °F.',
  );
  check('120 cm × 60 cm × 60 cm', '47.2 in × 23.6 in × 23.6 in');
  check('122 × 46 × 56 cm', '48.0 × 18.1 × 22.0 in');
  check('no gap over 5 mm', 'no gap over 0.2 in');
  check(
    'Start at 27.0 °C on the dial (likely 25.5 to 28.1 °C); trim.',
    'Start at 80.6 °F on the dial (likely 77.9 to 82.6 °F); trim.',
  );
  check('at most 35 °C, better 33 °C', 'at most 95 °F, better 91 °F');
  check('höchstens 25.5 bis 28.1 °C', 'höchstens 77.9 bis 82.6 °F');
  check('asks for 0.72 m² of floor', 'asks for 7.8 ft² of floor');
  check('0.50 to 1.00 m² of floor', '5.4 to 10.8 ft² of floor');
  check('90 to 150 cm² of floor, at least 6 cm high', '14 to 23 in² of floor, at least 2.4 in high');
  check('150 W/m²K and 0.5 W/K stay', '150 W/m²K and 0.5 W/K stay');
});

it('weighs in ounces when this person does', () => {
  const ounces = measureFor({ ...metric, mass: 'oz' });
  expect(proseInUnits('The bowl gives 120 g of water a day.', ounces)).toBe('The bowl gives 4.23 oz of water a day.');
  expect(proseInUnits('420 g on Jan 5, 2026, 8.5 g before', ounces)).toBe('14.82 oz on Jan 5, 2026, 0.30 oz before');
  expect(proseInUnits('0.8 g/kg and 5 groups stay', ounces)).toBe('0.8 g/kg and 5 groups stay');
});

it('reads figures that were written for a language already', () => {
  const german = measureFor({ book: 'de', temperature: 'F', length: 'in', mass: 'oz' });
  expect(proseInUnits('Nächte bis 8,5 °C, seit 05.01.2026, 10,5 cm', german)).toBe(
    'Nächte bis 47,3 °F, seit 05.01.2026, 4,1 in',
  );
});
