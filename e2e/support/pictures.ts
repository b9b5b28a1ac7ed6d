// Whether every picture of figures can be read without seeing it. A picture that is one image to a screen reader has its
// numbers in a table beside it or in its own words; one that is a group of texts is read text by text.
import type { Page } from 'playwright-core';

/** Pictures without figures, and why they need no table. */
const withoutFigures: Readonly<Record<string, string>> = {
  'snake-parts': 'shows where on the animal to look; the words of the step stand below it',
  qr: 'is an address, which stands beside it as a link',
};

/** @returns for each picture that cannot be read: which, and what is lacking */
export const unreadPictures = (page: Page): Promise<string[]> =>
  page.evaluate((exempt) => {
    const shown = (one: Element) => one.checkVisibility() && one.closest('[aria-hidden="true"]') === null;
    const numbers = (text: string) => text.match(/\d+(?:[.,]\d+)?/g) ?? [];
    // Words of neighbours must not run into one number.
    const wordsOf = (one: Element): string => {
      const walker = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
      const words: string[] = [];
      while (walker.nextNode()) words.push(walker.currentNode.textContent ?? '');
      return words.join(' ');
    };
    const main = document.querySelector('main');
    if (main === null) return ['no sheet'];
    const beside = main.cloneNode(true) as HTMLElement;
    for (const picture of beside.querySelectorAll('svg')) picture.remove();
    const fields = [...main.querySelectorAll<HTMLInputElement>('input')].map((field) => field.value).join(' ');
    const told = new Set(numbers(`${wordsOf(beside)} ${fields}`));
    const pictures = [...main.querySelectorAll<SVGElement>('svg')].filter(
      (one) => shown(one) && one.parentElement?.closest('svg') === null,
    );
    return pictures.flatMap((picture) => {
      const named = picture.getAttribute('class') ?? '';
      const label = picture.getAttribute('aria-label') ?? '';
      const say = (lacks: string) => [`svg.${named} "${label.slice(0, 50)}": ${lacks}`];
      if (Object.keys(exempt).includes(named))
        return numbers(wordsOf(picture)).length > 0 ? say('has figures after all') : [];
      if (label === '') return say('has no name');
      const texts = [...picture.querySelectorAll('text')];
      if (picture.getAttribute('role') !== 'img')
        return texts.length > 0 && texts.every((text) => !shown(text)) ? say('none of its texts is read') : [];
      const own = new Set(numbers(label));
      // The ends and steps of a scale are figures of no thing.
      const figures = texts
        .filter((text) => !/axis|scale|tick/.test(text.getAttribute('class') ?? ''))
        .map((text) => text.textContent ?? '');
      const lost = numbers(figures.join(' ')).filter((figure) => !told.has(figure) && !own.has(figure));
      if (lost.length > 0) return say(`stands in no table: ${lost.join(', ')}`);
      const around = picture.closest('figure, section') ?? main;
      return own.size > 0 || around.querySelector('table') !== null
        ? []
        : say('has neither a table nor figures in its name');
    });
  }, withoutFigures);
