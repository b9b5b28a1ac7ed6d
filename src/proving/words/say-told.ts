// A sentence that carries its code, in a language other than English: of the drawing's rules, the climate, law, files of
// readings and what a diagnosis sees. Leaves out units and the decimal sign, which are the reader's.
import type { Told } from '../../husbandry/coded.ts';
import type { FactWords } from '../../husbandry/fact-words.ts';
import { nameIn } from '../../husbandry/words/names.ts';
import { germanRuleSayings } from '../../husbandry/words/rules-de.ts';
import { germanClimateSayings } from '../../planning/words/climate-de.ts';
import { germanKitSayings } from '../../planning/words/kits-de.ts';
import { type Language, taughtWords } from '../../shared/languages.ts';
import { filledPattern, numbered } from '../../shared/pattern.ts';
import { germanReadingSayings } from './readings-de.ts';

export const germanSayings: Readonly<Record<string, string>> = {
  ...germanRuleSayings,
  ...germanClimateSayings,
  ...germanKitSayings,
  ...germanReadingSayings,
};

/** "50 to 100 mm" within a blank; points stay until the units are chosen. */
const blankText = (blank: string): string => blank.replace(/(\d) to (\d)/g, '$1–$2');

const patternIn = (code: string, language: Language): string | undefined =>
  language === 'de' ? germanSayings[code] : taughtWords(language)[`say:${code}`];

/** One sentence with metric figures and decimal points, or null when a part of it has no words there. */
export function sayingIn(told: Told, words: FactWords, language: Language): string | null {
  if (told.code.startsWith('name.')) return nameIn(told, words, language);
  const pattern = patternIn(told.code, language);
  if (pattern === undefined) return null;
  const blanks = told.blanks.map((blank, i) => {
    // A blank that the pattern does without needs no words.
    if (!pattern.includes(`{${i}`)) return '';
    return typeof blank === 'string'
      ? (nameIn({ code: `${told.code}.${i}`, blanks: [blank] }, words, language) ?? blankText(blank))
      : sayingIn(blank, words, language);
  });
  if (blanks.includes(null)) return null;
  return filledPattern(pattern, numbered(blanks as readonly string[]), language);
}

/** "90 cm × 45 cm", "100 W": nothing in it is English. */
const onlyFigures = /^(?:[\d.]+ (?:cm|mm|W|%)(?:, | × |$))+$/;

/** A sentence with its code, or one of figures alone; null when only its English is there. */
export function toldIn(
  told: Told | null | undefined,
  english: string,
  words: FactWords,
  language: Language,
): string | null {
  const other = told ? sayingIn(told, words, language) : null;
  return other ?? (onlyFigures.test(english) ? english : null);
}

const marks = new Map<Language, string>();

/** "0.5" with the decimal sign of the language. */
export function withDecimals(text: string, language: Language): string {
  const known = marks.get(language);
  const mark =
    known ?? new Intl.NumberFormat(language).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  marks.set(language, mark);
  return text.replace(/(?<=\d)\.(?=\d)/g, mark);
}
