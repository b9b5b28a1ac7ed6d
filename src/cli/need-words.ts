// What a need and an advice say in the language of the terminal; what has no words there stays English.
import type { Told } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { needTitleIn } from '../planning/words/need-titles.ts';
import { toldIn, withDecimals } from '../proving/words/say-told.ts';
import { factWords } from '../records/fact-words.ts';
import type { Display, Language } from './display.ts';

type Texts = Pick<NeedVerdict, 'title' | 'wanted' | 'found' | 'reasons' | 'fixes'> & { readonly settledBy: string };

/** In degrees Celsius, as reasons are. */
export function saidIn(language: Language, told: Told | null | undefined, english: string): string {
  return said(language, told, english, (text) => text);
}

function said(language: Language, told: Told | null | undefined, english: string, inUnits: Display['tempsIn']): string {
  const other = language === 'en' ? null : toldIn(told, english, factWords(language), language);
  return other === null ? inUnits(english) : withDecimals(inUnits(other), language);
}

export function needSaid(need: NeedVerdict, language: Language, show: Display): Texts {
  const { told } = need;
  return {
    title: language === 'en' ? need.title : (needTitleIn(need.id, language) ?? need.title),
    wanted: said(language, told?.wanted, need.wanted, show.tempsIn),
    found: said(language, told?.found, need.found, show.tempsIn),
    reasons: need.reasons.map((one, i) => saidIn(language, told?.reasons[i], one)),
    fixes: need.fixes.map((one, i) => saidIn(language, told?.fixes[i], one)),
    settledBy: need.settledBy === undefined ? '' : saidIn(language, told?.settledBy, need.settledBy),
  };
}
