// How far is a language: what is said, open, made from an English that has changed since, or cannot be used.
import type { LanguagePairs } from '../../src/records/languages.ts';
import { blanksOf, isPattern } from '../../src/shared/pattern.ts';

export interface LanguageCount {
  readonly said: number;
  readonly open: readonly string[];
  /** The English is another one now. */
  readonly changed: readonly string[];
  /** Bracket that does not close, or other blanks than the English has. */
  readonly wrong: readonly string[];
  /** Keys that nothing says any more. */
  readonly unknown: readonly string[];
}

const sameBlanks = (english: string, said: string): boolean =>
  isPattern(said) && blanksOf(said).join() === blanksOf(english).join();

export function countLanguage(every: Readonly<Record<string, string>>, pairs: LanguagePairs): LanguageCount {
  const keys = Object.keys(every);
  const saidOf = (key: string): string => pairs[key]?.[1] ?? '';
  const said = keys.filter((key) => saidOf(key) !== '');
  return {
    said: said.length,
    open: keys.filter((key) => saidOf(key) === ''),
    changed: said.filter((key) => pairs[key]?.[0] !== every[key]),
    wrong: said.filter((key) => !sameBlanks(every[key]!, saidOf(key))),
    unknown: Object.keys(pairs).filter((key) => !Object.hasOwn(every, key)),
  };
}

/** The same file with every key of today: what was said stays beside the English it was made from. */
export function withEveryKey(every: Readonly<Record<string, string>>, pairs: LanguagePairs): LanguagePairs {
  return Object.fromEntries(
    Object.entries(every).map(([key, english]) => {
      const [madeFrom, said] = pairs[key] ?? [english, ''];
      return [key, [said === '' ? english : madeFrom, said] as const];
    }),
  );
}
