// What a need and an advice say in the language of the terminal; what has no words there stays English.
import type { Told } from '../husbandry/coded.ts';
import { factWord } from '../husbandry/fact-words.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { needTitleIn } from '../planning/words/need-titles.ts';
import { toldIn, withDecimals } from '../proving/words/say-told.ts';
import { factWords } from '../records/fact-words.ts';
import type { Display } from './display.ts';

type Texts = Pick<NeedVerdict, 'title' | 'wanted' | 'found' | 'reasons' | 'fixes'> & { readonly settledBy: string };

/** A sentence of the pure rooms in the language and units shown. */
export function saidIn({ language, prose }: Display, told: Told | null | undefined, english: string): string {
  const other = language === 'en' ? null : toldIn(told, english, factWords(language), language);
  return other === null ? prose(english) : withDecimals(prose(other), language);
}

export const needTitle = ({ language }: Display, id: string, title: string): string =>
  language === 'en' ? title : (needTitleIn(id, language) ?? title);

/** A text of data/, or what a shop called a thing. */
export const factSaid = ({ language }: Display, english: string): string => factWord(factWords(language), english);

export function needSaid(need: NeedVerdict, show: Display): Texts {
  const { told } = need;
  return {
    title: needTitle(show, need.id, need.title),
    wanted: saidIn(show, told?.wanted, need.wanted),
    found: saidIn(show, told?.found, need.found),
    reasons: need.reasons.map((one, i) => saidIn(show, told?.reasons[i], one)),
    fixes: need.fixes.map((one, i) => saidIn(show, told?.fixes[i], one)),
    settledBy: need.settledBy === undefined ? '' : saidIn(show, told?.settledBy, need.settledBy),
  };
}
