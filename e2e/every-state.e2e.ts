// The states a sheet can be in beside its usual one: nothing in any list yet, faults shown, a dialog open, work running,
// no connection, locked, signed out, in German, with wide spacing of text, forced colours and no motion: no finding of the
// accessibility checker in any of them, nothing cut off, and an empty list says what will stand there.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { findings, findSheets, openSheet, openSheetApart, type Sheet, sideways } from './support/sheets.ts';

let full: RunningProgram;
let browser: Browser;
let sheets: readonly Sheet[];

const lists: readonly Sheet[] = [
  { name: 'enquiry', path: '/' },
  { name: 'placements', path: '/placements' },
  { name: 'animals', path: '/animals' },
  { name: 'round', path: '/round' },
  { name: 'register', path: '/register' },
  { name: 'shelf', path: '/shelf' },
  { name: 'today', path: '/today' },
  { name: 'own-figures', path: '/own-figures' },
  { name: 'instruments', path: '/instruments' },
];

const sheet = (name: string): Sheet => {
  const found = sheets.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no sheet ${name}`);
  return found;
};

/** Opens a sheet, brings it into a state, and tells what the checker finds. */
async function inState(
  of: Sheet,
  say: string,
  bring: (page: Page) => Promise<unknown>,
  more: BrowserContextOptions = {},
): Promise<string[]> {
  const page = await openSheetApart(browser, full, of, 1280, more);
  await bring(page);
  const found = (await findings(page)).map((one) => `${of.name}, ${say}: ${one}`);
  await page.context().close();
  return found;
}

/** Text as wide as a reader may set it (WCAG 2.2, 1.4.12). */
const wideText = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }`;

/** Words cut off by their own box; a row of choices to scroll sideways is none. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main button, main label, main h1, main h2, main p, main td, main th')]
      .filter((one) => one.checkVisibility() && one.closest('.visually-hidden, [aria-hidden="true"]') === null)
      .filter((one) => {
        const { overflowX, overflowY } = getComputedStyle(one);
        const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip';
        return (
          (hides(overflowX) && one.scrollWidth > one.clientWidth + 1) ||
          (hides(overflowY) && one.scrollHeight > one.clientHeight + 1)
        );
      })
      .map((one) => `${one.tagName} "${(one.textContent ?? '').slice(0, 40)}"`),
  );

/** Whether the program's name on top runs under what stands beside it. */
const nameUnderTools = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const name = document.querySelector('.wordmark');
    if (name === null) return false;
    const words = document.createRange();
    words.selectNodeContents(name);
    const mine = words.getBoundingClientRect();
    return [...document.querySelectorAll('.top-line button')].some((tool) => {
      const its = tool.getBoundingClientRect();
      return its.left < mine.right && its.right > mine.left && its.top < mine.bottom && its.bottom > mine.top;
    });
  });

