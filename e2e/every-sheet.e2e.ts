// Every sheet of the program with the demonstration shop in it: no finding of the accessibility checker on light and dark
// sheets, nothing sideways at 320 px or at twice the size, targets for a thumb; in US units nothing metric is left. With WARMSTEAD_SHOTS its pictures at the
// desk's, a tablet's and a phone's width; with WARMSTEAD_GUIDE those of docs/guide (npm run guide).
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { routeFrom } from '../src/web/shell/router.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { metricLeft, usReader } from './support/metric-left.ts';
import { unreadPictures } from './support/pictures.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { type FoundSheet, findings, findSheets, openSheet, sideways, smallTargets } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let sheets: readonly FoundSheet[];

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const guideFolder = join(root, 'docs', 'guide', 'pictures');
const guideNames = ['enquiry', 'plan', 'choose', 'examination', 'today', 'people', 'register', 'keeper'];

describeInBrowser('every sheet', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets(program);
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('has no finding of the checker, light or dark, and no picture whose figures can only be seen', async () => {
    const wrong: Record<string, string[]> = {};
    for (const sheet of sheets) {
      const page = await openSheet(browser, program, sheet, 1280, { colorScheme: 'light' });
      const light = await findings(page);
      await page.emulateMedia({ colorScheme: 'dark' });
      const dark = await findings(page);
      if (sheet.name === 'choose') await page.locator('.kit-detail').waitFor({ timeout: 60_000 });
      const unread = await unreadPictures(page);
      const all = [...light, ...dark.map((one) => `dark ${one}`), ...unread];
      if (all.length > 0) wrong[sheet.name] = all;
      await page.close();
    }
    expect(wrong).toEqual({});
  }, 300_000);

  it('is every page and every address that the program has', () => {
    const files = readdirSync(join(root, 'src/web'), { recursive: true, encoding: 'utf8' });
    const pages = files.filter((file) => file.endsWith('-page.tsx')).map((file) => basename(file, '-page.tsx'));
    expect(sheets.map(({ page }) => page).sort()).toEqual(pages.sort());
    const router = readFileSync(join(root, 'src/web/shell/router.ts'), 'utf8');
    const kinds = new Set([...router.matchAll(/readonly page: '(\w+)'/g)].map((row) => row[1]));
    expect(new Set(sheets.map(({ path }) => routeFrom(path).page))).toEqual(kinds);
  });

  it('fits a small phone and twice the size of letters, with targets for a thumb', async () => {
    const wrong: Record<string, unknown> = {};
    for (const sheet of sheets) {
      const page = await openSheet(browser, program, sheet, 320);
      const small = await smallTargets(page);
      const found = await findings(page);
      const over = await sideways(page);
      // 1280 px at twice the size are 640 px.
      await page.setViewportSize({ width: 640, height: 450 });
      const overTwice = await sideways(page);
      if (over > 0 || overTwice > 0 || small.length > 0 || found.length > 0)
        wrong[sheet.name] = { over, overTwice, small, found };
      await page.close();
    }
    expect(wrong).toEqual({});
  }, 300_000);

  it('says °F, inches, ounces and the month first to whoever chose them', async () => {
    const wrong: Record<string, string[]> = {};
    let inUsUnits = 0;
    for (const sheet of sheets) {
      const page = await openSheet(browser, program, sheet, 1280, usReader(program.url));
      if (sheet.name === 'choose') await page.locator('.kit-detail').waitFor({ timeout: 60_000 });
      const { left, inUsUnits: said } = await metricLeft(page);
      inUsUnits += said;
      if (left.length > 0) wrong[sheet.name] = left;
      await page.close();
    }
    expect(wrong).toEqual({});
    expect(inUsUnits).toBeGreaterThan(50);
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
            const page = await openSheet(browser, program, sheet, width, { locale });
            // a picture of the choice, not of the first look
            if (sheet.name === 'choose')
              await page.getByRole('progressbar').waitFor({ state: 'hidden', timeout: 60_000 });
            const name = guide ? `${sheet.name}-${width}.png` : `${sheet.name}-${width}-${locale.slice(0, 2)}.png`;
            await page.screenshot({ path: join(shots!, name), fullPage: !guide });
            await page.close();
          }
    },
    900_000,
  );
});
