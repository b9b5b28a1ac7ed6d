// How fast is a search for kits where people wait for it: the built program in a real browser, two workers.
// Prints the first ranked answer and the settled one, from the moment that the sheet is asked: with the page just opened
// (nothing compiled yet), again with another home, and with another price of power. The load of the machine is beside them.
// Usage: node scripts/prepare.mjs build && tsx bench/search-browser.ts [wood-1200 glass-mesh-900]     Needs Chromium.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { enquiryDraft } from '../e2e/support/draft.ts';
import { signedIn, signInOwner } from '../e2e/support/owner.ts';

/** Times from the last `choose-asked` to the first and the settled answer, as the page itself marks them [ms]. */
async function marks(page: Page): Promise<{ readonly firstMs: number; readonly settledMs: number }> {
  await page.waitForFunction(() => performance.getEntriesByName('choose-settled').length > 0, null, {
    timeout: 120_000,
  });
  const [asked, first, settled] = await page.evaluate(() => {
    const found = ['choose-asked', 'choose-first', 'choose-settled'].map(
      (name) => performance.getEntriesByName(name).at(-1)?.startTime ?? Number.NaN,
    );
    performance.clearMarks();
    return found;
  });
  return { firstMs: first! - asked!, settledMs: settled! - asked! };
}

const boxes = process.argv.slice(2).length > 0 ? process.argv.slice(2) : ['wood-1200', 'pvc-1200', 'glass-mesh-900'];
const records = mkdtempSync(join(tmpdir(), 'warmstead-bench-'));
const program = spawn(process.execPath, ['dist/server/main.mjs'], {
  env: { ...process.env, PORT: '0', HOST: '127.0.0.1', WARMSTEAD_DATA: records, DATABASE_URL: '' },
});
let text = '';
const url = await new Promise<string>((done, fail) => {
  program.stdout.on('data', (chunk) => {
    text += chunk;
    const found = /http:\/\/\S+/.exec(text)?.[0];
    if (found && /Set-up code: \S+\s/.test(text)) done(found);
  });
  program.on('exit', () => fail(new Error(`the program ended: ${text}`)));
});
await signInOwner(url, text);
const browser = await chromium.launch({
  executablePath: process.env.WARMSTEAD_BROWSER ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
const line = (what: string, t: { readonly firstMs: number; readonly settledMs: number }) =>
  console.log(
    `${what.padEnd(34)} first ${t.firstMs.toFixed(0).padStart(5)} ms  settled ${t.settledMs.toFixed(0).padStart(5)} ms  load ${loadavg()[0]?.toFixed(1)}`,
  );
try {
  for (const box of boxes) {
    const context = await browser.newContext({ viewport: { width: 1200, height: 900 }, locale: 'en-GB' });
    await signedIn(context);
    const page = await context.newPage();
    await page.addInitScript((kept) => localStorage.setItem('warmstead-draft-1', kept), enquiryDraft(box));
    await page.goto(`${url}/choose`);
    line(`${box}, page just opened`, await marks(page));
    const tariff = page.getByRole('textbox', { name: /kWh/ }).first();
    await tariff.fill('0.31');
    await tariff.press('Enter');
    line(`${box}, another price of power`, await marks(page));
    await context.close();
  }
} finally {
  await browser.close();
  program.removeAllListeners('exit');
  const ended = new Promise((done) => program.once('exit', done));
  program.kill('SIGTERM');
  await ended;
  rmSync(records, { recursive: true, force: true });
}
