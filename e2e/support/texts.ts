// Everything that a sheet shows or has read aloud, with the language that it says it is in. What is cited as it is called
// (translate="no") only when it is asked for.
import type { Page } from 'playwright-core';

export interface Seen {
  readonly text: string;
  /** What the nearest element says of its language. */
  readonly lang: string;
}

/** Everything that is shown or read aloud. @param cited  also what is cited as it is called */
export async function textsOf(page: Page, cited = false): Promise<readonly Seen[]> {
  return await page.evaluate((withCited) => {
    const seen: { text: string; lang: string }[] = [];
    const take = (text: string | null, of: Element): void => {
      const clean = (text ?? '').replace(/\s+/g, ' ').trim();
      if (!/\p{L}{2}/u.test(clean) || (!withCited && of.closest('[translate="no"]') !== null)) return;
      seen.push({ text: clean, lang: of.closest('[lang]')?.getAttribute('lang') ?? '' });
    };
    for (const one of document.body.querySelectorAll('*')) {
      if (one.matches('script, style, noscript')) continue;
      const own = [...one.childNodes].filter((child) => child.nodeType === Node.TEXT_NODE);
      take(own.map((child) => child.textContent).join(' '), one);
      for (const name of ['aria-label', 'placeholder', 'title', 'alt', 'aria-description', 'aria-valuetext'])
        take(one.getAttribute(name), one);
    }
    return seen;
  }, cited);
}
