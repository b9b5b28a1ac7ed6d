// What a need says in the language and units of this person, found by the code of its sentence.
// A sentence without a code, or without words for its code, stays English and is marked so.
import type { Told, ToldNeed } from '../../husbandry/coded.ts';
import type { FactWords } from '../../husbandry/fact-words.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Measure } from '../settings/measure.ts';
import { proseInUnits } from '../settings/prose-units.ts';
import { germanClimateSayings } from './climate-de.ts';
import { germanRuleSayings } from './needs-de.ts';
import { germanName } from './needs-names-de.ts';
import { germanReadingSayings } from './readings-de.ts';
import { factWordsOf } from './translate.ts';

export interface NeedSentence {
  readonly text: string;
  /** Set when the text is in another language than the sheet. */
  readonly lang: 'en' | undefined;
}

export interface NeedWords {
  readonly wanted: NeedSentence;
  readonly found: NeedSentence;
  readonly reasons: readonly NeedSentence[];
  readonly fixes: readonly NeedSentence[];
  readonly settledBy: NeedSentence | null;
}

export const germanSayings: Readonly<Record<string, string>> = {
  ...germanRuleSayings,
  ...germanClimateSayings,
  ...germanReadingSayings,
};

/** "50 to 100 mm" within a blank; points stay until the units are chosen. */
const blankText = (blank: string): string => blank.replace(/(\d) to (\d)/g, '$1–$2');

/** The German of one sentence with metric figures and decimal points, or null when a part of it has none. */
export function germanSaying(told: Told, words: FactWords = factWordsOf('de')): string | null {
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

const withCommas = (text: string): string => text.replace(/(?<=\d)\.(?=\d)/g, ',');

/** "90 cm × 45 cm", "100 W": nothing in it is English. */
const onlyFigures = /^(?:[\d.]+ (?:cm|mm|W|%)(?:, | × |$))+$/;

const asSentence = ({ text, lang }: NeedSentence): NeedSentence => ({
  text: text.charAt(0).toUpperCase() + text.slice(1),
  lang,
});

/** One sentence by its code; its English where it has none. */
export function sentence(told: Told | null | undefined, english: string, measure: Measure): NeedSentence {
  const { book } = measure.settings;
  if (book === 'en') return { text: proseInUnits(english, measure), lang: undefined };
  const german = book === 'de' && told ? germanSaying(told) : null;
  if (german !== null) return { text: withCommas(proseInUnits(german, measure)), lang: undefined };
  const text = proseInUnits(english, measure);
  return book === 'de' && onlyFigures.test(english)
    ? { text: withCommas(text), lang: undefined }
    : { text, lang: 'en' };
}

export function needWords(need: NeedVerdict, measure: Measure): NeedWords {
  const told: ToldNeed | undefined = need.told;
  return {
    wanted: sentence(told?.wanted, need.wanted, measure),
    found: sentence(told?.found, need.found, measure),
    reasons: need.reasons.map((say, i) => asSentence(sentence(told?.reasons[i], say, measure))),
    fixes: need.fixes.map((say, i) => asSentence(sentence(told?.fixes[i], say, measure))),
    settledBy: need.settledBy === undefined ? null : sentence(told?.settledBy, need.settledBy, measure),
  };
}
