// Says a requirement and its reasons in a language. A species is said by whoever knows its name there.
import { type AnimalLanguage, sayDay, sayReason } from '../../../animal/words/say.ts';
import type { ReleaseReason, RequirementGroup, RequirementId } from '../requirement.ts';
import { de } from './de.ts';
import { en, type RequirementWords } from './en.ts';

const books = { en, de } as const;

export const sayGroup = (group: RequirementGroup, language: AnimalLanguage): string => books[language].groups[group];

export const sayRequirement = (id: RequirementId, language: AnimalLanguage): RequirementWords =>
  books[language].requirements[id];

/** @param speciesName name of a species by its id; the id itself when left out */
export function sayReleaseReason(
  why: ReleaseReason,
  language: AnimalLanguage,
  speciesName: (id: string) => string = (id) => id,
): string {
  if (why.key === 'animal') return sayReason(why.reason, language);
  const { words, reasons } = books[language];
  const blanks = why.blanks ?? {};
  const said = (value: string | number): string => {
    const text = String(value);
    if (text.startsWith('#species.')) return speciesName(text.slice('#species.'.length));
    if (text.startsWith('#')) return words[text.slice(1)] ?? text.slice(text.indexOf('.') + 1);
    return sayDay(text, language);
  };
  const filled = reasons[why.key].replace(/\{(\w+)\}/g, (all, name: string) => {
    // A heading of the register comes in both languages.
    const value = name === 'heading' ? blanks[language] : blanks[name];
    return value === undefined ? all : said(value);
  });
  return filled.trim();
}
