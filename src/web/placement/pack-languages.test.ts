import { expect, test } from 'vitest';
import { packLanguages as printed } from '../../desk/pack/words/books.ts';
import { packLanguages } from './pack-languages.ts';

test('the page offers every language that a pack is written in, and no other', () => {
  expect([...packLanguages].sort()).toEqual([...printed].sort());
});
