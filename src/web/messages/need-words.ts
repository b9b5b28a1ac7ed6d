// What a need says in the language and units of this person, found by the code of its sentence.
// A sentence without a code, or without words for its code, stays English and is marked so.
import type { Told, ToldNeed } from '../../husbandry/coded.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import { toldIn, withDecimals } from '../../proving/words/say-told.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import type { Measure } from '../settings/measure.ts';
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

const asSentence = ({ text, lang }: NeedSentence): NeedSentence => ({
  text: text.charAt(0).toUpperCase() + text.slice(1),
  lang,
});

/** One sentence by its code; its English where it has none. */
export function sentence(told: Told | null | undefined, english: string, measure: Measure): NeedSentence {
  const { book } = measure.settings;
  if (book === 'en') return { text: proseInUnits(english, measure), lang: undefined };
  const other = toldIn(told, english, factWordsOf(book), book);
  return other === null
    ? { text: proseInUnits(english, measure), lang: 'en' }
    : { text: withDecimals(proseInUnits(other, measure), book), lang: undefined };
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
