// Every paper and calendar as its reader reads: whoever chose °F, inches and ounces finds nothing metric on any print and no
// day before its month; a German reader finds decimals with a comma and German days. A further copy of a pack is the same
// paper whoever makes it.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { metricIn, quotedMetric, usReader } from './support/metric-left.ts';
import { paperTools } from './support/paper.ts';
import {
  citedSources,
  fetchPaper,
  fillPapers,
  ownPapers,
  paperText,
  typedWhy,
  withoutQuoted,
} from './support/papers.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { type FoundSheet, findSheets, openSheet } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let sheets: readonly FoundSheet[];
let released = '';

const us = 'language=en&temperature=F&length=in&mass=oz';
const german = 'language=de&temperature=C&length=cm&mass=g';
/** Sheets that people print from the browser. */
const printed = [
  'plan',
  'placement',
  'one-species',
  'lists',
  'own-figures',
  'register',
  'animal',
  'proof',
  'aftercare',
  'today',
];

/** What is cited as it is called stays: it goes before the sheet is printed. */
async function print(page: Page): Promise<Buffer> {
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
    for (const cited of document.querySelectorAll<HTMLElement>('[translate="no"]')) cited.style.display = 'none';
  });
  return await page.pdf({ preferCSSPageSize: true, printBackground: true });
}

async function calendar(query: string): Promise<string> {
  const text = await (await fetch(`${program.url}/api/placements/${released}/calendar.ics?${query}`)).text();
  return text
    .replace(/\r\n /g, '')
    .replace(/\\([,;])/g, '$1')
    .split('\r\n')
    .filter((line) => /^(?:SUMMARY|DESCRIPTION)/.test(line))
    .map((line) => line.slice(line.indexOf(':') + 1).replaceAll('\\n', ' '))
    .join(' ');
}

const suite = paperTools
  ? describeInBrowser
  : (name: string, body: () => void) => describe.skip(`${name} (needs poppler-utils)`, body);

suite('papers as their readers read', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets(program);
    const of = (name: string) =>
      sheets
        .find((one) => one.name === name)!
        .path.split('/')
        .at(-1)!;
    released = of('aftercare');
    await fillPapers(program, of('animal'));
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  const readAll = async (query: string, locale: Parameters<typeof openSheet>[4]): Promise<Record<string, string>> => {
    const said: Record<string, string> = { calendar: await calendar(query) };
    for (const path of ownPapers(released)) said[path] = paperText(await fetchPaper(program, path + query));
    for (const name of printed) {
      const page = await openSheet(browser, program, sheets.find((one) => one.name === name)!, 1280, locale);
      said[name] = paperText(await print(page));
      await page.close();
    }
    return said;
  };

  it('in °F, inches, ounces, the month first', async () => {
    const said = await readAll(us, usReader(program.url));
    const wrong: Record<string, string[]> = {};
    for (const [name, text] of Object.entries(said)) {
      const rest = withoutQuoted(text, [...quotedMetric, ...citedSources, typedWhy]);
      const found = [...metricIn(rest), ...(rest.match(/.{0,20}\d{4}-\d\d-\d\d/g) ?? [])];
      if (found.length > 0) wrong[name] = found;
    }
    expect(wrong).toEqual({});
    for (const path of ownPapers(released)) {
      expect(said[path], path).toMatch(/(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d{1,2}, 20\d\d/);
      if (!path.includes('inspection')) expect(said[path], path).toMatch(/\d °F/);
      expect(said[path], path).toMatch(/\d (?:oz|in)\b/);
    }
    expect(said.calendar).toMatch(/[A-Z][a-z]{2} \d{1,2}, 20\d\d/);
  }, 300_000);

  it('in German, with a comma and German days', async () => {
    const said = await readAll(german, { locale: 'de-DE' });
    const wrong: Record<string, string[]> = {};
    for (const [name, text] of Object.entries(said)) {
      const rest = withoutQuoted(text, [...quotedMetric, ...citedSources, typedWhy]);
      // A day, a paragraph or an edition has points too; a figure has a unit behind it.
      const decimals =
        rest.match(
          /.{0,30}(?<![\d.])\d+\.\d{1,2}(?![\d])(?:[–-][\d.]+)?\s?(?:°C|K|cm|mm|m|g|kg|W|kWh|%|h)(?!\p{L}).{0,10}/gu,
        ) ?? [];
      const days =
        rest.match(
          /.{0,20}(?:\d{4}-\d\d-\d\d|\b\d{1,2} (?:Jan|Feb|Mar|Apr|May|June?|July?|Aug|Sept?|Oct|Nov|Dec)[a-z]* \d{4})/g,
        ) ?? [];
      if (decimals.length + days.length > 0) wrong[name] = [...decimals, ...days];
    }
    expect(wrong).toEqual({});
    for (const path of ownPapers(released)) expect(said[path], path).toMatch(/\d\d\.\d\d\.20\d\d/);
    expect(said[ownPapers(released)[0]!]).toMatch(/\d,\d/);
  }, 300_000);

  it('a further copy of a pack is byte by byte the one that was made', async () => {
    const [pack] = ownPapers(released) as [string];
    const first = await fetchPaper(program, pack + us);
    const again = await fetchPaper(program, pack);
    expect(again.equals(first)).toBe(true);
    const other = await fetchPaper(program, pack + german);
    expect(other.equals(first)).toBe(false);
    expect((await fetchPaper(program, pack)).equals(other)).toBe(true);
    const sheet = (await (await fetch(`${program.url}/api/placements/${released}`)).json()) as { packPrint: object };
    expect(sheet.packPrint).toMatchObject({ language: 'de', temperature: 'C', length: 'cm', mass: 'g' });
  }, 120_000);
});
