// A home is proven: a logger file is dropped, understood and judged; a keeper reads by phone, also without a connection.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { wallText } from '../src/proving/files/stamp.ts';
import { madeLog } from '../src/proving/testing/made-log.ts';
import { exampleDocument } from '../src/server/testing/example-document.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { fileWindow } from './support/choose-file.ts';
import { unreadPictures } from './support/pictures.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let id: string;

const shots = process.env.WARMSTEAD_SHOTS;
const shot = async (name: string, of: Page = page) => {
  if (shots) await of.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const findings = async (of: Page): Promise<readonly string[]> =>
  (await checker(of).analyze()).violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);

/** Three nights up to this morning, in the layout of a German spreadsheet, one column without a known name. */
function logFile(): string {
  const log = madeLog([
    { place: 'room', dayC: 18, nightC: 17 },
    { place: 'basking-surface', dayC: 34.5, nightC: 28 },
    { place: 'cool-air', dayC: 22.4, nightC: 20 },
  ]);
  const shiftS = Math.floor(Date.now() / 86_400_000) * 86_400 - 4 * 86_400 + 43_200 - log.timesS[0]!;
  const rows = log.timesS.map((t, i) =>
    [wallText(t + shiftS), ...log.channels.map((c) => String(c.values[i]).replace('.', ','))].join(';'),
  );
  const path = join(mkdtempSync(join(tmpdir(), 'warmstead-e2e-')), 'logger.csv');
  writeFileSync(path, ['Zeit;Raum °C;Kanal 2 °C;Kühles Ende °C', ...rows].join('\n'));
  return path;
}

