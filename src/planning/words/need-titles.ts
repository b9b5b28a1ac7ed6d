// What a need is called in a language other than English.
import { bookIn, type Language } from '../../shared/languages.ts';
import { needTitlesDe } from './need-titles-de.ts';
import { needTitlesEn } from './need-titles-en.ts';

/** The name for an id such as "guard-emitter": the longest known beginning; null when none is known. */
export function needTitleIn(id: string, language: Language): string | null {
  const titles = bookIn('need', language, { en: needTitlesEn, de: needTitlesDe });
  for (let end = id.length; end > 0; end = id.lastIndexOf('-', end - 1)) {
    const name = titles[id.slice(0, end)];
    if (name) return name;
  }
  return null;
}
