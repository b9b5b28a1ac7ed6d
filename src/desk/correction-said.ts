// What was corrected, in words: the field or kind of entry, what it said and what it says now. Leaves out when and by whom.
import { entriesDe } from '../animal/words/entries-de.ts';
import { entriesEn } from '../animal/words/entries-en.ts';
import { sayPrey } from '../animal/words/prey.ts';
import { choiceWords, fieldWords } from '../animal/words/register.ts';
import { sayEntry } from '../animal/words/say-entry.ts';
import { factWord } from '../husbandry/fact-words.ts';
import { allFacts } from '../records/animal-facts.ts';
import { factWords } from '../records/fact-words.ts';
import { bookIn, type Language, spokenIn } from '../shared/languages.ts';
import type { Correction } from './inspect-register.ts';
import type { PaperReader } from './paper-units.ts';

export interface CorrectionSaid {
  readonly what: string;
  readonly was: string;
  /** Null: it was withdrawn. */
  readonly now: string | null;
}

export function correctionSaid(one: Correction, language: Language, reader: PaperReader): CorrectionSaid {
  const words = entryWords(language);
  const speech = {
    word: (key: string) => words[key] ?? null,
    prey: (preyId: string) => sayPrey(preyId, language),
    measure: reader.measure,
  };
  const said = (value: unknown): string =>
    typeof value === 'string' ? registerValueSaid(one.what, value, language, reader) : sayEntry(value, speech);
  const field = Object.hasOwn(fieldWords, one.what) ? fieldWords[one.what as keyof typeof fieldWords] : null;
  const isWithdrawn = one.now === '' || one.now === null;
  return {
    what: field === null ? (words[`entry.${one.what}`] ?? one.what) : spokenIn(field, language),
    was: said(one.was),
    now: isWithdrawn ? null : said(one.now),
  };
}

const entryWords = (language: Language): Readonly<Record<string, string>> =>
  bookIn('web', language, { en: entriesEn, de: entriesDe });

/** Why it was moved: the program's own word in this language, or as somebody typed it. */
export const whyMoved = (why: string, language: Language): string =>
  why === 'arrival' ? (entryWords(language)['word.arrival'] ?? why) : why;

/** A value of the register: a chosen word, a species, a day, or as it was typed. */
export function registerValueSaid(
  field: string,
  value: string,
  language: Language,
  { day }: Pick<PaperReader, 'day'>,
): string {
  if (field === 'speciesId') {
    const species = allFacts().facts.species[value];
    return species === undefined
      ? value
      : `${factWord(factWords(language), species.commonName)} (${species.scientificName})`;
  }
  const chosen = choiceWords[value];
  return chosen === undefined ? day(value) : spokenIn(chosen, language);
}
