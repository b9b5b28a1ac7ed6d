// The texts of data/ in another language, read once; English needs none.
import type { FactWords } from '../husbandry/fact-words.ts';
import { dataFile } from './data-files.ts';

const read = new Map<string, FactWords>();

/** @param language code of a file of data/words, or "en" */
export function factWords(language: 'en' | 'de'): FactWords {
  const known = read.get(language);
  if (known !== undefined) return known;
  const words = language === 'en' ? {} : (dataFile(`words/${language}.json`) as unknown as FactWords);
  read.set(language, words);
  return words;
}
