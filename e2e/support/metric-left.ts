// What a sheet still says in metric units to somebody who chose °F, inches and ounces. Leaves out what is cited as it is
// called (translate="no") and what the lists below name with their reason.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';

/** A device whose owner chose °F, inches and ounces before. */
export const usReader = (url: string): BrowserContextOptions => ({
  locale: 'en-US',
  storageState: {
    cookies: [],
    origins: [
      {
        origin: url,
        localStorage: [
          {
            name: 'warmstead-settings-1',
            value: JSON.stringify({ book: 'en', temperature: 'F', length: 'in', mass: 'oz', sheet: 'auto' }),
          },
        ],
      },
    ],
  },
});

const data = (file: string) => JSON.parse(readFileSync(join(import.meta.dirname, '../../data', file), 'utf8'));
const law = data('law.json') as readonly { readonly say: string }[];
const standards = data('standards.json') as readonly { readonly name: string }[];
const shelf = data('shelf/starter.json') as { readonly items: readonly { readonly name: string }[] };

/** Texts that stay as they are, and why. */
const stays: readonly { readonly texts: readonly string[]; readonly why: string }[] = [
  { texts: law.map(({ say }) => say), why: 'what a law says' },
  { texts: standards.map(({ name }) => name), why: 'name of a standard, with the figures it was published with' },
  { texts: shelf.items.map(({ name }) => name), why: 'name of an article, which a shop gives' },
  {
    texts: ['Wooden vivarium 120 × 60 × 60 cm', 'Starter tub 60 × 40 × 20 cm'],
    why: 'name of a home, which a person gives',
  },
  { texts: ['Room °C'], why: 'heading of a logger file' },
  { texts: ['°C, cm, g', '°F, in, g'], why: 'units of a pack, to choose from: those of its keeper' },
];
export const quotedMetric: readonly string[] = stays.flatMap(({ texts }) => texts);

const metric =
  /°C|(?<=[\d,(\u2013][\s\u00a0]?)(?:cm²?|mm|m²|kg|g|K)(?![\p{L}\p{M}\d/²³])|\b\d{1,2} (?:Jan|Feb|Mar|Apr|May|June?|July?|Aug|Sept?|Oct|Nov|Dec)[a-z]* \d{4}/u;

/** Each metric unit, or day before its month, with what stands round it. */
export const metricIn = (text: string): string[] =>
  [...text.matchAll(new RegExp(metric.source, 'gu'))].map(({ index, 0: found }) =>
    text.slice(Math.max(0, index - 40), index + found.length + 15),
  );

/** Every line that is shown, and every name that is read aloud, with a metric unit or a day before its month in it. */
export async function metricLeft(page: Page): Promise<{ readonly left: string[]; readonly inUsUnits: number }> {
  const lines = await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
    for (const cited of document.querySelectorAll<HTMLElement>('[translate="no"]')) cited.style.display = 'none';
    // biome-ignore lint/performance/useDomNodeTextContent: number and unit stand in elements of their own, as one line on the sheet
    const seen = document.body.innerText.split('\n');
    for (const one of document.body.querySelectorAll('*')) {
      if (one instanceof SVGElement && one.childElementCount === 0) seen.push(one.textContent ?? '');
      for (const name of ['aria-label', 'placeholder', 'title', 'alt', 'aria-description', 'aria-valuetext'])
        seen.push(one.getAttribute(name) ?? '');
    }
    return seen;
  });
  const said = lines.map((line) => quotedMetric.reduce((rest, text) => rest.replaceAll(text, ''), line));
  return {
    left: [...new Set(said.filter((line) => metric.test(line)))],
    inUsUnits: said.filter((line) => /\d\s?(?:°F|(?:in|oz)\b)/.test(line)).length,
  };
}
