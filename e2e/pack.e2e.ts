// The pack in a real browser: from the placement's sheet, in the keeper's language, as a file that opens; on a phone too.
import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleDocument } from '../src/server/testing/example-document.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
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

async function send(path: string, body: object): Promise<string> {
  const answer = await fetch(`${program.url}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return ((await answer.json()) as { id: string }).id;
}

describeInBrowser('the pack', () => {
  beforeAll(async () => {
    program = await startProgram();
    browser = await launchBrowser();
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' })).newPage();
    const values = { speciesId: 'corn', callName: 'Juniper', sex: 'female', hatched: '2024-07-01' };
    const animalId = await send('/api/animals', { values, enclosure: 'A1', quarantine: null });
    const enquiryId = await send('/api/enquiries', { document: exampleDocument() });
    const id = await send('/api/placements', { enquiryId, animalId });
    await page.goto(`${program.url}/placement/${id}`);
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('is made in German at an English desk, while the page goes on, and is saved as a PDF', async () => {
    await page.getByRole('heading', { name: 'Pack', exact: true }).waitFor();
    await page.getByText(/says that it is a draft/).waitFor();
    await page.getByLabel('Language of the pack').selectOption('de');
    await page.getByRole('button', { name: 'Make the pack' }).press('Enter');
    await page.getByText('Working out heat, power cut and heat wave for this very box …').waitFor();
    await page.getByText('The pack is ready.').waitFor({ timeout: 60_000 });
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Save it' }).click(),
    ]);
    expect(saved.suggestedFilename()).toMatch(/^pack-[0-9a-f]{8}-de\.pdf$/);
    const pdf = await readFile(await saved.path());
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.toString('latin1')).toContain('/Lang (de)');
    expect(await page.getByRole('link', { name: 'Open the pack' }).getAttribute('href')).toMatch(/^blob:/);
  });

  test('fits a desk, a tablet and a phone, with targets for a thumb and nothing for the accessibility checker', async () => {
    for (const width of [1280, 820, 390]) {
      await page.setViewportSize({ width, height: 900 });
      await shot(`placement-pack-${width}`);
      expect(await sideways()).toBe(0);
      for (const name of ['Open the pack', 'Save it']) {
        const box = await page.getByRole('link', { name }).boundingBox();
        expect(box?.height).toBeGreaterThanOrEqual(44);
      }
      expect(await findings()).toEqual([]);
    }
  });
});
