// Every sheet of a program, how one is opened as a person finds it, and what is looked for on each.
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { checker } from './checker.ts';
import type { RunningProgram } from './program.ts';

export interface Sheet {
  readonly name: string;
  readonly path: string;
}

export interface FoundSheet extends Sheet {
  /** File that draws it, src/web/…/NAME-page.tsx. */
  readonly page: string;
}

const read = async (program: RunningProgram, path: string): Promise<Record<string, { id: string; title?: string }[]>> =>
  (await (await fetch(`${program.url}${path}`)).json()) as never;

async function keeperPath(program: RunningProgram, enquiryId: string): Promise<string> {
  const given = await fetch(`${program.url}/api/enquiries/${enquiryId}/keeper-links`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ days: 30 }),
  });
  return `/k/${((await given.json()) as { secret: string }).secret}`;
}

/** Of a program with something in every list (the demonstration). */
export async function findSheets(program: RunningProgram): Promise<FoundSheet[]> {
  const { enquiries } = await read(program, '/api/enquiries');
  const { animals } = await read(program, '/api/animals');
  const { placements } = await read(program, '/api/placements');
  const enquiry = enquiries!.at(-1)!.id;
  const animal = animals![0]!.id;
  return [
    { name: 'enquiry', path: '/', page: 'enquiry' },
    { name: 'plan', path: `/plan/${enquiry}`, page: 'plan' },
    { name: 'choose', path: `/choose/${enquiry}`, page: 'choose' },
    { name: 'proof', path: `/proof/${enquiry}`, page: 'proof' },
    { name: 'animals', path: '/animals', page: 'animals' },
    { name: 'animal', path: `/animals/${animal}`, page: 'animal' },
    { name: 'examination', path: `/animals/${animal}/look-over`, page: 'examination' },
    { name: 'round', path: '/round', page: 'round' },
    { name: 'register', path: '/register', page: 'register' },
    { name: 'call', path: '/call', page: 'call' },
    { name: 'species', path: '/species', page: 'species-list' },
    { name: 'one-species', path: '/species/royal', page: 'species' },
    { name: 'space', path: '/space/corn', page: 'space' },
    { name: 'shelf', path: '/shelf', page: 'shelf' },
    { name: 'placements', path: '/placements', page: 'placements' },
    { name: 'placement', path: `/placement/${placements![0]!.id}`, page: 'placement' },
    { name: 'today', path: '/today', page: 'today' },
    { name: 'aftercare', path: `/aftercare/${placements!.at(-1)!.id}`, page: 'aftercare' },
    { name: 'own-figures', path: '/own-figures', page: 'own-figures' },
    { name: 'instruments', path: '/instruments', page: 'instruments' },
    { name: 'lists', path: '/lists', page: 'lists' },
    { name: 'keeper', path: await keeperPath(program, enquiry), page: 'keeper' },
    { name: 'people', path: '/people', page: 'people' },
    { name: 'account', path: '/account', page: 'own-account' },
  ];
}

/** Contexts that are used for one sheet after the other: what a browser has read once it has not to read again. */
const kept = new WeakMap<Browser, Map<string, Promise<BrowserContext>>>();

const optionsFor = (width: number, more: BrowserContextOptions): BrowserContextOptions => ({
  viewport: { width, height: width < 600 ? 844 : 900 },
  locale: 'en-GB',
  reducedMotion: 'reduce',
  ...more,
});

/** A sheet to look at, in a window that is closed afterwards; what is kept on the device stays for the next. */
export async function openSheet(
  browser: Browser,
  program: RunningProgram,
  sheet: Sheet,
  width: number,
  more: BrowserContextOptions = {},
): Promise<Page> {
  const options = optionsFor(width, more);
  const key = `${program.url} ${JSON.stringify(options)}`;
  const contexts = kept.get(browser) ?? new Map<string, Promise<BrowserContext>>();
  kept.set(browser, contexts);
  const context = contexts.get(key) ?? browser.newContext(options);
  contexts.set(key, context);
  return await opened(await context, program, sheet);
}

/** A sheet to do something on that no other shall notice. Close its context afterwards. */
export async function openSheetApart(
  browser: Browser,
  program: RunningProgram,
  sheet: Sheet,
  width: number,
  more: BrowserContextOptions = {},
): Promise<Page> {
  return await opened(await browser.newContext(optionsFor(width, more)), program, sheet);
}

async function opened(context: BrowserContext, program: RunningProgram, sheet: Sheet): Promise<Page> {
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw new Error(`${sheet.name}: ${error.message}`);
  });
  await page.goto(`${program.url}${sheet.path}`, { waitUntil: 'networkidle' });
  const title = page.locator('h1').first();
  await title.waitFor({ state: 'attached', timeout: 30_000 }).catch(() => {
    throw new Error(`no sheet at ${sheet.path}`);
  });
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null, null, { timeout: 60_000 });
  return page;
}

/** As long as a drawing may take to be drawn for a new width while the machine has other work [ms]; our choice. */
const redrawMs = 5000;

/** Px that the sheet hangs over. A drawing learns of a new width in one frame and is drawn in a later one: what hangs over is
 *  what still does when it was drawn. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(async (mostMs) => {
    const over = (): number => document.documentElement.scrollWidth - document.documentElement.clientWidth;
    for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
    const untilMs = performance.now() + mostMs;
    while (over() > 0 && performance.now() < untilMs) await new Promise((next) => setTimeout(next, 50));
    return over();
  }, redrawMs);

/** Things to press that are smaller than 44 px either way; a link within a sentence is as high as its line. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const things = document.querySelectorAll<HTMLElement>('main button, main select, main input:not([type=hidden])');
    return (
      [...things]
        // A library's hidden twin of a control is pressed by no thumb.
        .filter((one) => one.closest('[aria-hidden="true"], .visually-hidden') === null)
        .filter(
          (one) =>
            one.checkVisibility({ opacityProperty: true }) && !(one as HTMLInputElement).matches('.slider-track input'),
        )
        .map((one) => ({ one, box: (one.closest('label') ?? one).getBoundingClientRect() }))
        .filter(
          ({ one, box }) => box.width > 2 && box.height > 2 && box.height < 43.5 && one.closest('p, li, td') === null,
        )
        .map(({ one, box }) => `${one.tagName} "${(one.textContent ?? '').slice(0, 30)}" ${Math.round(box.height)} px`)
    );
  });

export async function findings(page: Page): Promise<string[]> {
  const found = await checker(page)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  return found.violations.map((row) => `${row.id}: ${row.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}
