// A day with the animals: find one, look it over nose to tail, do the round without a connection, show the register.
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
const seriousFindings = async (): Promise<readonly string[]> => {
  const { violations } = await checker(page).analyze();
  return violations
    .filter((one) => one.impact === 'serious' || one.impact === 'critical')
    .map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
};
const roundOnServer = async () =>
  (await (await fetch(`${program.url}/api/round`)).json()) as {
    sum: { done: number; enclosures: number };
    lines: { place: string; state: string; animals: { animalId: string }[] }[];
  };

/** More invented animals, each in an enclosure of its own, until there are so many. */
const fillUpTo = async (enclosures: number) => {
  for (let n = 13; n <= enclosures; n++) {
    const values = { speciesId: 'corn', callName: `Number ${n}`, sex: 'unknown', bred: 'bred' };
    const body = JSON.stringify({ values, enclosure: `A${n}`, quarantine: null });
    const taken = await fetch(`${program.url}/api/animals`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
    });
    expect(taken.status).toBe(201);
  }
};

describeInBrowser('a day with the animals', () => {
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

  test('the list names who is held and finds one by a word', async () => {
    await page.goto(`${program.url}/animals`);
    await page.getByRole('heading', { name: 'Animals here' }).waitFor();
    await shot('animals');
    await expect.poll(() => page.locator('.animal-row').count()).toBe(12);
    expect(await seriousFindings()).toEqual([]);
    await page.getByRole('searchbox').fill('junip');
    await expect.poll(() => page.locator('.animal-row').count()).toBe(1);
    await page.locator('.animal-row').click();
    await page.getByRole('heading', { name: 'Juniper' }).waitFor();
    await shot('animal');
    expect(await seriousFindings()).toEqual([]);
  });

  test('a look-over goes on after the page was closed, and one sign for the vet decides', async () => {
    await page.getByRole('button', { name: 'Look it over' }).click();
    for (let step = 1; step <= 3; step++) {
      await page.getByText(`Step ${step} of 12`).waitFor();
      await page.getByRole('button', { name: 'Normal. Next' }).click();
    }
    await page.getByText('Step 4 of 12').waitFor();
    await page.reload();
    await page.getByText('Step 4 of 12').waitFor();
    await shot('look-over');
    expect(await seriousFindings()).toEqual([]);
    await page.getByLabel(/Breathes with open mouth/).check();
    await page.getByRole('button', { name: 'Seen. Next' }).click();
    for (let step = 5; step <= 12; step++) {
      await page.getByText(`Step ${step} of 12`).waitFor();
      await page.getByRole('button', { name: 'Normal. Next' }).click();
    }
    await page.getByRole('button', { name: 'Finish' }).click();
    await page.getByRole('heading', { name: 'Hold it and ask the vet' }).waitFor();
    expect(await page.getByText('vet now').count()).toBeGreaterThan(0);
    await shot('look-result');
    await page.getByRole('button', { name: 'Back to the animal' }).click();
    await page.getByRole('heading', { name: 'For the vet: hold it and ask' }).waitFor();
  });

  test('a slip of the pen is corrected with its reason, and the old figure stays to be read', async () => {
    await page.goto(`${program.url}/animals`);
    await page.getByRole('searchbox').fill('sorrel');
    await page.locator('.animal-row').click();
    await page.getByRole('heading', { name: 'Sorrel' }).waitFor();
    const line = page.locator('.history-list li', { hasText: 'Offered food' }).first();
    expect(await line.textContent()).toContain('Mouse, first fur');
    await line.getByRole('button', { name: 'Correct it' }).click();
    await line.getByLabel('Prey').selectOption({ label: 'Mouse, hopper' });
    expect(await seriousFindings()).toEqual([]);
    const write = line.getByRole('button', { name: 'Write the correction down' });
    expect(await write.isDisabled()).toBe(true);
    await line.getByLabel('Why is it corrected?').fill('wrong box of prey');
    await shot('correct-entry');
    await write.click();
    const replaced = page.locator('.history-list li.history-replaced', { hasText: 'Mouse, first fur' });
    await replaced.first().waitFor();
    const mended = page.locator('.history-list li', { hasText: 'wrong box of prey' });
    expect(await mended.first().textContent()).toContain('Mouse, hopper');
  });

  test('the round is done without a connection, survives a closed page, and arrives by itself', async () => {
    await fillUpTo(40);
    await page.setViewportSize({ width: 412, height: 860 });
    await page.goto(`${program.url}/round`);
    await page.getByRole('heading', { name: 'Daily round' }).waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.locator('.round-row').first().waitFor();
    await shot('round');
    expect(await seriousFindings()).toEqual([]);
    await expect.poll(() => page.getByText('days missed before today').count()).toBe(1);
    await context.setOffline(true);
    const began = Date.now();
    for (let n = 1; n <= 40; n++) await page.getByRole('button', { name: `A${n}: Well` }).click();
    const tookMs = Date.now() - began;
    await page.getByText('40 checks wait on this device').waitFor();
    console.log(`forty enclosures touched in ${(tookMs / 1000).toFixed(1)} s by a machine`);
    expect(tookMs).toBeLessThan(120_000);
    await page.reload();
    await page.getByText('40 of 40 done').waitFor();
    await shot('round-offline');
    expect((await roundOnServer()).sum.done).toBe(0);

    // A second phone in the same rack room, without a connection as well, looks at the same enclosure a little later.
    const other = await browser.newContext({ viewport: { width: 412, height: 860 }, locale: 'en-GB' });
    const second = await other.newPage();
    await second.goto(`${program.url}/round`);
    await second.locator('.round-row').first().waitFor();
    await other.setOffline(true);
    await second.getByRole('button', { name: 'A1: Something' }).click();
    await second.getByText('Seen, but odd').click();
    await second.locator('#round-note-A1').fill('lies in the bowl');
    await second.getByRole('button', { name: 'Keep' }).click();
    await second.getByText('1 checks wait on this device').waitFor();
    await other.setOffline(false);
    await second.getByText('All checks are with the shop computer.').waitFor({ timeout: 30_000 });
    await context.setOffline(false);
    await page.getByText('All checks are with the shop computer.').waitFor({ timeout: 30_000 });
    const { sum, lines } = await roundOnServer();
    expect(sum).toMatchObject({ done: 40, enclosures: 40 });
    const first = lines.find((line) => line.place === 'A1');
    expect(first?.state, 'the later look stands, though it came in first').toBe('stands-out');
    const { history } = (await (await fetch(`${program.url}/api/animals/${first?.animals[0]?.animalId}`)).json()) as {
      history: { kind: string; body: { state?: string; note?: string } }[];
    };
    const looks = history.filter((one) => one.kind === 'round').slice(-2);
    expect(looks.map((one) => one.body.state).sort(), 'both stay to be read').toEqual(['look', 'well']);
    await other.close();
  });

  test('the inspector finds one animal, what is missing, and prints it', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.goto(`${program.url}/register`);
    await page.getByRole('searchbox').fill('teasel');
    await page.getByText('What is missing: Full name of the supplier').first().waitFor();
    await shot('register');
    expect(await seriousFindings()).toEqual([]);
    const link = await page.getByRole('link', { name: 'As A4 pages' }).getAttribute('href');
    const pdf = await fetch(`${program.url}${link}`);
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
  });

  test('a call with a red flag does not wait for questions', async () => {
    await page.goto(`${program.url}/call`);
    await page.getByText('Ask first what it is.').waitFor();
    await page.getByLabel('Does not eat').check({ force: true });
    await page.getByRole('heading', { name: 'Ask on' }).waitFor();
    await page.getByLabel(/Limp, or cannot/).check();
    await page.getByRole('heading', { name: 'Vet now' }).waitFor();
    await shot('call');
    expect(await seriousFindings()).toEqual([]);
  });
});
