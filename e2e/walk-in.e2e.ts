// A walk-in customer: from opening the program to a printed plan, by touch alone and by keyboard alone. Counted: the
// decisions a person makes, at most ten; typing a number is one, choosing from a list is one, going on is none.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

let program: RunningProgram;
let browser: Browser;
/** Our choice, as the counter's patience: a person needs more time for a decision than this program for its answer. */
const mostDecisions = 10;
const mostMinutes = 3;

async function openSheet(width: number, touch: boolean): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width, height: touch ? 844 : 900 },
    locale: 'en-GB',
    hasTouch: touch,
    isMobile: touch,
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  // What the button asks for is counted; the paper itself is made by the browser below.
  await page.addInitScript(() => {
    window.print = () => {
      document.documentElement.dataset.printed = 'yes';
    };
  });
  await page.goto(program.url);
  return page;
}

async function printed(page: Page, name: string): Promise<string> {
  await page.waitForSelector('html[data-printed="yes"]');
  const paper = await page.pdf({ format: 'A4', printBackground: true });
  const folder = process.env.WARMSTEAD_SHOTS;
  if (folder !== undefined) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${name}.pdf`), paper);
  }
  return paper.toString('latin1');
}

const pagesOf = (pdf: string): number => pdf.match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;

describeInBrowser('walk-in customer', () => {
  beforeAll(async () => {
    program = await startProgram();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('by touch on a phone', async () => {
    const page = await openSheet(390, true);
    const started = performance.now();
    let decisions = 0;
    const decide = async (doing: Promise<void>): Promise<void> => {
      decisions++;
      await doing;
    };
    const label = (name: RegExp) => page.getByRole('radio', { name }).locator('xpath=ancestor::label');
    const next = async () => await page.getByRole('button', { name: 'Next' }).tap();
    await page.getByRole('combobox', { name: 'Species' }).tap();
    await decide(page.getByRole('option', { name: /Corn snake/ }).tap());
    await decide(label(/^Adult/).tap());
    await next();
    await decide(page.getByRole('textbox', { name: /Whole length/ }).fill('115'));
    await next();
    await decide(page.getByText('Said aloud and understood').tap());
    await next();
    await decide(label(/^Heated living room/).tap());
    await next();
    await next();
    await next();
    await decide(label(/^Never/).tap());
    await next();
    await decide(label(/^Wooden vivarium/).tap());
    await decide(page.getByRole('button', { name: 'See the plan' }).tap());
    await page.waitForSelector('h1[data-verdict="holds"], h1[data-verdict="fails"], h1[data-verdict="not-known"]');
    await expect
      .poll(() => page.getByText('nobody has read them').count(), { message: 'usual figures are said to be that' })
      .toBe(1);
    await decide(page.getByRole('button', { name: 'Print this plan' }).tap());
    const pages = pagesOf(await printed(page, 'walk-in-touch'));
    expect(pages).toBeGreaterThanOrEqual(1);
    expect(pages).toBeLessThanOrEqual(4);
    expect(decisions).toBeLessThanOrEqual(mostDecisions);
    expect((performance.now() - started) / 60_000).toBeLessThan(mostMinutes);
    await page.context().close();
  });

  it('by keyboard alone, interrupted by a reload', async () => {
    const page = await openSheet(1280, false);
    let decisions = 0;
    const here = () => page.evaluate(() => document.activeElement?.closest('section')?.id ?? '');
    const named = () =>
      page.evaluate(() => {
        const at = document.activeElement;
        if (at === null || at === document.body) return '';
        const label = at.getAttribute('aria-label') ?? (at as HTMLInputElement).labels?.[0]?.textContent ?? '';
        // A section that took the focus names everything in it: only what is operated counts.
        if (at.tagName === 'SECTION') return '';
        return `${label} ${at.textContent ?? ''}`;
      });
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let i = 0; i < 120; i++) {
        if (name.test(await named())) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`no way by Tab to ${name}; now in "${await here()}" at "${await named()}"`);
    };
    const decide = async (...keys: string[]): Promise<void> => {
      decisions++;
      for (const key of keys) await page.keyboard.press(key);
    };
    await page.locator('.select-box:enabled').waitFor();
    await tabTo(/^Species/);
    await page.keyboard.press('Enter');
    await page.getByRole('option', { name: /Corn snake/ }).waitFor();
    await page.keyboard.type('Corn');
    await decide('Enter');
    const chosen = page.locator('.select-box option:checked', { hasText: 'Corn snake' });
    await chosen.waitFor({ state: 'attached' });
    await tabTo(/^Hatchling/);
    await decide('ArrowDown', 'ArrowDown');
    await tabTo(/Whole length/);
    await page.keyboard.type('115');
    await decide('Tab');
    await tabTo(/Said aloud/);
    await decide('Space');
    await page.reload();
    await chosen.waitFor({ state: 'attached' });
    await expect
      .poll(() => page.getByRole('textbox', { name: /Whole length/ }).inputValue(), {
        message: 'a reload loses nothing',
      })
      .toBe('115');
    await tabTo(/^Heated living room/);
    await decide('Space');
    await tabTo(/^Never/);
    await decide('Space');
    await tabTo(/^Plastic|^Starter|tub|vivarium|viv/i);
    await decide('ArrowDown', 'ArrowDown', 'Space');
    await tabTo(/See the plan/);
    await decide('Enter');
    await page.waitForSelector('h1[data-verdict="holds"], h1[data-verdict="fails"], h1[data-verdict="not-known"]');
    await page.getByRole('button', { name: 'Print this plan' }).waitFor();
    await tabTo(/Print this plan/);
    await decide('Enter');
    expect(pagesOf(await printed(page, 'walk-in-keyboard'))).toBeLessThanOrEqual(4);
    expect(decisions).toBeLessThanOrEqual(mostDecisions);
    await page.context().close();
  });
});
