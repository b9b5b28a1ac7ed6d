// The German of a sentence that carries its code: of the drawing's rules, the climate, law, files of readings and what a
// diagnosis sees. Leaves out units and decimal commas, which are the reader's.
import type { Told } from '../../husbandry/coded.ts';
import type { FactWords } from '../../husbandry/fact-words.ts';
import { germanName } from '../../husbandry/words/names-de.ts';
import { germanRuleSayings } from '../../husbandry/words/rules-de.ts';
import { germanClimateSayings } from '../../planning/words/climate-de.ts';
import { germanKitSayings } from '../../planning/words/kits-de.ts';
import { germanReadingSayings } from './readings-de.ts';

export const germanSayings: Readonly<Record<string, string>> = {
  ...germanRuleSayings,
  ...germanClimateSayings,
  ...germanKitSayings,
  ...germanReadingSayings,
};

/** "50 to 100 mm" within a blank; points stay until the units are chosen. */
const blankText = (blank: string): string => blank.replace(/(\d) to (\d)/g, '$1–$2');

/** The German of one sentence with metric figures and decimal points, or null when a part of it has none. */
export function germanSaying(told: Told, words: FactWords): string | null {
  if (told.code.startsWith('name.')) return germanName(told, words);
  const pattern = germanSayings[told.code];
  if (pattern === undefined) return null;
  const blanks = told.blanks.map((blank, i) => {
    if (!pattern.includes(`{${i}}`)) return '';
    return typeof blank === 'string'
      ? (germanName({ code: `${told.code}.${i}`, blanks: [blank] }, words) ?? blankText(blank))
      : germanSaying(blank, words);
  });
  if (blanks.includes(null)) return null;
  return pattern.replace(/\{(\d)\}/g, (all, i: string) => blanks[Number(i)] ?? all);
}

/** "90 cm × 45 cm", "100 W": nothing in it is English. */
const onlyFigures = /^(?:[\d.]+ (?:cm|mm|W|%)(?:, | × |$))+$/;

/** The German of a sentence with its code, of one of figures alone, or null. */
export function germanOf(told: Told | null | undefined, english: string, words: FactWords): string | null {
  const german = told ? germanSaying(told, words) : null;
  return german ?? (onlyFigures.test(english) ? english : null);
}

/** "0.5" as a German writes it. */
export const withCommas = (text: string): string => text.replace(/(?<=\d)\.(?=\d)/g, ',');
