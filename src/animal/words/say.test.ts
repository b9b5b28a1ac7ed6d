import { expect, test } from 'vitest';
import { de } from './de.ts';
import { en, type ReasonKey } from './en.ts';
import { sayDay, sayReason } from './say.ts';

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
});
