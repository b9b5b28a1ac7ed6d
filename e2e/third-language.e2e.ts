// A third language is one file in the shop's folder: with it there, made from the English with every word in brackets, no
// sheet, name for screen readers, print or calendar says a word that is not in it.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { unbracketed, writeBracketed } from '../scripts/languages/bracketed.ts';
import { everyText } from '../scripts/languages/every-text.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type DeskIds, deskPaths } from './support/desk-paths.ts';
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
import { textsOf } from './support/texts.ts';

/** What people of the demonstration typed, and names of things of theirs. */
const typed =
  /Demo (?:owner|assistant|manager|inspector)|Corn snake, flat above the bakery|Royal python, upstairs study|Hatchling kingsnake, first snake of the house|Hognose, unheated garden room|Boa from the rehoming desk|Thistle Yard \(demonstration shop\)|Invented practice, Mill Street; sees snakes on Tuesdays|Invented Breeder, Thistle Lane|We read it on the spot for four nights; the logger file was lost\.|The photograph is taken when it is handed over\.|pack gone through at the counter|known to us|back room|palm and water|Wound care, as the vet wrote|practice on file|demonstration|Wooden vivarium 120 × 60 × 60 cm, adult corn snake|Starter tub 60 × 40 × 20 cm with a heat mat, hatchling California kingsnake|Starter shelf|Counter|United Kingdom|emitter/;

/** "28 lis 2026", "28 grudnia": months of the language itself; currencies, initials, keys of sources, names of languages. */
const months = Array.from({ length: 12 }, (_, i) =>
  ['short', 'long'].map((month) =>
    new Intl.DateTimeFormat('pl', { day: 'numeric', month: month as 'short' }).format(new Date(2026, i, 15)).slice(3),
  ),
).flat();
const ownSigns = /\p{Lu}[\p{Lu}\d-]+|Deutsch|English|Polski/u;
let may: RegExp;
/** On paper scientific names stand without a mark of their language. */
let mayOnPaper: RegExp;

/** A line may end within a word, with a hyphen or without. */
const wholeBrackets = (text: string): string => text.replace(/\[[^[\]]*\]/g, (one) => one.replace(/[\u00ad-]?\s/g, ''));

const folder = mkdtempSync(join(tmpdir(), 'third-language-'));
let program: RunningProgram;
let browser: Browser;
let ids: DeskIds;

const read = async (path: string): Promise<Record<string, { id: string }[]>> =>
  (await (await fetch(`${program.url}${path}`)).json()) as never;

async function findIds(): Promise<DeskIds> {
  const { enquiries } = await read('/api/enquiries');
  const { animals } = await read('/api/animals');
  const { placements } = await read('/api/placements');
  const enquiry = enquiries!.at(-1)!.id;
  const link = await fetch(`${program.url}/api/enquiries/${enquiry}/keeper-links`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ days: 30 }),
  });
  return {
    enquiry,
    animal: animals![0]!.id,
    placement: placements![0]!.id,
    released: placements!.at(-1)!.id,
    keeper: ((await link.json()) as { secret: string }).secret,
  };
}

const species = join(import.meta.dirname, '../data/species');
const scientificNames = (): readonly string[] =>
  readdirSync(species).map((file) => JSON.parse(readFileSync(join(species, file), 'utf8')).scientificName);

async function settled(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor({ state: 'attached', timeout: 30_000 });
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null, null, { timeout: 120_000 });
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
}

async function leftOn(path: string): Promise<string[]> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    locale: 'pl-PL',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${program.url}${path}`, { waitUntil: 'networkidle' });
  await page.waitForFunction(() => document.documentElement.lang === 'pl', null, { timeout: 30_000 });
  await settled(page);
  const texts = await textsOf(page);
  await context.close();
  expect(texts.length, path).toBeGreaterThan(10);
  return [
    ...new Set(
      texts
        .filter(({ lang }) => lang !== 'la')
        .flatMap(({ text }) => (unbracketed(text, may).length > 0 ? [text] : [])),
    ),
  ];
}

describeInBrowser('the desk in a language of one file', () => {
  beforeAll(async () => {
    writeBracketed(folder, everyText());
    program = await startProgram({ WARMSTEAD_DEMO: 'yes', WARMSTEAD_DATA: folder });
    browser = await launchBrowser();
    ids = await findIds();
    const { animals } = await read('/api/animals?all=yes');
    const names = (animals as unknown as { callName: string }[]).map((one) => one.callName);
    may = new RegExp(
      [typed.source, ownSigns.source, ...[...names, ...months].map((one) => `\\b${one}(?!\\p{L})`)].join('|'),
      'gu',
    );
    mayOnPaper = new RegExp([may.source, ...scientificNames()].join('|'), 'gu');
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  it('says nothing else on its sheets', async () => {
    const left: Record<string, string[]> = {};
    for (const path of deskPaths(ids)) {
      const found = await leftOn(path);
      if (found.length > 0) left[path] = found;
    }
    expect(left).toEqual({});
  }, 600_000);

  it('says nothing else on prints', async () => {
    await fillPapers(program, ids.animal);
    const left: Record<string, readonly string[]> = {};
    for (const path of ownPapers(ids.released)) {
      const text = paperText(await fetchPaper(program, `${path}language=pl`));
      const rest = withoutQuoted(wholeBrackets(text), [
        ...citedSources,
        typedWhy,
        'The photograph is taken when it is handed over.',
        'daily',
      ]);
      expect(rest.match(/\[\p{L}/gu)?.length ?? 0, path).toBeGreaterThan(50);
      const found = unbracketed(rest, mayOnPaper);
      if (found.length > 0) left[path] = found;
    }
    expect(left).toEqual({});
  }, 120_000);

  it('says nothing else in calendars', async () => {
    const calendar = await (
      await fetch(`${program.url}/api/placements/${ids.released}/calendar.ics?language=pl`)
    ).text();
    const left = calendar
      .replace(/\r\n /g, '')
      .replace(/\\([,;])/g, '$1')
      .split(/\r\n/)
      .filter((line) => /^(?:SUMMARY|DESCRIPTION)/.test(line))
      .flatMap((line) => unbracketed(line.slice(line.indexOf(':') + 1).replaceAll('\\n', ' '), may));
    expect(left).toEqual([]);
  }, 120_000);
});
