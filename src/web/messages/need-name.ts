// What a need is called in this language, and which language that is.
import type { NeedVerdict } from '../../husbandry/need.ts';
import { needTitleIn } from '../../planning/words/need-titles.ts';
import type { Language } from '../../shared/languages.ts';

export interface NeedName {
  readonly text: string;
  /** Set when the text is in another language than the sheet. */
  readonly lang: 'en' | undefined;
}

export function needName(need: NeedVerdict, language: Language): NeedName {
  if (language === 'en') return { text: need.title, lang: undefined };
  const text = needTitleIn(need.id, language);
  return text === null ? { text: need.title, lang: 'en' } : { text, lang: undefined };
}
