// A day's work by keyboard alone: an animal is written of and looked over, its home proven, it leaves and comes back, the
// keeper's answer is entered, the shelf mended, a kit chosen. Each is interrupted by a reload in the middle of what is
// written, and each is taken back. No mouse, and no fingers: every control is reached by Tab.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { takeInFit } from '../src/server/testing/fit-animal.ts';
import { fittingHome, logFileOf } from '../src/server/testing/fitting-home.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { fileWindow } from './support/choose-file.ts';
import { type Keyboard, keyboardOf } from './support/keyboard.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { noonFourDaysAgoS, provenHome } from './support/proven-home.ts';

let program: RunningProgram;
let browser: Browser;
let page: Page;
let keys: Keyboard;
let animalId: string;
let enquiryId: string;

const daysAgo = (days: number) => new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);
const send = async (path: string, body: object): Promise<Record<string, unknown>> => {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${program.url}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
  if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
  return (await answer.json()) as Record<string, unknown>;
};
const read = async (path: string) => (await fetch(`${program.url}${path}`)).json() as Promise<Record<string, unknown>>;
/** A plan, a proof or a search takes long on a machine that has other work. */
const longMs = 90_000;
const heading = (name: RegExp | string) => page.getByRole('heading', { name }).first().waitFor({ timeout: longMs });
/** Which of these says it, counted from 0. */
const placeOf = (all: string, words: string) =>
  page.locator(all).evaluateAll((found, said) => found.findIndex((one) => one.textContent?.includes(said)), words);
/** Waits until this stands in a field. */
const stands = (label: RegExp | string, wanted: string) =>
  expect.poll(() => page.getByLabel(label).first().inputValue()).toBe(wanted);

