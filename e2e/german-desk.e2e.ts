// The desk read in German with the demonstration shop in it: no English word is left on any sheet, in a name for screen
// readers or on a printed page. What may stay English is listed by name, with the reason.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { englishLeftIn } from './support/english-left.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { provenHome } from './support/proven-home.ts';

let program: RunningProgram;
let browser: Browser;
let ids: { enquiry: string; animal: string; placement: string; released: string; proven: string; keeper: string };

const read = async (path: string): Promise<Record<string, { id: string }[]>> =>
  (await (await fetch(`${program.url}${path}`)).json()) as never;

async function findIds(): Promise<typeof ids> {
  const { enquiries } = await read('/api/enquiries');
  const { animals } = await read('/api/animals');
  const { placements } = await read('/api/placements');
  const enquiry = enquiries!.at(-1)!.id;
  const link = await fetch(`${program.url}/api/enquiries/${enquiry}/keeper-links`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ days: 30 }),
  });
  const { secret } = (await link.json()) as { secret: string };
  const proven = await provenHome(program.url, 'Kornnatter, Zimmer im Süden', { proven: true });
  return {
    enquiry,
    animal: animals![0]!.id,
    placement: placements![0]!.id,
    released: placements!.at(-1)!.id,
    proven,
    keeper: secret,
  };
}

async function open(path: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    locale: 'de-DE',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(`${program.url}${path}`, { waitUntil: 'networkidle' });
  await settled(page);
  return page;
}

async function settled(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor({ state: 'attached', timeout: 30_000 });
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null, null, { timeout: 120_000 });
  // Folded parts are read as well.
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
}

async function leftOn(path: string, act: (page: Page) => Promise<void> = async () => undefined): Promise<string[]> {
  const page = await open(path);
  await act(page);
  await settled(page);
  const left = await englishLeftIn(page);
  await page.context().close();
  return left;
}

describeInBrowser('the German desk', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    ids = await findIds();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('has no English word on its sheets', async () => {
    const paths = [
      '/',
      `/plan/${ids.enquiry}`,
      `/plan/${ids.proven}`,
      `/choose/${ids.enquiry}`,
      `/proof/${ids.enquiry}`,
      `/proof/${ids.proven}`,
      '/animals',
      `/animals/${ids.animal}`,
      `/animals/${ids.animal}/look-over`,
      '/round',
      '/register',
      '/call',
      '/species',
      '/species/royal',
      '/species/corn',
      '/species/spotted',
      '/space/corn',
      '/shelf',
      '/placements',
      `/placement/${ids.placement}`,
      `/placement/${ids.released}`,
      '/today',
      `/aftercare/${ids.released}`,
      '/own-figures',
      '/instruments',
      '/lists',
      `/k/${ids.keeper}`,
      '/people',
      '/account',
    ];
    const left: Record<string, string[]> = {};
    for (const path of paths) {
      const found = await leftOn(path);
      if (found.length > 0) left[path] = found;
    }
    if (process.env.LEFT) writeFileSync(process.env.LEFT, JSON.stringify(left, null, 1));
    expect(left).toEqual({});
  }, 600_000);
});
