// The facts said in another language: every text of data/ is looked up by its English, so that a fact whose English
// changes is untranslated at once, never wrongly translated. Leaves out which language somebody reads, and the titles of
// published sources, which are cited as they are called.

import type { Words } from '../shared/languages.ts';

/** English text of data/ to the same in another language: a file of data/words/. */
export type FactWords = Readonly<Record<string, string>>;

/** Keys of data/ whose texts people read; ids and words that a rule compares stay as they are. */
export const textKeys: ReadonlySet<string> = new Set([
  'commonName',
  'name',
  'title',
  'say',
  'note',
  'why',
  'notes',
  'place',
  'status',
  'decides',
  'topic',
  'sign',
  'guard',
  'unit',
  'value',
  'values',
]);

export const factWord = (words: FactWords, english: string): string =>
  Object.hasOwn(words, english) ? (words[english] ?? english) : english;

const taughtKey = 'fact:';
const ofTaught = new WeakMap<Words, FactWords>();

/** The texts of data/ among the words of a taught language. */
export function taughtFacts(words: Words): FactWords {
  const known = ofTaught.get(words);
  if (known !== undefined) return known;
  const facts = Object.entries(words).filter(([key]) => key.startsWith(taughtKey));
  const made = Object.fromEntries(facts.map(([key, said]) => [key.slice(taughtKey.length), said]));
  ofTaught.set(words, made);
  return made;
}

/** A copy of rows of data/ with their texts in the language of the words; what has no word there stays English. */
export function inWords<T>(rows: T, words: FactWords): T {
  return translated(rows, words, '') as T;
}

function translated(x: unknown, words: FactWords, key: string): unknown {
  if (typeof x === 'string') return textKeys.has(key) ? factWord(words, x) : x;
  // The entries of a list are told by the name of the list.
  if (Array.isArray(x)) return x.map((one) => translated(one, words, key));
  if (typeof x !== 'object' || x === null) return x;
  return Object.fromEntries(Object.entries(x).map(([name, one]) => [name, translated(one, words, name)]));
}
