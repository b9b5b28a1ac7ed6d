// The texts of data/ in another language, read once; English needs none.
import { type FactWords, taughtFacts } from '../husbandry/fact-words.ts';
import { type Language, ownLanguages, taughtWords } from '../shared/languages.ts';
import { dataFile } from './data-files.ts';

const read = new Map<string, FactWords>();

/** @param language code of a file of data/words, or "en" */
export function factWords(language: Language): FactWords {
  if (!ownLanguages.includes(language)) return taughtFacts(taughtWords(language));
  const known = read.get(language);
  if (known !== undefined) return known;
  const words = language === 'en' ? {} : (dataFile(`words/${language}.json`) as unknown as FactWords);
  read.set(language, words);
  return words;
}
