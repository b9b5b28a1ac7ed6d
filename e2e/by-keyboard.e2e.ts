// Every sheet by keyboard alone: one press past the lines on top, every control reached in order and seen when it has the
// focus, nothing that holds the keyboard fast; dialogs closed by Escape give it back; a sheet gone to begins at its heading.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { findSheets, openSheet, openSheetApart, type Sheet } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let sheets: readonly Sheet[];

/** No sheet has more stops than this; one that goes on beyond holds the keyboard. */
const mostStops = 400;

/** A date or a time of the device's own has a stop for each of its parts. */
const mostInOne = 7;

/** Where the keyboard stands: a name to compare by, and what is wrong with it. */
interface Stop {
  readonly id: number;
  readonly say: string;
  readonly wrong: string | null;
}

describeInBrowser('by keyboard', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets(program);
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('one press leads past the lines on top; then every sheet is walked to its last control, each seen and named', async () => {
    const wrong: Record<string, unknown> = {};
    const names = new Set<string>();
    for (const sheet of sheets) {
      const page = await openSheet(browser, program, sheet, 1280);
      await page.waitForFunction(() => document.title !== 'Warmstead');
      names.add(await page.title());
      const found = [...(await pastTheLines(page)), ...(await walk(page))];
      if (found.length > 0) wrong[sheet.name] = found;
      await page.close();
    }
    expect(wrong).toEqual({});
    expect(names.size, 'windows are named after their sheets').toBeGreaterThan(sheets.length - 3);
  }, 600_000);

  it('going on to a sheet by Enter begins at its heading', async () => {
    const page = await openSheetApart(browser, program, sheets[0]!, 1280);
    for (const name of ['Animals', 'Register', 'Species', 'Shelf', 'Placements', 'Today']) {
      const link = page.getByRole('navigation').getByRole('link', { name, exact: true });
      await link.focus();
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.activeElement?.matches('main h1, main h2'), null, { timeout: 30_000 });
      await page.waitForFunction(() => document.title.startsWith(document.activeElement?.textContent ?? '?'), null, {
        timeout: 5000,
      });
    }
    await page.context().close();
  }, 120_000);

  it('what opens is closed by Escape, and the keyboard is back where it was', async () => {
    const page = await openSheetApart(browser, program, sheets[0]!, 1280);
    const view = page.getByRole('button', { name: /Language|language|View|view/ });
    await view.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.waitForFunction(() => document.activeElement?.closest('[role=dialog]') !== null);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.waitForFunction(() => document.activeElement?.classList.contains('tool-view'));
    const species = page.getByRole('combobox', { name: 'Species' });
    await species.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('option', { name: /Corn snake/ }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('option', { name: /Corn snake/ }).waitFor({ state: 'hidden' });
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('SELECT');
    await page.context().close();
  }, 120_000);
});

/** The first stop leads to the sheet itself. Leaves the keyboard at that stop. */
async function pastTheLines(page: Page): Promise<string[]> {
  await page.keyboard.press('Tab');
  const first = await page.evaluate(() => document.activeElement?.className);
  await page.keyboard.press('Enter');
  const inside = await page.evaluate(() => document.activeElement?.closest('main') !== null);
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('.skip')?.focus();
    document.querySelector<HTMLElement>('.skip')?.blur();
    scrollTo(0, 0);
  });
  return [
    ...(first === 'skip' ? [] : ['no first stop past the lines on top']),
    ...(inside ? [] : ['which leads nowhere']),
  ];
}

/** Tab from the beginning until it comes round. @returns what was wrong on the way, and what was never reached */
async function walk(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    const numbers = new WeakMap<Element, number>();
    let last = 0;
    Object.assign(window, {
      numberOf: (element: Element) => {
        const known = numbers.get(element) ?? ++last;
        numbers.set(element, known);
        return known;
      },
    });
  });
  const wrong: string[] = [];
  const seen: number[] = [];
  let inOne = 0;
  for (let i = 0; i < mostStops; i++) {
    await page.keyboard.press('Tab');
    const stop = await stopNow(page);
    if (stop === null || seen[0] === stop.id) {
      const missed = await neverReached(page, seen);
      return [...wrong, ...missed.map((one) => `never reached: ${one}`)];
    }
    inOne = seen.at(-1) === stop.id ? inOne + 1 : 0;
    if (inOne > mostInOne) return [...wrong, `holds the keyboard: ${stop.say}`];
    if (inOne > 0) continue;
    seen.push(stop.id);
    if (stop.wrong !== null) wrong.push(`${stop.wrong}: ${stop.say}`);
  }
  return [...wrong, `more than ${mostStops} stops`];
}

const stopNow = (page: Page): Promise<Stop | null> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return null;
    const numberOf = (window as unknown as { numberOf: (element: Element) => number }).numberOf;
    const field = at as HTMLInputElement;
    const labels = [...(field.labels ?? [])].map((one) => one.textContent ?? '').join(' ');
    const by = (at.getAttribute('aria-labelledby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id))
      .map((one) => one?.getAttribute('aria-label') ?? one?.textContent ?? '')
      .join(' ');
    const name = `${at.getAttribute('aria-label') ?? ''}${by}${labels}${at.textContent ?? ''}`.trim();
    // The ring lies on the control, on the row around its hidden twin, or on the mark beside it.
    const around = [
      at,
      at.closest('label, .choice-option, .checkbox'),
      ...(at.closest('label, g, svg')?.querySelectorAll('*') ?? []),
    ];
    const ringed = around.some((one) => {
      if (!one) return false;
      const style = getComputedStyle(one);
      return (
        (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) ||
        style.boxShadow !== 'none' ||
        (one.closest('svg') !== null &&
          one !== at &&
          Number.parseFloat(style.strokeWidth) >= 2 &&
          style.stroke !== 'none')
      );
    });
    const box = (at.closest('label') ?? at).getBoundingClientRect();
    const inView = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    let wrong: string | null = null;
    if (name === '') wrong = 'has no name';
    else if (!ringed) wrong = 'is not seen to have the keyboard';
    else if (!inView) wrong = 'is out of sight';
    return {
      id: numberOf(at),
      say: `${at.tagName.toLowerCase()}.${at.getAttribute('class') ?? ''} "${name.slice(0, 40)}"`,
      wrong,
    };
  });

/** Controls of the sheet that Tab did not come to; of a group of radios one is enough, and steps are the field's arrows. */
const neverReached = (page: Page, seen: readonly number[]): Promise<string[]> =>
  page.evaluate((ids) => {
    const numberOf = (window as unknown as { numberOf: (element: Element) => number }).numberOf;
    const controls = document.querySelectorAll<HTMLElement>(
      'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]',
    );
    const radios = new Set<string>();
    const reached = (one: HTMLElement) => ids.includes(numberOf(one));
    for (const one of controls)
      if (one instanceof HTMLInputElement && one.type === 'radio' && reached(one)) radios.add(one.name);
    return (
      [...controls]
        .filter((one) => one.checkVisibility() && !(one as HTMLButtonElement).disabled && one.tabIndex >= 0)
        .filter((one) => one.closest('[aria-hidden="true"], [hidden], [inert]') === null)
        .filter((one) => !(one instanceof HTMLInputElement && one.type === 'radio' && radios.has(one.name)))
        // The walk begins behind the one that leads past the lines on top.
        .filter((one) => !reached(one) && !one.matches('.skip'))
        .map((one) => `${one.tagName.toLowerCase()}.${one.className} "${(one.textContent ?? '').slice(0, 40)}"`)
    );
  }, seen);
