// The desk read in German with the demonstration shop in it: no English is left on any sheet, in a name for screen readers,
// in a refusal or on a printed page. What people typed and titles of sources are named here and may stay.
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { chooseDe } from '../src/web/messages/choose-de.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type DeskIds, deskPaths } from './support/desk-paths.ts';
import { englishLeftIn, hasEnglish } from './support/english-left.ts';
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
import { provenHome } from './support/proven-home.ts';

/** What people of the demonstration typed, and names of files and columns of theirs. */
const typed: readonly string[] = [
  'Corn snake, flat above the bakery',
  'Royal python, upstairs study',
  'Hatchling kingsnake, first snake of the house',
  'Hognose, unheated garden room',
  'Boa from the rehoming desk',
  'Thistle Yard (demonstration shop)',
  'Invented practice, Mill Street; sees snakes on Tuesdays',
  'Invented Breeder, Thistle Lane',
  'We read it on the spot for four nights; the logger file was lost.',
  'The photograph is taken when it is handed over.',
  'pack gone through at the counter',
  'known to us',
  'back room',
  'palm and water',
  'Wound care, as the vet wrote',
  'practice on file',
  'demonstration',
  'Demo owner',
  'Wooden vivarium 120 × 60 × 60 cm, adult corn snake',
  'Starter tub 60 × 40 × 20 cm with a heat mat, hatchling California kingsnake',
  'Room °C',
];

let program: RunningProgram;
let browser: Browser;
/** The device on which sheets are only read. */
let reading: BrowserContext;
let ids: DeskIds & { readonly proven: string };

const read = async (path: string): Promise<Record<string, { id: string }[]>> =>
  (await (await fetch(`${program.url}${path}`)).json()) as never;

async function findIds(): Promise<typeof ids> {
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
    proven: await provenHome(program.url, 'Kornnatter, Zimmer im Süden', { proven: true }),
    keeper: ((await link.json()) as { secret: string }).secret,
  };
}

async function settled(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor({ state: 'attached', timeout: 30_000 });
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null, null, { timeout: 120_000 });
  // Folded parts are read as well.
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
}

const germanContext = async (): Promise<BrowserContext> =>
  await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'de-DE', reducedMotion: 'reduce' });

/** @param act  what is done on the sheet, on a device of its own */
async function leftOn(path: string, act?: (page: Page) => Promise<void>): Promise<string[]> {
  const context = act === undefined ? reading : await germanContext();
  const page = await context.newPage();
  await page.goto(`${program.url}${path}`, { waitUntil: 'networkidle' });
  await settled(page);
  await act?.(page);
  await settled(page);
  const left = await englishLeftIn(page, typed);
  await (act === undefined ? page.close() : context.close());
  return left;
}

/** Text of a printed page with what is cited taken out, sentence by sentence. */
async function leftOnPaper(path: string): Promise<string[]> {
  const text = paperText(await fetchPaper(program, path));
  expect(text.length, path).toBeGreaterThan(200);
  const rest = withoutQuoted(text, [...citedSources, ...typed, typedWhy]);
  return rest.split(/(?<=[.;:?!]) /).filter((sentence) => hasEnglish(sentence, []));
}

describeInBrowser('the German desk', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    reading = await germanContext();
    ids = await findIds();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('has no English on its sheets', async () => {
    const paths = [
      ...deskPaths(ids),
      `/plan/${ids.proven}`,
      `/proof/${ids.proven}`,
      '/species/royal',
      '/species/spotted',
    ];
    const left: Record<string, string[]> = {};
    for (const path of paths) {
      const found = await leftOn(path);
      if (found.length > 0) left[path] = found;
    }
    expect(left).toEqual({});
  }, 600_000);

  it('has none on the sheet of choosing: kits, what can go wrong, boxes over the years', async () => {
    const left: Record<string, string[]> = {};
    for (const part of ['search', 'faults', 'stages'] as const) {
      const found = await leftOn(`/choose/${ids.enquiry}`, async (page) => {
        await page.getByRole('radio', { name: chooseDe[`choose.part.${part}`] }).click({ force: true });
        await page
          .locator('.choose-working progress, .choose-working button')
          .first()
          .waitFor({ timeout: 30_000 })
          .catch(() => {});
        await page.waitForFunction(() => document.querySelector('.choose-working')?.childElementCount === 0, null, {
          timeout: 240_000,
        });
        await page.locator('.choose table').first().waitFor({ state: 'attached', timeout: 10_000 });
      });
      if (found.length > 0) left[part] = found;
    }
    expect(left).toEqual({});
  }, 600_000);

  it('has none in the other lists', async () => {
    const left: Record<string, string[]> = {};
    for (const table of ['Regeln des Ladens', 'Heizungen', 'Thermostate', 'Bodengründe', 'Werkstoffe']) {
      const found = await leftOn('/lists', async (page) => {
        await page.getByRole('radio', { name: table }).click({ force: true });
      });
      if (found.length > 0) left[table] = found;
    }
    expect(left).toEqual({});
  }, 300_000);

  it('refuses in German: a value the wrong way round, for which nobody says why', async () => {
    let said: string[] = [];
    const left = await leftOn('/species/corn', async (page) => {
      await page.getByRole('button', { name: 'Eigenen Wert setzen: Feuchte', exact: true }).click();
      const form = page.getByRole('form', { name: 'Eigenen Wert setzen: Feuchte' });
      await form.getByRole('textbox', { name: /^von/ }).fill('90');
      await form.getByRole('textbox', { name: /^bis/ }).fill('40');
      await form.getByRole('button', { name: 'Behalten' }).click();
      await form.getByRole('alert').getByText(/./).first().waitFor();
      said = await form.getByRole('alert').locator('p').allTextContents();
    });
    expect(said.map((one) => one.trim())).toEqual([
      expect.stringContaining('Dieser Wert widerspricht einem anderen'),
      'Bitte sagen, warum.',
    ]);
    expect(left).toEqual([]);
  }, 120_000);

  it('has none on printed pages', async () => {
    const left: Record<string, string[]> = {};
    await fillPapers(program, ids.animal);
    for (const path of ownPapers(ids.released)) {
      const found = await leftOnPaper(`${path}language=de`);
      if (found.length > 0) left[path] = found;
    }
    expect(left).toEqual({});
  }, 120_000);
});
