// Says a requirement and its reasons in a language. A species is said by whoever knows its name there.
import { type AnimalLanguage, metric, type Reader, sayDay, sayReason } from '../../../animal/words/say.ts';
import { bookIn, spokenIn } from '../../../shared/languages.ts';
import { filledPattern } from '../../../shared/pattern.ts';
import type { ReleaseReason, RequirementGroup, RequirementId } from '../requirement.ts';
import { de } from './de.ts';
import { en, type ReleaseWords, type RequirementWords } from './en.ts';

const books = { en, de } as const;
const bookOf = (language: AnimalLanguage): ReleaseWords => bookIn<ReleaseWords>('release', language, books);

export const sayGroup = (group: RequirementGroup, language: AnimalLanguage): string => bookOf(language).groups[group];

export const sayRequirement = (id: RequirementId, language: AnimalLanguage): RequirementWords =>
  bookOf(language).requirements[id];

/** @param speciesName name of a species by its id; the id itself when left out */
export function sayReleaseReason(
  why: ReleaseReason,
  language: AnimalLanguage,
  speciesName: (id: string) => string = (id) => id,
  reader: Reader = metric(language),
): string {
  if (why.key === 'animal') return sayReason(why.reason, language, reader);
  const { words, reasons } = bookOf(language);
  const blanks = why.blanks ?? {};
  const said = (value: string | number): string => {
    const text = String(value);
    if (text.startsWith('#species.')) return speciesName(text.slice('#species.'.length));
    if (text.startsWith('#')) return words[text.slice(1)] ?? text.slice(text.indexOf('.') + 1);
    return sayDay(text, reader.days);
  };
  // A heading of the register comes in both languages.
  const heading =
    blanks.en === undefined ? {} : { heading: spokenIn({ en: String(blanks.en), de: String(blanks.de) }, language) };
  const filled = Object.entries({ ...blanks, ...heading }).map(([name, value]) => [name, said(value)]);
  return filledPattern(reasons[why.key], Object.fromEntries(filled), language).trim();
}
