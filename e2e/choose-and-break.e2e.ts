// A planned home is fitted with a kit of the shelf, its faults are played, and the boxes of the coming years are priced.
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { enquiryDraft } from './support/draft.ts';
import { unreadPictures } from './support/pictures.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let page: Page;

const shots = process.env.WARMSTEAD_SHOTS;
const shot = async (name: string) => {
  if (shots) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const findings = async (): Promise<readonly string[]> =>
  (await checker(page).analyze()).violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
/** Wide and narrow: nothing hangs over, nothing bars anyone. */
const look = async (name: string) => {
  for (const width of [1200, 390]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await sideways(page);
    await shot(`${name}-${width}`);
    expect(over, `${name} ${width}`).toBe(0);
    expect(await findings(), `${name} ${width}`).toEqual([]);
  }
  await page.setViewportSize({ width: 1200, height: 900 });
  expect(await unreadPictures(page), name).toEqual([]);
};

/** What a list says in one of its columns, without the head that a phone shows beside it. */
const cellsOf = (table: Locator, column: number) =>
  table
    .locator('tbody tr')
    .evaluateAll(
      (rows, at) => rows.map((row) => (row.children[at]?.querySelector('div') ?? row.children[at])?.textContent ?? ''),
      column,
    );
const figureOf = (text: string) => Number(/-?\d+(?:\.\d+)?/.exec(text.replace(/[,\u202f\u00a0]/g, ''))?.[0]);
/** Up, down, or level. */
const wayOf = (figures: readonly number[]) =>
  Math.sign((figures.at(-1) ?? 0) - (figures[0] ?? 0)) *
  Number(figures.every((v, i) => i === 0 || (v - figures[i - 1]!) * ((figures.at(-1) ?? 0) - figures[0]!) >= 0));

/** Every head of every list is reached by tabbing on from the one before, and sorts by Enter and by space.
 *  @returns how many lists and heads there are */
const sortsByKeyboard = async () => {
  const tables = page.locator('.sort-table');
  let heads = 0;
  for (let t = 0; t < (await tables.count()); t++) {
    const table = tables.nth(t);
    const columns = table.locator('thead th:has(button)');
    for (let c = 0; c < (await columns.count()); c++) {
      const head = columns.nth(c);
      const button = head.getByRole('button');
      if (c === 0) await button.focus();
      else await page.keyboard.press('Tab');
      const where = `${await table.locator('caption').textContent()}: ${await button.textContent()}`;
      expect(await button.evaluate((one) => one === document.activeElement), where).toBe(true);
      const before = await head.getAttribute('aria-sort');
      await page.keyboard.press('Enter');
      const once = await head.getAttribute('aria-sort');
      const one = await cellsOf(table, c);
      await page.keyboard.press('Space');
      const other = await cellsOf(table, c);
      expect(once, where).toBe(before === 'ascending' ? 'descending' : 'ascending');
      expect(await head.getAttribute('aria-sort'), where).toBe(once === 'ascending' ? 'descending' : 'ascending');
      expect(await table.locator('[aria-sort="ascending"], [aria-sort="descending"]').count(), where).toBe(1);
      expect([...other].sort(), where).toEqual([...one].sort());
      if (new Set(one).size === one.length && one.length > 1) expect(other, where).not.toEqual(one);
      const numeric = await table
        .locator('tbody tr')
        .first()
        .locator('> *')
        .nth(c)
        .evaluate((cell) => cell.className === 'sort-number');
      if (numeric) {
        const figures = one.map(figureOf).filter((v) => !Number.isNaN(v));
        const turned = other.map(figureOf).filter((v) => !Number.isNaN(v));
        expect(new Set(figures).size === 1 || wayOf(figures) !== 0, `${where} ${figures.join(' ')}`).toBe(true);
        expect(wayOf(figures) + wayOf(turned), where).toBe(0);
      }
      heads++;
    }
  }
  return { lists: await tables.count(), heads };
};

/** Every picture of figures has its table in the same figure. */
const figuresWithoutTable = () =>
  page
    .locator('main figure')
    .evaluateAll((all) =>
      all
        .filter((one) => one.querySelector('svg[role="img"]') && !one.querySelector('table'))
        .map((one) => one.textContent?.slice(0, 60)),
    );

describeInBrowser('choosing, costing and breaking a home', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    const context = await browser.newContext({ viewport: { width: 1200, height: 900 }, locale: 'en-GB' });
    page = await context.newPage();
    await page.addInitScript((kept) => {
      if (!localStorage.getItem('warmstead-draft-1')) localStorage.setItem('warmstead-draft-1', kept);
    }, enquiryDraft('tub-mat-600'));
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('kits come in order, sorted by keyboard, and one goes into the plan', async () => {
    await page.goto(`${program.url}/choose`);
    await page.getByRole('button', { name: 'Put this kit into the plan' }).waitFor({ timeout: 90_000 });
    await page.getByText(/versions solved/).waitFor();
    await page.locator('progress').waitFor({ state: 'detached', timeout: 90_000 });
    await look('kits');
    const cost = page.getByRole('columnheader', { name: /^Cost/ }).first();
    await cost.getByRole('button').focus();
    await page.keyboard.press('Enter');
    expect(await cost.getAttribute('aria-sort')).toBe('ascending');
    const sums = await page.locator('.sort-table').first().locator('tbody tr td:nth-child(7)').allTextContents();
    const money = sums.map((s) => Number(s.replace(/[^\d]/g, '')));
    expect(money.length).toBeGreaterThanOrEqual(3);
    expect(money).toEqual([...money].sort((a, b) => a - b));
    await page.keyboard.press('Enter');
    expect(await cost.getAttribute('aria-sort')).toBe('descending');
    await page.getByText('Prices of the starter shelf are invented.').first().waitFor();
    const { lists, heads } = await sortsByKeyboard();
    expect(lists).toBeGreaterThanOrEqual(2);
    expect(heads).toBeGreaterThanOrEqual(9);
    const second = page.locator('.sort-choose').nth(1);
    await second.focus();
    await page.keyboard.press('Enter');
    expect(await second.getAttribute('aria-pressed')).toBe('true');
    expect(await figuresWithoutTable()).toEqual([]);
    expect(await page.locator('main figure').count()).toBe(2);
  });

  test('faults are played one after the other and can be stopped', async () => {
    await page.getByText('What can go wrong', { exact: true }).click();
    await page.getByText(/Playing fault/).waitFor();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.getByRole('heading', { name: 'Power cut on the coldest night' }).waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Show' }).nth(2).click();
    await look('faults');
    expect(await sortsByKeyboard()).toEqual({ lists: 1, heads: 4 });
    expect(await figuresWithoutTable()).toEqual([]);
  });

  test('boxes are priced for the years to come', async () => {
    await page.getByText('As it grows', { exact: true }).click();
    await page.getByRole('heading', { name: /^Box by box/ }).waitFor({ timeout: 90_000 });
    await page.getByRole('heading', { name: /^The adult box at once/ }).waitFor();
    await look('stages');
    expect(await sortsByKeyboard()).toEqual({ lists: 2, heads: 12 });
    expect(await figuresWithoutTable()).toEqual([]);
  });

  test('the chosen kit stands in the plan, and undo takes it out again', async () => {
    await page.getByText('Kits', { exact: true }).click();
    await page.getByRole('button', { name: 'Put this kit into the plan' }).click({ timeout: 90_000 });
    await page.waitForURL(/\/plan/);
    const kept = () => page.evaluate(() => localStorage.getItem('warmstead-draft-1') ?? '');
    await expect.poll(kept).toContain('"id":"main"');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(kept).not.toContain('"id":"main"');
  });
});