describeInBrowser('work by keyboard alone', () => {
  beforeAll(async () => {
    program = await startProgram();
    browser = await launchBrowser();
    animalId = await takeInFit(send, daysAgo);
    enquiryId = await provenHome(program.url, 'Flat above the bakery', { proven: false });
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' })).newPage();
    page.on('pageerror', (error) => {
      throw error;
    });
    keys = keyboardOf(page);
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('an entry is written, and withdrawn; the register is corrected', async () => {
    await page.goto(program.url);
    await keys.enter(/^Animals$/, 'nav');
    await heading('Animals here');
    await keys.fill(/^Find/, 'junip');
    await keys.enter(/Juniper/, 'main');
    await heading('Juniper');
    // the number is still in the field's hands when the page goes
    await keys.to(/^Mass/, '.entry-form');
    await keys.type('570,8');
    await page.reload();
    await heading('Juniper');
    await stands(/^Mass, g/, '570.8');
    await keys.enter(/^Write it down$/);
    await page.getByText('Written down.', { exact: true }).waitFor();
    await stands(/^Mass, g/, '');
    const line = page.locator('.history-list li', { hasText: '570.8' }).first();
    await line.waitFor();
    await keys.enter(/^Withdraw$/, '.history-list li:first-child');
    await keys.fill(/Why is it withdrawn/, 'read off the wrong scale');
    await page.reload();
    await heading('Juniper');
    await stands(/Why is it withdrawn/, 'read off the wrong scale');
    await keys.enter(/^Withdraw$/, '.text-field');
    await page.getByText('withdrawn: read off the wrong scale').first().waitFor();

    await keys.enter(/^Correct the register$/);
    await keys.fill(/^Full name of the supplier|supplier/i, 'Another Invented Supplier', '.register-fields');
    await page.reload();
    await heading('Juniper');
    const registered = () =>
      page.locator('.register-fields input').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    await expect.poll(registered).toContain('Another Invented Supplier');
    await keys.fill(/^Why is it changed/, 'heard on the telephone');
    await keys.enter(/^Write it down$/, 'section:has(.register-fields)');
    await page.locator('.register-list', { hasText: 'Another Invented Supplier' }).waitFor();
  }, 240_000);

  test('a look-over, interrupted', async () => {
    await page.goto(`${program.url}/animals/${animalId}`);
    await keys.enter(/look-over|Look it over/i);
    await page.getByText('Step 1 of 12').waitFor();
    for (let step = 1; step <= 5; step++) {
      await keys.enter(/^Normal\. Next$/);
      await page.getByText(`Step ${step + 1} of 12`).waitFor();
    }
    await page.reload();
    await page.getByText('Step 6 of 12').waitFor();
    for (let step = 6; step <= 12; step++) {
      await page.getByText(`Step ${step} of 12`).waitFor();
      await keys.enter(/^Normal\. Next$/);
    }
    await page.getByRole('button', { name: 'Finish' }).waitFor();
    await keys.to(/^Mass, if it is weighed/);
    await keys.type('563');
    await page.reload();
    await page.getByRole('button', { name: 'Finish' }).waitFor();
    await stands(/^Mass, if it is weighed/, '563');
    await keys.enter(/^Finish$/);
    await heading('Nothing that holds it');
    await keys.enter(/^Back to the animal$/);
    await heading('Juniper');
    await page.locator('.history-list li', { hasText: 'Look-over' }).first().waitFor();
  }, 240_000);

  test('a proof: readings typed, a file chosen and judged, set aside and brought back', async () => {
    await page.goto(`${program.url}/proof/${enquiryId}`);
    await heading('Not judged yet');
    await keys.to(/^Basking surface/, 'section[aria-labelledby=hand-title]');
    await keys.type('31.5');
    await page.reload();
    await heading('Not judged yet');
    await page.waitForLoadState('networkidle');
    await stands(/^Basking surface/, '31.5');
    const file = join(mkdtempSync(join(tmpdir(), 'warmstead-keys-')), 'log.csv');
    writeFileSync(file, logFileOf(fittingHome(), noonFourDaysAgoS()));
    await keys.to(/^Choose a logger file$/);
    const chooser = await fileWindow(page, () => keys.press('Enter'));
    await chooser.setFiles(file);
    await page
      .getByText(/rows read/)
      .first()
      .waitFor();
    await keys.enter(/^Set this file aside$/);
    await page.getByText(/Set aside, does not count: log.csv/).waitFor();
    await keys.enter(/count/i, 'p.field-hint');
    await page
      .getByText(/rows read/)
      .first()
      .waitFor();
    await keys.enter(/^Judge the home/);
    await heading('Proven');

    // A slip of the finger, an hour later: 31.5 was meant.
    await keys.fill(/^Basking surface/, '51.5', 'section[aria-labelledby=hand-title]');
    await keys.enter(/^Keep this reading$/);
    const typed = page.locator('section[aria-labelledby=hand-title] .proof-list li', { hasText: '51.5' });
    await typed.waitFor();
    await page.getByText('Home or readings have changed since this proof.').waitFor();
    await keys.enter(/^Set aside: reading of/);
    await keys.fill(/^What is wrong with it/, 'read 31.5');
    await page.reload();
    await stands(/^What is wrong with it/, 'read 31.5');
    await keys.enter(/^Set aside$/, 'section[aria-labelledby=hand-title]');
    await typed.getByText(/^Set aside by .*, does not count: read 31\.5$/).waitFor();
    expect(await typed.locator('s').textContent()).toContain('51.5');
    await keys.enter(/^Let it count again: reading of/);
    await typed.getByRole('button', { name: /^Set aside: reading of/ }).waitFor();
    await keys.enter(/^Set aside: reading of/);
    await keys.fill(/^What is wrong with it/, 'read 31.5');
    await keys.enter(/^Set aside$/, 'section[aria-labelledby=hand-title]');
    await typed.locator('s').waitFor();
    await keys.enter(/^Judge again$/);
    await page
      .getByText('Home or readings have changed since this proof.')
      .waitFor({ state: 'detached', timeout: longMs });
    await heading('Proven');
  }, 300_000);

  test('a release decided, and the animal comes back', async () => {
    await page.goto(`${program.url}/animals/${animalId}`);
    await keys.enter(/^Open a placement/);
    await heading('Placements');
    await keys.choose(/^Enquiry/, 'Flat');
    await keys.enter(/^Open the placement$/);
    await heading('Juniper and its home');
    await keys.choose(/^Place/, 'Eng', '#requirement-home-place');
    await page.reload();
    await heading('Juniper and its home');
    await expect.poll(() => page.locator('#requirement-home-place select').inputValue()).toBe('england');
    await keys.enter(/^Keep$/, '#requirement-home-place');
    await page.locator('#requirement-home-place').getByText('one law').waitFor();
    await keys.enter(/^Yes$/, '#requirement-buyer-age');
    await page.locator('#requirement-buyer-age').getByText('The buyer is 16 or older.').waitFor();
    await keys.enter(/^Yes$/, '#requirement-cautions');
    await page.locator('#requirement-cautions').getByText('Explained.').waitFor();
    await keys.fill(/^Practice/, 'Invented practice, 01234 567', '#requirement-vet');
    await page.reload();
    await heading('Juniper and its home');
    const practice = page.locator('#requirement-vet input').first();
    await expect.poll(() => practice.inputValue()).toBe('Invented practice, 01234 567');
    await keys.enter(/^Keep$/, '#requirement-vet');
    await page.locator('#requirement-vet').getByText('Invented practice, 01234 567').waitFor();
    await keys.enter(/^Yes$/, '#requirement-information');
    await page.getByText('Open: every requirement stands.').waitFor();
    await keys.enter(/^Release Juniper$/);
    await page.getByText(/^Sold on .*, released by/).waitFor();
  }, 240_000);

  test('what the keeper said is entered, and taken back', async () => {
    const { placements } = (await read('/api/placements')) as { placements: { id: string }[] };
    await page.goto(`${program.url}/aftercare/${placements[0]?.id}`);
    await heading('Aftercare: Juniper');
    await page.locator('.aftercare-task', { hasText: 'the first nights' }).first().waitFor();
    const call = `.aftercare-task:nth-child(${1 + (await placeOf('.aftercare-task', 'the first nights'))})`;
    await keys.enter(/^Enter what was said$/, call);
    await keys.to(/^It is well$/, call);
    await keys.press('Space');
    await page.reload();
    await heading('Aftercare: Juniper');
    await expect.poll(() => page.getByRole('radio', { name: 'It is well' }).isChecked()).toBe(true);
    await keys.enter(/^Keep the answer$/, call);
    await page.getByText('It is well', { exact: true }).first().waitFor();
    await keys.enter(/^Take back$/);
    await page.getByText('Nothing was heard yet.').waitFor();

    await page.goto(`${program.url}/placement/${placements[0]?.id}`);
    await heading('Juniper and its home');
    await keys.enter(/^The animal comes back$/);
    await keys.to(/circumstances/);
    await keys.press('Space');
    await keys.fill(/^Enclosure it goes to/, 'Q4');
    await page.reload();
    await heading('Juniper and its home');
    await stands('Enclosure it goes to', 'Q4');
    await keys.enter(/^Take it back$/);
    await page.getByText(/^Shut: /).waitFor();
    expect(await read(`/api/animals/${animalId}`)).toMatchObject({ gone: false, enclosure: 'Q4' });
  }, 240_000);

  test('an article of the shelf, and undo', async () => {
    await page.goto(`${program.url}/shelf`);
    const row = page.getByRole('row').filter({ hasText: 'Heat mat 12 W' });
    await row.waitFor();
    const price = await row.locator('td').nth(2).textContent();
    await keys.enter(
      /^Show/,
      `.sort-table tbody tr:nth-child(${1 + (await placeOf('.sort-table tbody tr', 'Heat mat 12 W'))})`,
    );
    await keys.to(/^Price/);
    await keys.press('ControlOrMeta+a');
    await keys.type('19.50');
    await page.reload();
    await row.waitFor();
    await expect.poll(() => page.getByRole('textbox', { name: /^Price/ }).inputValue()).toBe('19.5');
    await keys.enter(/^Keep$/, '.article-form');
    await row.getByText('£19.50').waitFor();
    await keys.enter(/^Undo the last change$/);
    await row.getByText(price ?? '').waitFor();
  }, 240_000);

  test('a kit is picked and goes into the plan, and undo takes it out', async () => {
    await page.goto(`${program.url}/plan/${enquiryId}`);
    await page.waitForSelector('h1[data-verdict]', { timeout: longMs });
    await page.goto(`${program.url}/choose`);
    await page.getByRole('button', { name: 'Put this kit into the plan' }).waitFor({ timeout: longMs });
    await page.locator('progress').waitFor({ state: 'detached', timeout: longMs });
    const rows = page.locator('.sort-table').first().locator('tbody tr');
    if ((await rows.count()) > 1) {
      await keys.enter(/^Show/, '.sort-table tbody tr:nth-child(2)');
      await page.locator('.sort-table tbody tr:nth-child(2)').getByRole('button', { pressed: true }).first().waitFor();
    }
    const keptBox = () =>
      page.evaluate(() =>
        JSON.stringify(JSON.parse(localStorage.getItem('warmstead-draft-1') ?? '').document.enclosure),
      );
    const before = await keptBox();
    await keys.enter(/^Put this kit into the plan$/);
    await page.waitForURL(/\/plan/);
    await expect.poll(keptBox).not.toBe(before);
    await page.reload();
    await page.waitForSelector('h1[data-verdict]', { timeout: longMs });
    await keys.enter(/^Undo$/);
    await expect.poll(keptBox).toBe(before);
  }, 300_000);
});
