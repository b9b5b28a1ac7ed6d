// A note of an erasure is known again, whatever was written as the reason; another text is not.
import { expect, test } from 'vitest';
import { erasedNote, erasedOn } from './erased-note.ts';

test('a note is known again', () => {
  expect(erasedOn(erasedNote('2026-11-28', 'Mia', 'asked by letter\nof the 3rd'))).toBe('2026-11-28');
});

test.each(['', 'Flat above the bakery', 'erased on Monday by Mia because asked', 'it was erased on 2026-11-28 by Mia'])(
  'another text is none: %s',
  (text) => expect(erasedOn(text)).toBeNull(),
);
