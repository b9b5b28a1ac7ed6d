// A customer is shown what the animal needs and what space each standard asks; the shop overrules a value and goes back.
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

let program: RunningProgram;
let browser: Browser;
let context: BrowserContext;
let page: Page;

const shots = process.env.WARMSTEAD_SHOTS;
const shot = async (name: string) => {
  if (shots) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const findings = async (): Promise<readonly string[]> =>
  (await checker(page).analyze()).violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
const sideways = async () =>
  await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describeInBrowser('the reference screens', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
    page = await context.newPage();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('from the list to one species, every value with its source', async () => {
    await page.goto(`${program.url}/species`);
    await page.getByRole('link', { name: /Corn snake/ }).click();
    await page.getByRole('heading', { name: 'Corn snake' }).waitFor();
    const rows = await page.locator('.ref-fact').count();
    expect(rows).toBeGreaterThan(25);
    expect(await page.locator('.ref-fact:has(.ref-mark), .ref-fact:has(.ref-source)').count()).toBe(rows);
    expect(await page.getByText('common practice, from memory').count()).toBeGreaterThan(5);
    for (const width of [1280, 820, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`species-${width}`);
      expect(await sideways()).toBe(0);
      expect(await findings()).toEqual([]);
    }
  });

  test('the shop overrules a value by keyboard, sees every fault, and goes back', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    const row = page.locator('[id="species.corn.all.rhPct"]');
    await row.getByRole('button', { name: 'Use our own value: Humidity' }).focus();
    await page.keyboard.press('Enter');
    const from = row.getByRole('textbox', { name: /^from/ });
    await from.fill('80');
    await from.press('Enter');
    await row.getByText('Low is above high.').waitFor();
    await row.getByText('none was given').waitFor();
    await shot('own-value');
    expect(await findings()).toEqual([]);
    await from.fill('45');
    await row.getByLabel('Why (customers read it)').fill('our rooms are dry');
    await page.keyboard.press('Enter');
    await row.getByText('because: our rooms are dry').waitFor();
    expect(await row.locator('.ref-value').textContent()).toContain('45–60');
    expect(await row.locator('.ref-own').textContent()).toContain('shipped value: 40–60');
    await page.emulateMedia({ media: 'print' });
    expect(await row.getByText('because: our rooms are dry').isVisible()).toBe(true);
    expect(await row.getByText('Use our own value').isVisible()).toBe(false);
    await shot('species-print');
    await page.emulateMedia({ media: 'screen' });
    await row.getByRole('button', { name: 'Use our own value: Humidity' }).click();
    await row.getByLabel('Why (customers read it)').fill('a humidifier now');
    await row.getByRole('button', { name: 'Back to the shipped value' }).click();
    await page.getByText('Earlier shop values').click();
    await page.getByText(/withdrawn by .*: a humidifier now/).waitFor();
    expect(await row.locator('.ref-value').textContent()).toContain('40–60');
  });

  test('the standards are compared for this animal and this box', async () => {
    await page.goto(`${program.url}/space/corn`);
    await page.getByRole('heading', { name: /how much floor is asked/ }).waitFor();
    const length = page.getByRole('textbox', { name: /Length of the snake/ });
    await length.fill('120');
    await length.press('Tab');
    const charity = page.locator('.space-lines li').filter({ hasText: 'Home minimum' });
    await charity.getByText('meets it').waitFor();
    const box = page.getByRole('textbox', { name: /^Length \(/ });
    await box.fill('119');
    await box.press('Tab');
    await charity.getByText('too small: length 119 cm of 120 cm').waitFor();
    for (const width of [1280, 820, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`space-${width}`);
      expect(await sideways()).toBe(0);
      expect(await findings()).toEqual([]);
    }
  });

  test('law, kit and rules: every place, amber in words, a stricter value kept and a looser one refused', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.goto(`${program.url}/species`);
    await page.getByRole('link', { name: 'Law, kit and rules of the shop' }).click();
    await page.getByRole('heading', { name: 'Law, kit and rules of the shop' }).waitFor();
    expect(await page.getByLabel('Place').locator('option').count()).toBe(14);
    await page.getByLabel('Place').selectOption('victoria');
    expect(await page.locator('.lists-row').count()).toBe(2);
    await page.getByLabel('Place').selectOption('england');
    const rule = page.locator('[data-row="gb-under-16-ew"]');
    await rule.locator('summary').click();
    await rule.getByRole('button', { name: 'Use our own value: Years' }).click();
    const form = rule.getByRole('form');
    await form.getByRole('textbox', { name: 'value' }).fill('14');
    await form.getByRole('textbox', { name: /^Why/ }).fill('we sell to adults only');
    await form.getByRole('button', { name: 'Keep' }).click();
    await rule.getByText('more care than the shipped value, never for less. Allowed: 16 or more.').waitFor();
    await form.getByRole('textbox', { name: 'value' }).fill('18');
    await form.getByRole('button', { name: 'Keep' }).click();
    await rule.getByText('we sell to adults only').waitFor();
    for (const width of [1280, 820, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`lists-${width}`);
      expect(await sideways()).toBe(0);
      expect(await findings()).toEqual([]);
    }
  });

  test('a value of the shop turns the verdict of the instant preview and is named there', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    const { enquiries } = await (await fetch(`${program.url}/api/enquiries`)).json();
    const plans = await Promise.all(
      enquiries.map(async ({ id }: { id: string }) => (await fetch(`${program.url}/api/enquiries/${id}`)).json()),
    );
    const corn = plans.find(({ document }) => document.answers?.speciesId === 'corn' && document.enclosure);
    const verdict = async () => {
      await page.goto(`${program.url}/plan/${corn.id}`);
      await page.locator('.needs').first().waitFor({ timeout: 60_000 });
      return await page.locator('[data-need="night-warmth"]').getAttribute('data-verdict');
    };
    expect(await verdict()).toBe('holds');
    const origin = program.url;
    for (const [key, value] of [
      ['warmAirC', { low: 29, high: 31 }],
      ['nightMinC', { low: 27, high: 28 }],
    ] as const) {
      const body = JSON.stringify({ path: `species.corn.all.${key}`, value, why: 'our vet asks for it' });
      const headers = { 'content-type': 'application/json', origin };
      expect((await fetch(`${origin}/api/overlays`, { method: 'POST', headers, body })).status).toBe(201);
    }
    expect(await verdict()).toBe('fails');
    await page.locator('[data-own="species.corn.all.nightMinC"]').getByText('our vet asks for it').waitFor();
    expect(await page.locator('[data-need="night-warmth"] .own-mark').textContent()).toContain('shop’s own value');
    await page.goto(`${program.url}/choose/${corn.id}`);
    await page.locator('[data-own="species.corn.all.nightMinC"]').waitFor({ timeout: 60_000 });
    expect(await findings()).toEqual([]);
  });

  test('in German', async () => {
    const german = await browser.newContext({ viewport: { width: 820, height: 900 }, locale: 'de-DE' });
    page = await german.newPage();
    await page.goto(`${program.url}/species/royal`);
    await page.getByText('Tiefstes nachts').first().waitFor();
    await shot('species-de');
    expect(await findings()).toEqual([]);
    await german.close();
  });
});
