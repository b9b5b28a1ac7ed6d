// What a need and an advice say in the language of the terminal; what has no words there stays English.
import type { Told } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { germanNeedName } from '../planning/words/need-titles-de.ts';
import { germanOf, withCommas } from '../proving/words/german-saying.ts';
import { factWords } from '../records/fact-words.ts';
import type { Display, Language } from './display.ts';

type Texts = Pick<NeedVerdict, 'title' | 'wanted' | 'found' | 'reasons' | 'fixes'> & { readonly settledBy: string };

/** In degrees Celsius, as reasons are. */
export function saidIn(language: Language, told: Told | null | undefined, english: string): string {
  return said(language, told, english, (text) => text);
}

function said(language: Language, told: Told | null | undefined, english: string, inUnits: Display['tempsIn']): string {
  const german = language === 'de' ? germanOf(told, english, factWords(language)) : null;
  return german === null ? inUnits(english) : withCommas(inUnits(german));
}

export function needSaid(need: NeedVerdict, language: Language, show: Display): Texts {
  const { told } = need;
  return {
    title: language === 'de' ? (germanNeedName(need.id) ?? need.title) : need.title,
    wanted: said(language, told?.wanted, need.wanted, show.tempsIn),
    found: said(language, told?.found, need.found, show.tempsIn),
    reasons: need.reasons.map((one, i) => saidIn(language, told?.reasons[i], one)),
    fixes: need.fixes.map((one, i) => saidIn(language, told?.fixes[i], one)),
    settledBy: need.settledBy === undefined ? '' : saidIn(language, told?.settledBy, need.settledBy),
  };
}
