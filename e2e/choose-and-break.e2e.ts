// A planned home is fitted with a kit of the shelf, its faults are played, and the boxes of the coming years are priced.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { enquiryDraft } from './support/draft.ts';
import { unreadPictures } from './support/pictures.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

let program: RunningProgram;
let browser: Browser;
let page: Page;

const shots = process.env.WARMSTEAD_SHOTS;
const shot = async (name: string) => {
  if (shots) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const findings = async (): Promise<readonly string[]> =>
  (await checker(page).analyze()).violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
const sideways = async () =>
  await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
/** Wide and narrow: nothing hangs over, nothing bars anyone. */
const look = async (name: string) => {
  for (const width of [1200, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await page.waitForTimeout(150);
    await shot(`${name}-${width}`);
    expect(await sideways(), `${name} ${width}`).toBe(0);
    expect(await findings(), `${name} ${width}`).toEqual([]);
  }
  await page.setViewportSize({ width: 1200, height: 900 });
  expect(await unreadPictures(page), name).toEqual([]);
};

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
    await page.getByRole('button', { name: 'Put this kit into the plan' }).waitFor({ timeout: 60_000 });
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
  });

  test('faults are played one after the other and can be stopped', async () => {
    await page.getByText('What can go wrong', { exact: true }).click();
    await page.getByText(/Playing fault/).waitFor();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.getByRole('heading', { name: 'Power cut on the coldest night' }).waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Show' }).nth(2).click();
    await look('faults');
  });

  test('boxes are priced for the years to come', async () => {
    await page.getByText('As it grows', { exact: true }).click();
    await page.getByRole('heading', { name: /^Box by box/ }).waitFor({ timeout: 90_000 });
    await page.getByRole('heading', { name: /^The adult box at once/ }).waitFor();
    await look('stages');
  });

  test('the chosen kit stands in the plan, and undo takes it out again', async () => {
    await page.getByText('Kits', { exact: true }).click();
    await page.getByRole('button', { name: 'Put this kit into the plan' }).click({ timeout: 60_000 });
    await page.waitForURL(/\/plan/);
    const kept = () => page.evaluate(() => localStorage.getItem('warmstead-draft-1') ?? '');
    await expect.poll(kept, { timeout: 10_000 }).toContain('"id":"main"');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(kept, { timeout: 10_000 }).not.toContain('"id":"main"');
  });
});
