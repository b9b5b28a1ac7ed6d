// Which texts of a sheet are still English: those marked as another language than German, and those with a word that German
// does not have. Leaves out what is cited as it is called (translate="no"), and what people typed, which is handed in.
import type { Page } from 'playwright-core';
import { textsOf } from './texts.ts';

/** Small words of English, and words of this trade, that are no words of German. */
const english = new Set(
  (
    'the and of is are were with without not for from this that these those it its by to be been has have had can cannot ' +
    'must should would which when where what who how no none only than then there their they you your or as at on if but ' +
    'all any each every into over under before after between about out off too more most less least does do ' +
    'warm-end cool-end heater heaters snake snakes floor room night shop own value reading readings'
  ).split(' '),
);

/** An id is no word, though "be" may stand in one; on paper a line may break behind its hyphens. */
const id = /[0-9a-f]{8}(?:-\s?[0-9a-f]{4}){3}-\s?[0-9a-f]{12}/g;

/** @param typed texts of people, in whatever language they write */
export function hasEnglish(text: string, typed: readonly string[]): boolean {
  const rest = typed.reduce((left, one) => left.replaceAll(one, ' '), text.replace(id, ' '));
  const words = rest.match(/[\p{L}][\p{L}’'-]*/gu) ?? [];
  // All in capitals is a sign (a currency, a standard); "Not" and "Do" are nouns and names in German.
  return words.some(
    (word) =>
      english.has(word) || (/^\p{Lu}\p{Ll}{2,}/u.test(word) && english.has(word.toLowerCase()) && word !== 'Not'),
  );
}

export async function englishLeftIn(page: Page, typed: readonly string[]): Promise<string[]> {
  const texts = await textsOf(page);
  const left = texts.filter(({ text, lang }) => lang !== 'la' && (lang === 'en' || hasEnglish(text, typed)));
  return [...new Set(left.map(({ text, lang }) => (lang === 'en' ? `[en] ${text}` : text)))];
}
