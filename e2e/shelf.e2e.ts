// Staff keep the shop's shelf: a price, a sold-out article, a new one, a table out and in, and back again; then a customer
// has a heater already and the search counts it at nothing.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { enquiryDraft } from './support/draft.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let page: Page;
const folder = mkdtempSync(join(tmpdir(), 'warmstead-shelf-'));

const shots = process.env.WARMSTEAD_SHOTS;
/** Wide, middling and narrow: nothing hangs over, nothing bars anyone. */
const look = async (name: string) => {
  for (const width of [1280, 820, 390]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await sideways(page);
    if (shots) await page.screenshot({ path: `${shots}/${name}-${width}.png`, fullPage: true });
    expect(over, `${name} ${width}`).toBe(0);
    const { violations } = await checker(page).analyze();
    expect(
      violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`),
      `${name} ${width}`,
    ).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
};
const row = (name: string) => page.getByRole('row').filter({ hasText: name });

describeInBrowser('the shelf', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
    page = await context.newPage();
    await page.addInitScript((kept) => {
      if (!localStorage.getItem('warmstead-draft-1')) localStorage.setItem('warmstead-draft-1', kept);
    }, enquiryDraft('tub-mat-600'));
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
    rmSync(folder, { recursive: true });
  });

  test('a price is changed and an article is sold out', async () => {
    await page.goto(`${program.url}/shelf`);
    await page.getByText('Prices of the starter shelf are invented.').first().waitFor();
    await row('Heat mat 12 W').getByRole('button', { name: 'Show' }).click();
    await page.getByRole('textbox', { name: 'Price' }).fill('19.50');
    await look('shelf-article');
    await page.getByRole('button', { name: 'Keep', exact: true }).last().click();
    await page.getByText('Kept. 69 articles stand on the shelf.').waitFor();
    await row('Heat mat 12 W').getByText('£19.50').waitFor();
    await row('Heat mat 16 W').getByRole('button', { name: 'in stock' }).click();
    await row('Heat mat 16 W').getByRole('button', { name: 'sold out' }).waitFor();
  });

  test('a new article lacks half: everything is told at once; then it stands', async () => {
    await page.getByLabel('Kind', { exact: true }).selectOption('thermostat');
    await page.getByRole('button', { name: 'New: thermostat' }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).last().click();
    await page.getByText('Nothing was changed: 5 things are wrong.').waitFor();
    await page.getByRole('textbox', { name: 'Name' }).last().fill('Dimming thermostat 400 W');
    await page.getByRole('textbox', { name: 'Price' }).fill('70');
    await page.getByLabel('How it controls').selectOption('dimming');
    await page.getByRole('textbox', { name: /Most it may switch/ }).fill('400');
    await page.getByRole('textbox', { name: /Band or differential/ }).fill('2');
    await page.getByRole('button', { name: 'Keep', exact: true }).last().click();
    await page.getByText('Kept. 70 articles stand on the shelf.').waitFor();
  });

  test('the table goes out, comes in changed, a bad one changes nothing, and the last change is undone', async () => {
    const waiting = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Save as a table (CSV)' }).click();
    const file = join(folder, 'shelf.csv');
    await (await waiting).saveAs(file);
    const table = readFileSync(file, 'utf8');
    expect(table).toContain('Dimming thermostat 400 W');
    const bring = async (text: string) => {
      writeFileSync(file, text);
      await page.locator('input[type=file]').setInputFiles(file);
    };
    await bring(
      table.replace('warmstead-shelf,1,Starter shelf,GBP,invented', 'warmstead-shelf,1,Our shelf,GBP,charged'),
    );
    await page.getByText(/^Our shelf: 70 articles/).waitFor();
    await bring(table.replace(',19.5,', ',minus,').replace('xps', 'moonrock'));
    await page.getByText('Nothing was changed: 2 things are wrong.').waitFor();
    await look('shelf');
    await page.getByRole('button', { name: 'Undo the last change' }).click();
    await page.getByText(/^Starter shelf: 70 articles/).waitFor();
  });

  test('the search looks on this shelf, and what the customer has costs nothing', async () => {
    await page.goto(`${program.url}/choose`);
    await page.getByRole('button', { name: 'Put this kit into the plan' }).waitFor({ timeout: 90_000 });
    await page.getByText(/Articles of the shelf that the customer has already: 0/).click();
    await page.getByLabel('Heat mat 16 W, 28 x 36 cm').check();
    await page.getByText(/Articles of the shelf that the customer has already: 1/).waitFor();
    await page.locator('progress').waitFor({ state: 'detached', timeout: 90_000 });
    const mine = page.locator('.sort-table').first().getByRole('row').filter({ hasText: 'Heat mat 16 W' }).first();
    await mine.getByRole('button', { name: 'Show' }).click();
    await page.getByText('there already').first().waitFor();
    await look('choose-owned');
  });
});
