// What a need is called in this language, and which language that is.
import type { NeedVerdict } from '../../husbandry/need.ts';
import { germanNeedName } from '../../planning/words/need-titles-de.ts';
import type { Language } from '../settings/settings.ts';

export interface NeedName {
  readonly text: string;
  /** Set when the text is in another language than the sheet. */
  readonly lang: 'en' | undefined;
}

export function needName(need: NeedVerdict, language: Language): NeedName {
  if (language === 'en') return { text: need.title, lang: undefined };
  const text = germanNeedName(need.id);
  return text === null ? { text: need.title, lang: 'en' } : { text, lang: undefined };
}