describeInBrowser('the proof', () => {
  beforeAll(async () => {
    program = await startProgram();
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
    page = await context.newPage();
    const { answers, enclosure } = exampleDocument() as {
      answers: object;
      enclosure: { room: Record<string, Record<string, number>>; animal: object };
    };
    const { winter, summer } = enclosure.room as { winter: Record<string, number>; summer: Record<string, number> };
    const document = {
      format: 'warmstead-enquiry',
      version: 1,
      answers: {
        ...answers,
        speciesId: 'corn',
        stage: 'adult',
        totalLengthM: 1.15,
        massG: 560,
        winterLowC: winter.lowC,
        winterHighC: winter.highC,
        summerLowC: summer.lowC,
        summerHighC: summer.highC,
        rhPct: 55,
        summerRhPct: null,
        rhMeasured: true,
        sun: 'none',
        startFrom: null,
        cautionsExplained: true,
        standardId: null,
      },
      enclosure,
    };
    const opened = await fetch(`${program.url}/api/enquiries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ document }),
    });
    id = ((await opened.json()) as { id: string }).id;
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('a file is understood, its open question answered, the home judged', async () => {
    const refused: string[] = [];
    page.on('response', (one) => {
      if (one.status() >= 400) refused.push(`${one.status()} ${one.url()}`);
    });
    page.on('console', (one) => {
      if (one.type() === 'error') refused.push(one.text());
    });
    await page.goto(`${program.url}/proof/${id}`);
    await page.getByRole('heading', { name: 'Not judged yet' }).waitFor();
    await page.getByText(/No readings yet. Next:/).waitFor();
    for (const width of [1280, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`proof-empty-${width}`);
      expect(await sideways(page)).toBe(0);
      expect(await findings(page)).toEqual([]);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(refused).toEqual([]);
    const pick = page.getByRole('button', { name: 'Choose a logger file' });
    expect((await pick.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await pick.focus();
    const chooser = await fileWindow(page, () => page.keyboard.press('Enter'));
    await chooser.setFiles(logFile());
    await page.getByText(/451 of 452 rows read/).waitFor();
    await page.getByLabel('Where did "Kanal 2 °C" lie?').selectOption('basking-surface');
    await page.getByText('Basking surface', { exact: true }).first().waitFor();
    await page.waitForFunction(
      () =>
        document.querySelectorAll('.curve-name').length === 3 &&
        ![...document.querySelectorAll('.curve-name')].some((n) => n.textContent?.startsWith('Kanal')),
    );
    // It is stopped in the middle, and nothing of it is kept; then it is asked for again.
    const judge = page.getByRole('button', { name: 'Judge the home by these readings' });
    await judge.click();
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByText('Stopped. Nothing of it was kept.').waitFor();
    expect(await findings(page)).toEqual([]);
    expect(await (await fetch(`${program.url}/api/enquiries/${id}/proof`)).json()).toMatchObject({ proof: null });
    await judge.click();
    await page.getByRole('heading', { name: 'Failed' }).waitFor({ timeout: 90_000 });
    await page.getByText(/Turn the dial/).waitFor();
    expect(await page.locator('.curve-line').count()).toBe(3);
    expect(await unreadPictures(page)).toEqual([]);
    for (const width of [1280, 820, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`proof-${width}`);
      expect(await sideways(page)).toBe(0);
      expect(await findings(page)).toEqual([]);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  test('the shop sets its own rule, and reads beside the answer who set it and why', async () => {
    await page.getByText('Change the shop’s rule').click();
    await page.getByLabel(/New value/).fill('5');
    await page.getByLabel('Why', { exact: true }).fill('two more for a hatchling');
    await page.getByRole('button', { name: 'Keep for this branch' }).click();
    await page.getByText(/Set by the shop: Whole nights = 5 .*two more for a hatchling/).waitFor();
    await shot('proof-rule-1280');
  });

  test('an instrument is checked in ice, step by step', async () => {
    await page.getByLabel('What is written on it').fill('probe 7');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByRole('button', { name: 'Check it in ice' }).click();
    await page
      .getByText(/crushed ice/)
      .first()
      .waitFor();
    await page.getByLabel('Reading 1 (°C)').fill('0.4');
    await page.getByLabel('Reading 2 (°C)').fill('0,4');
    await page.getByRole('button', { name: 'Keep this check' }).click();
    await page.getByText(/checked, correction −0.4/).waitFor();
  });

  test('a keeper reads by phone, also without a connection, until the shop withdraws the link', async () => {
    await page.getByRole('button', { name: 'Make a link' }).click();
    const address = await page.locator('.keeper-link a').getAttribute('href');
    const phone = await (
      await browser.newContext({ viewport: { width: 390, height: 800 }, locale: 'en-GB' })
    ).newPage();
    await phone.context().clearCookies(); // a keeper has no account
    await phone.goto(address ?? '');
    await phone.getByText('Not yet proven').waitFor();
    await shot('keeper-empty-390', phone);
    expect(await phone.getByText('corn', { exact: false }).count()).toBe(0);
    await phone.getByRole('textbox', { name: /Warm spot/ }).fill('31.5');
    await phone.getByRole('textbox', { name: /Cool end/ }).fill('22');
    await shot('keeper-390', phone);
    expect(await sideways(phone)).toBe(0);
    expect(await findings(phone)).toEqual([]);
    await phone.getByRole('button', { name: 'Send these readings' }).click();
    await phone.getByText('Sent. Thank you.').waitFor();
    await shot('keeper-sent-390', phone);

    await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
    // once more with the pages kept, then without a connection from the start
    await phone.reload();
    await phone.getByText('Not yet proven').waitFor();
    await phone.waitForFunction(async () => {
      const kept = await caches.open('warmstead-pages-1');
      return (await kept.keys()).filter((one) => /keeper-page|index-/.test(one.url)).length >= 2;
    });
    await phone.context().setOffline(true);
    await phone.reload();
    await phone.getByRole('textbox', { name: /Warm spot/ }).fill('31.1');
    await phone.getByRole('button', { name: 'Send these readings' }).click();
    await phone.getByText(/1 wait on this phone/).waitFor();
    await phone.context().setOffline(false);
    await phone.evaluate(() => dispatchEvent(new Event('online')));
    await phone.locator('.proof-list li').nth(1).waitFor();
    await expect.poll(() => phone.getByText(/wait on this phone/).count()).toBe(0);

    await page.getByRole('button', { name: 'Withdraw' }).click();
    await page.getByText('withdrawn').waitFor();
    await phone.reload();
    await phone.getByText(/does not work, or no longer/).waitFor();
  });
});
