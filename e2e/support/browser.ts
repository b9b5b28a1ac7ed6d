// A real Chromium for the journeys, with nothing running in it that the journey did not ask for.
// Without one the journeys are skipped, and the name of the skipped group says so.
import { existsSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium } from 'playwright-core';
import { describe } from 'vitest';
import { signedIn } from './owner.ts';

const usualPlaces = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

export const browserPath: string | null =
  [process.env.WARMSTEAD_BROWSER, ...usualPlaces].find((path) => path !== undefined && existsSync(path)) ?? null;

const quietFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Its contexts are signed in as the owner; one that shall be a stranger clears its cookies. */
export async function launchBrowser(): Promise<Browser> {
  if (browserPath === null) throw new Error('no Chromium here; name one in WARMSTEAD_BROWSER');
  const browser = await chromium.launch({ executablePath: browserPath, headless: true, args: quietFlags });
  const newContext = browser.newContext.bind(browser);
  browser.newContext = async (options): Promise<BrowserContext> => {
    const context = await newContext(options);
    await signedIn(context);
    return context;
  };
  // As the library makes it: a page with a context of its own that closes with it.
  browser.newPage = async (options) => {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    page.on('close', () => void context.close().catch(() => undefined));
    return page;
  };
  return browser;
}

/** A group of journeys that needs the browser: run with one, skipped by name without. */
export function describeInBrowser(name: string, body: () => void): void {
  if (browserPath === null) describe.skip(`${name} (needs Chromium, none found)`, body);
  else describe(name, body);
}
