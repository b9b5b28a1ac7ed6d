// Every sheet of the program with the demonstration shop in it: no finding of the accessibility checker on light and dark
// sheets, nothing sideways at 320 px or at twice the size, targets for a thumb. With WARMSTEAD_SHOTS its pictures at the
// desk's, a tablet's and a phone's width; with WARMSTEAD_GUIDE those of docs/guide (npm run guide).
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import AxeBuilder from '@axe-core/playwright';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

interface Sheet {
  readonly name: string;
  readonly path: string;
}

let program: RunningProgram;
let browser: Browser;
let sheets: readonly Sheet[];

const guideFolder = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'guide', 'pictures');
const guideNames = [
  'enquiry',
  'plan',
  'choose',
  'proof',
  'examination',
  'placement',
  'today',
  'people',
  'register',
  'keeper',
];

const read = async (path: string): Promise<Record<string, { id: string; title?: string }[]>> =>
  (await (await fetch(`${program.url}${path}`)).json()) as never;

async function keeperPath(enquiryId: string): Promise<string> {
  const given = await fetch(`${program.url}/api/enquiries/${enquiryId}/keeper-links`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ days: 30 }),
  });
  return `/k/${((await given.json()) as { secret: string }).secret}`;
}

async function findSheets(): Promise<Sheet[]> {
  const { enquiries } = await read('/api/enquiries');
  const { animals } = await read('/api/animals');
  const { placements } = await read('/api/placements');
  const enquiry = enquiries!.at(-1)!.id;
  const animal = animals![0]!.id;
  return [
    { name: 'enquiry', path: '/' },
    { name: 'plan', path: `/plan/${enquiry}` },
    { name: 'choose', path: `/choose/${enquiry}` },
    { name: 'proof', path: `/proof/${enquiry}` },
    { name: 'animals', path: '/animals' },
    { name: 'animal', path: `/animals/${animal}` },
    { name: 'examination', path: `/animals/${animal}/look-over` },
    { name: 'round', path: '/round' },
    { name: 'register', path: '/register' },
    { name: 'call', path: '/call' },
    { name: 'species', path: '/species' },
    { name: 'one-species', path: '/species/royal' },
    { name: 'space', path: '/space/corn' },
    { name: 'shelf', path: '/shelf' },
    { name: 'placements', path: '/placements' },
    { name: 'placement', path: `/placement/${placements![0]!.id}` },
    { name: 'today', path: '/today' },
    { name: 'aftercare', path: `/aftercare/${placements!.at(-1)!.id}` },
    { name: 'own-figures', path: '/own-figures' },
    { name: 'instruments', path: '/instruments' },
    { name: 'lists', path: '/lists' },
    { name: 'keeper', path: await keeperPath(enquiry) },
    { name: 'people', path: '/people' },
    { name: 'account', path: '/account' },
  ];
}

async function open(sheet: Sheet, width: number, more: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width, height: width < 600 ? 844 : 900 },
    locale: 'en-GB',
    reducedMotion: 'reduce',
    ...more,
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw new Error(`${sheet.name}: ${error.message}`);
  });
  await page.goto(`${program.url}${sheet.path}`, { waitUntil: 'networkidle' });
  const title = page.locator('h1').first();
  await title.waitFor({ state: 'attached', timeout: 30_000 }).catch(() => {
    throw new Error(`no sheet at ${sheet.path}`);
  });
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null, null, { timeout: 60_000 });
  return page;
}

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Things to press that are smaller than 44 px either way; a link within a sentence is as high as its line. */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const things = document.querySelectorAll<HTMLElement>('main button, main select, main input:not([type=hidden])');
    return (
      [...things]
        // A library's hidden twin of a control is pressed by no thumb.
        .filter((one) => one.closest('[aria-hidden="true"], .visually-hidden') === null)
        .filter(
          (one) =>
            one.checkVisibility({ opacityProperty: true }) && !(one as HTMLInputElement).matches('.slider-track input'),
        )
        .map((one) => ({ one, box: (one.closest('label') ?? one).getBoundingClientRect() }))
        .filter(
          ({ one, box }) => box.width > 2 && box.height > 2 && box.height < 43.5 && one.closest('p, li, td') === null,
        )
        .map(({ one, box }) => `${one.tagName} "${(one.textContent ?? '').slice(0, 30)}" ${Math.round(box.height)} px`)
    );
  });

async function findings(page: Page): Promise<string[]> {
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  return found.violations.map((row) => `${row.id}: ${row.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

describeInBrowser('every sheet', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('has no finding of the checker, on the light sheet and on the dark one', async () => {
    const wrong: Record<string, string[]> = {};
    for (const sheet of sheets) {
      const page = await open(sheet, 1280, { colorScheme: 'light' });
      const light = await findings(page);
      await page.emulateMedia({ colorScheme: 'dark' });
      const dark = await findings(page);
      if (light.length + dark.length > 0) wrong[sheet.name] = [...light, ...dark.map((one) => `dark ${one}`)];
      await page.context().close();
    }
    expect(wrong).toEqual({});
  }, 300_000);

  it('fits a small phone and twice the size of letters, with targets for a thumb', async () => {
    const wrong: Record<string, unknown> = {};
    for (const sheet of sheets) {
      const page = await open(sheet, 320);
      const small = await smallTargets(page);
      const found = await findings(page);
      const over = await sideways(page);
      // 1280 px at twice the size are 640 px.
      await page.setViewportSize({ width: 640, height: 450 });
      const overTwice = await sideways(page);
      if (over > 0 || overTwice > 0 || small.length > 0 || found.length > 0)
        wrong[sheet.name] = { over, overTwice, small, found };
      await page.context().close();
    }
    expect(wrong).toEqual({});
  }, 300_000);

  const shots = process.env.WARMSTEAD_GUIDE === 'yes' ? guideFolder : process.env.WARMSTEAD_SHOTS;
  const pictured = shots === undefined ? null : it;
  pictured?.(
    'is pictured',
    async () => {
      const guide = shots === guideFolder;
      mkdirSync(shots!, { recursive: true });
      for (const sheet of sheets.filter(({ name }) => !guide || guideNames.includes(name)))
        for (const width of guide ? [sheet.name === 'keeper' ? 390 : 1280] : [1280, 820, 390])
          for (const locale of guide ? ['en-GB'] : ['en-GB', 'de-DE']) {
            const page = await open(sheet, width, { locale });
            const name = guide ? `${sheet.name}-${width}.png` : `${sheet.name}-${width}-${locale.slice(0, 2)}.png`;
            await page.screenshot({ path: join(shots!, name), fullPage: !guide });
            await page.context().close();
          }
    },
    900_000,
  );
});
