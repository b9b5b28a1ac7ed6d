// Which texts of a sheet are still English: those marked as another language than German, and those with a word that
// German does not have. Leaves out what people typed themselves and the titles of sources.
import type { Page } from 'playwright-core';

/** Small words of English that are no words of German. */
const words =
  'the and of is are was were with without not for from this that these those it its by to be been has have had can cannot ' +
  'must should would which when where what who how no none only than then there their they you your or as at on if but ' +
  'all any each every into over under before after between about out off too more most less least ' +
  'warm-end cool-end heater heaters snake box lamp mat air floor room day night shop own value reading readings';

/** German words spelt like an English one of the list. */
const alsoGerman = new Set(['was', 'in', 'war', 'box', 'am', 'mat', 'hat', 'so']);

export const englishWords = new Set(words.split(' ').filter((word) => !alsoGerman.has(word)));

export const hasEnglish = (text: string): boolean =>
  (text.match(/[\p{L}-]+/gu) ?? []).some((word) => englishWords.has(word.toLowerCase()));

interface Seen {
  readonly text: string;
  /** Language the nearest element says it is in. */
  readonly lang: string;
  /** True for what people typed or what is cited as it is called. */
  readonly asItIs: boolean;
}

/** Everything that is shown or read aloud. */
async function textsOf(page: Page): Promise<Seen[]> {
  return await page.evaluate(() => {
    const seen: { text: string; lang: string; asItIs: boolean }[] = [];
    const take = (text: string | null, of: Element): void => {
      const clean = (text ?? '').replace(/\s+/g, ' ').trim();
      if (!/\p{L}{2}/u.test(clean)) return;
      const lang = of.closest('[lang]')?.getAttribute('lang') ?? '';
      seen.push({ text: clean, lang, asItIs: of.closest('[translate="no"]') !== null });
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT);
    for (let node = walker.currentNode as Element | null; node !== null; node = walker.nextNode() as Element | null) {
      if (node.matches('script, style, noscript')) continue;
      const own = [...node.childNodes].filter((child) => child.nodeType === Node.TEXT_NODE);
      if (own.length > 0) take(own.map((child) => child.textContent).join(' '), node);
      for (const name of ['aria-label', 'placeholder', 'title', 'alt', 'aria-description', 'aria-valuetext'])
        if (node.hasAttribute(name)) take(node.getAttribute(name), node);
    }
    return seen;
  });
}

export async function englishLeftIn(page: Page): Promise<string[]> {
  const texts = await textsOf(page);
  const left = texts.filter(({ text, lang, asItIs }) => !asItIs && lang !== 'la' && (lang === 'en' || hasEnglish(text)));
  return [...new Set(left.map(({ text, lang }) => (lang === 'en' ? `[en] ${text}` : text)))];
}
