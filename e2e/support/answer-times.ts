// How soon does the first screen stand, and how soon does it answer a touch, on a processor slowed down four times? Every
// time is set beside a piece of work that is always the same, done in the same page a moment before: a machine that is
// slow or busy is slow at both. Leaves out what is allowed: first-screen.e2e.ts.
import type { Browser, Page } from 'playwright-core';

export const slowDown = 4;

export interface Round {
  readonly paintMs: number;
  readonly answersMs: Readonly<Record<string, number>>;
  /** Of the piece of work, each time it was done. */
  readonly workMs: readonly number[];
}

interface Seen {
  paint: number;
  worst: number;
  work: () => number;
}

type SeenWindow = Window & { seen: Seen };

export async function measuredRound(url: string, browser: Browser): Promise<Round> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowDown });
  await page.addInitScript(watch);
  await page.goto(url);
  await page.locator('.select-box:enabled').waitFor();
  await page.waitForTimeout(1500);
  const paintMs = await page.evaluate(() => (window as unknown as SeenWindow).seen.paint);
  const answersMs: Record<string, number> = {};
  const workMs: number[] = [];
  for (const [name, doing] of Object.entries(touches)) {
    workMs.push(await page.evaluate(() => (window as unknown as SeenWindow).seen.work()));
    await page.waitForTimeout(150);
    await page.evaluate(() => {
      (window as unknown as SeenWindow).seen.worst = 0;
    });
    await doing(page);
    await page.waitForTimeout(500);
    answersMs[name] = await page.evaluate(() => (window as unknown as SeenWindow).seen.worst);
  }
  await context.close();
  return { paintMs, answersMs, workMs };
}

const radio = (page: Page, name: RegExp) => page.getByRole('radio', { name }).locator('xpath=ancestor::label');

const touches: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'open the list of species': async (page) => {
    await page.getByRole('combobox', { name: 'Species' }).click();
    await page.getByRole('option', { name: /Corn snake/ }).waitFor();
  },
  'choose a species': async (page) => await page.getByRole('option', { name: /Corn snake/ }).click(),
  'choose a stage': async (page) => await radio(page, /^Adult/).click(),
  'type a length': async (page) => {
    await page.getByRole('textbox', { name: /Whole length/ }).click();
    await page.keyboard.type('115');
    await page.keyboard.press('Tab');
  },
  'step a weight': async (page) => await page.getByRole('button', { name: /More: Weight/ }).click(),
  'tick the cautions': async (page) => await page.getByText('Said aloud and understood').click(),
  'choose a usual room': async (page) => await radio(page, /^Heated living room/).click(),
  'choose the sun': async (page) => await radio(page, /^Never/).click(),
  'choose a box': async (page) => await radio(page, /^Wooden vivarium/).click(),
  'take back': async (page) => await page.getByRole('button', { name: 'Undo' }).click(),
};

/** Runs in the page, before anything of it. */
function watch(): void {
  const seen: Seen = {
    paint: 0,
    worst: 0,
    // Objects, text, elements and their layout: what an answer is made of.
    work: () => {
      const started = performance.now();
      const rows = Array.from({ length: 4000 }, (_, i) => ({ id: i, text: `row ${(i * 7919) % 4001}`, at: i % 17 }));
      rows.sort((a, b) => (a.text < b.text ? -1 : 1));
      const holder = document.createElement('div');
      holder.style.cssText = 'position:absolute;visibility:hidden;width:600px';
      for (const row of rows.slice(0, 250)) {
        const line = document.createElement('p');
        line.append(row.text, document.createElement('b'));
        holder.append(line);
      }
      document.body.append(holder);
      const height = holder.getBoundingClientRect().height;
      holder.remove();
      return height > 0 ? performance.now() - started : Number.NaN;
    },
  };
  Object.assign(window, { seen });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.paint = entry.startTime;
  }).observe({ type: 'largest-contentful-paint', buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) seen.worst = Math.max(seen.worst, entry.duration);
  }).observe({ type: 'event', buffered: true, durationThreshold: 16 } as PerformanceObserverInit);
}