describeInBrowser('every state', () => {
  beforeAll(async () => {
    full = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets(full);
  });
  afterAll(async () => {
    await browser?.close();
    await full?.stop();
  });

  it('an empty list says what will stand there', async () => {
    // Cookies know no ports: while it runs, a context is signed in at this one.
    const fresh = await startProgram();
    const wrong: Record<string, unknown> = {};
    for (const one of lists) {
      const page = await openSheet(browser, fresh, one, 390);
      const words = await page.evaluate(
        () => (document.querySelector('main')?.textContent ?? '').split(/\s+/).filter((word) => word.length > 2).length,
      );
      const found = await findings(page);
      const over = await sideways(page);
      if (words < 12 || found.length > 0 || over > 0) wrong[one.name] = { words, found, over };
      await page.close();
    }
    await fresh.stop();
    expect(wrong).toEqual({});
  }, 300_000);

  it('in German, with text as wide as a reader may set it, nothing is cut off or sideways, at 320 px either', async () => {
    const wrong: Record<string, unknown> = {};
    for (const one of sheets) {
      const page = await openSheet(browser, full, one, 1280, { locale: 'de-DE', bypassCSP: true });
      await page.waitForFunction(() => document.documentElement.lang === 'de');
      await page.addStyleTag({ content: wideText });
      const over = await sideways(page);
      const cut = await cutOff(page);
      // 1280 px at twice the size are 640 px.
      await page.setViewportSize({ width: 640, height: 700 });
      const overTwice = await sideways(page);
      // With everything unfolded, and on choosing with the kits that were found.
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      if (one.name === 'choose') await page.locator('.kit-detail').waitFor({ timeout: 60_000 });
      await page.setViewportSize({ width: 320, height: 700 });
      const overSmall = await sideways(page);
      const overLaid = await nameUnderTools(page);
      if (over > 0 || overTwice > 0 || overSmall > 0 || overLaid || cut.length > 0)
        wrong[one.name] = { over, overTwice, overSmall, overLaid, cut };
      await page.close();
    }
    expect(wrong).toEqual({});
  }, 600_000);

  it('has no finding in German with forced colours and no motion', async () => {
    const found: string[] = [];
    for (const name of ['enquiry', 'plan', 'examination', 'round', 'placement', 'today', 'keeper'])
      found.push(
        ...(await inState(sheet(name), 'forced colours', async () => undefined, {
          locale: 'de-DE',
          forcedColors: 'active',
        })),
      );
    expect(found).toEqual([]);
  }, 300_000);

  it('what is chosen is told under forced colours by more than a border', async () => {
    const page = await openSheet(browser, full, sheet('own-figures'), 1280, { forcedColors: 'active' });
    const chosen = page.locator('.choice-row .choice-option:has(:checked)').first();
    const other = page.locator('.choice-row .choice-option:not(:has(:checked))').first();
    const colour = (of: typeof chosen) => of.evaluate((element) => getComputedStyle(element).backgroundColor);
    expect(await colour(chosen)).not.toBe(await colour(other));
    await page.close();
  });

  it('has no finding with a dialog open, faults shown or work running', async () => {
    const found = [
      ...(await inState(sheet('enquiry'), 'dialog', async (page) => {
        await page.locator('.tool-view').click();
        await page.getByRole('dialog').waitFor();
      })),
      ...(await inState(sheet('enquiry'), 'list open', async (page) => {
        await page.getByRole('combobox', { name: 'Species' }).click();
        await page.getByRole('option', { name: /Corn snake/ }).waitFor();
      })),
      ...(await inState(sheet('enquiry'), 'crossed temperatures', async (page) => {
        await page.getByRole('textbox', { name: /Coldest winter night/ }).fill('22');
        await page.getByRole('textbox', { name: /Warmest on a winter day/ }).fill('18');
        await page.keyboard.press('Tab');
        await page.locator('.field-fault').first().waitFor();
      })),
      ...(await inState(sheet('choose'), 'work running', async () => undefined)),
      ...(await inState(sheet('account'), 'fault', async (page) => {
        await page.getByRole('button', { name: 'Keep the PIN' }).click();
        await page.locator('.field-fault:not(:empty)').first().waitFor();
      })),
    ];
    expect(found).toEqual([]);
  }, 300_000);

  it('has no finding without a connection, and says that nothing is lost', async () => {
    const found = await inState(sheet('round'), 'offline', async (page) => {
      await page.context().setOffline(true);
      await page.getByRole('button', { name: /Well/ }).first().click();
      await page.locator('.round-waiting').waitFor();
    });
    expect(found).toEqual([]);
  }, 120_000);

  it('has no finding where a step can be taken back', async () => {
    const found = [
      ...(await inState(sheet('placement'), 'refused, to be taken up again', async (page) => {
        await page.getByRole('button', { name: 'Home is not ready' }).click();
        await page.getByRole('button', { name: 'Take it up again' }).waitFor();
      })),
      ...(await inState(sheet('placement'), 'taken up again', async (page) => {
        await page.getByRole('button', { name: 'Take it up again' }).click();
        await page.getByRole('button', { name: 'Home is not ready' }).waitFor();
      })),
      ...(await inState(sheet('aftercare'), 'set aside, to be taken back', async (page) => {
        await page.getByRole('button', { name: 'Enter what was said' }).first().click();
        await page.getByText('Not needed any more').first().click();
        await page.getByLabel('Why not?').fill('told in the shop');
        await page.getByRole('button', { name: 'Set aside' }).click();
        await page.getByRole('button', { name: 'Take back' }).first().waitFor();
      })),
      ...(await inState(sheet('today'), 'done, to be taken back', async (page) => {
        await page
          .getByRole('button', { name: /^Take back/ })
          .first()
          .waitFor();
      })),
      ...(await inState(sheet('shelf'), 'changed, to be undone', async (page) => {
        await page.getByRole('button', { name: 'in stock', exact: true }).first().click();
        await page.getByText(/^Kept\./).waitFor();
        await page.getByRole('button', { name: 'Undo the last change' }).waitFor();
      })),
      ...(await inState(sheet('animal'), 'withdrawing', async (page) => {
        await page.getByRole('button', { name: 'Withdraw' }).first().click();
        await page.getByLabel('Why is it withdrawn?').fill('another animal');
      })),
    ];
    expect(found).toEqual([]);
  }, 300_000);

  it('has no finding where the session ran out under a half filled form, which is still there', async () => {
    const page = await openSheetApart(browser, full, sheet('animal'), 1280);
    await page.getByRole('textbox', { name: /^Mass/ }).fill('571');
    await page.context().clearCookies();
    await page.getByRole('button', { name: 'Write it down' }).first().click();
    const password = page.getByLabel('Password', { exact: true });
    await password.waitFor();
    const light = await findings(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect([...light, ...(await findings(page))]).toEqual([]);
    const name = page.getByLabel('Name', { exact: true });
    if ((await name.inputValue()) === '') await name.fill(full.owner?.name ?? '');
    await password.fill(full.owner?.password ?? '');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.getByText('Written down.', { exact: true }).waitFor();
    await page.locator('.history-list li', { hasText: '571' }).first().waitFor();
    await page.context().close();
  }, 120_000);

  it('has no finding while locked, or signed out; what was typed comes back', async () => {
    const page = await openSheetApart(browser, full, sheet('enquiry'), 1280);
    await page.getByRole('textbox', { name: /Whole length/ }).fill('115');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: /Lock/ }).click();
    await page.locator('.door, [class*="door"]').first().waitFor();
    const locked = await findings(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    const lockedDark = await findings(page);
    expect([...locked, ...lockedDark]).toEqual([]);
    await page.getByLabel('Password', { exact: true }).fill(full.owner?.password ?? '');
    const name = page.getByLabel('Name', { exact: true });
    if ((await name.inputValue()) === '') await name.fill(full.owner?.name ?? '');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    const length = page.getByRole('textbox', { name: /Whole length/ });
    await length.waitFor();
    expect(await length.inputValue()).toBe('115');
    await page.context().close();
  }, 120_000);
});
