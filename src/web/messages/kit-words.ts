// What the search and the rehearsals say in the language and units of this person: why kits are refused or fell out, why
// none holds, which need is weakest, what a fault is called. Shelf articles keep the name that the shop gave them.
import type { FaultCase } from '../../husbandry/fact-tables.ts';
import { type RefusalSays, withoutWatts } from '../../planning/kit/refusal.ts';
import type { FellOut, SearchAnswer, WeakestNeed } from '../../planning/search/search-answer.ts';
import { needTitleIn } from '../../planning/words/need-titles.ts';
import type { Measure } from '../settings/measure.ts';
import { type NeedSentence, needWords, sentence } from './need-words.ts';
import { factWordsOf, type Translate } from './translate.ts';

const english = (measure: Measure): boolean => measure.settings.book === 'en';

export function needTitle(id: string, title: string, measure: Measure): NeedSentence {
  if (english(measure)) return { text: title, lang: undefined };
  const text = needTitleIn(id, measure.settings.book);
  return text === null ? { text: title, lang: 'en' } : { text, lang: undefined };
}

export const weakestTitle = (weakest: WeakestNeed, measure: Measure): NeedSentence =>
  needTitle(weakest.id, weakest.title, measure);

const joined = (parts: readonly NeedSentence[], between: string): NeedSentence => ({
  text: parts.map((p) => p.text).join(between),
  lang: parts.some((p) => p.lang === 'en') ? 'en' : undefined,
});

export function refusalText({ why, needId, told }: RefusalSays, measure: Measure): NeedSentence {
  if (needId === null) return sentence(told, why, measure);
  const cut = why.indexOf(': ');
  const title = needTitle(needId, why.slice(0, cut), measure);
  const said = sentence(told, why.slice(cut + 2), measure);
  return joined([title, { ...said, text: withoutWatts(said.text) }], ': ');
}

export function fellOutText({ need, why }: FellOut, measure: Measure, t: Translate): NeedSentence {
  if (!need) return { text: t('kits.fellOutPinch'), lang: undefined };
  const words = needWords(need, measure);
  if ([words.found, words.wanted].some((w) => w.lang === 'en')) return sentence(null, why, measure);
  const title = needTitle(need.id, need.title, measure);
  return {
    ...title,
    text: t('kits.fellOutSay', { need: title.text, found: words.found.text, wanted: words.wanted.text }),
  };
}

/** Share of versions: said by the chance beside it. */
const doubt = 'climate.doubt';

/** Why no kit holds, in sentences; empty when one does. */
export function noneTexts(answer: SearchAnswer, measure: Measure, t: Translate): readonly NeedSentence[] {
  const first = answer.choices[0];
  if (!first) return [{ text: t('kits.noneAllowed'), lang: undefined }];
  const need = answer.noneNeed;
  if (!need) return [];
  const head = t(first.verdict === 'fails' ? 'kits.noneFails' : 'kits.noneSure');
  const { reasons } = needWords(need, measure);
  const title = needTitle(need.id, need.title, measure);
  return [
    { text: head, lang: undefined },
    { ...title, text: `${title.text}:` },
    ...reasons.filter((_, i) => need.told?.reasons[i]?.code !== doubt),
  ];
}

/** A text of data/, such as the name of a fault. */
export function factText(own: string, measure: Measure): NeedSentence {
  if (english(measure)) return { text: own, lang: undefined };
  const words = factWordsOf(measure.settings.book)[own];
  return words === undefined ? { text: own, lang: 'en' } : { text: words, lang: undefined };
}

export const faultTitle = (found: FaultCase, measure: Measure): NeedSentence => factText(found.title, measure);
export const faultGuard = (found: FaultCase, measure: Measure): NeedSentence => factText(found.guard, measure);
