import { expect, test } from 'vitest';
import { measureFor } from '../../shared/measure.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { de } from './de.ts';
import { en, type ReasonKey } from './en.ts';
import { type Reader, sayDay, sayReason } from './say.ts';

const blanksOf = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

test('both languages say the same with the same blanks', () => {
  expect(Object.keys(de).sort()).toEqual(Object.keys(en).sort());
  for (const key of Object.keys(en) as ReasonKey[]) expect(blanksOf(de[key]), key).toEqual(blanksOf(en[key]));
});

test('blanks are filled, days written as the reader is used to', () => {
  const why = { key: 'exam.fit', blanks: { on: '2026-01-05' } } as const;
  expect(sayReason(why, 'en')).toBe('Looked over on 5 Jan 2026: nothing that holds it.');
  expect(sayReason(why, 'de')).toBe('Untersucht am 05.01.2026: nichts, was es zurückhält.');
  expect(sayDay('soon', 'de')).toBe('soon');
  expect(sayDay('2026-01-05', 'en-US')).toBe('Jan 5, 2026');
});

test('masses and temperatures come in the units of the reader, what a person typed stays', () => {
  const measure = measureFor({ book: 'en', temperature: 'F', length: 'in', mass: 'oz' });
  const reader: Reader = { days: 'en-US', prose: (text) => proseInUnits(text, measure) };
  const steady = { last: 420, lastOn: '2026-01-05', best: 425, bestOn: '2025-12-29' };
  expect(sayReason({ key: 'mass.steady', blanks: steady }, 'en', reader)).toBe(
    '14.82 oz on Jan 5, 2026; no loss against its best (14.99 oz, Dec 29, 2025).',
  );
  const warm = { value: 35, low: 30, high: 32 };
  expect(sayReason({ key: 'round.warmAirC.high', blanks: warm }, 'en', reader)).toBe(
    'Warm end 95 °F, wanted 86 to 90 °F.',
  );
  expect(sayReason({ key: 'round.look', blanks: { note: 'gap of 5 mm' } }, 'en', reader)).toBe('Look: gap of 5 mm');
});
