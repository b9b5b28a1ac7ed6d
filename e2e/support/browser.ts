// A real Chromium for the journeys, with nothing running in it that the journey did not ask for.
// Without one the journeys are skipped, and the name of the skipped group says so.
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { describe } from 'vitest';

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

export async function launchBrowser(): Promise<Browser> {
  if (browserPath === null) throw new Error('no Chromium here; name one in WARMSTEAD_BROWSER');
  return await chromium.launch({ executablePath: browserPath, headless: true, args: quietFlags });
}

/** A group of journeys that needs the browser: run with one, skipped by name without. */
export function describeInBrowser(name: string, body: () => void): void {
  if (browserPath === null) describe.skip(`${name} (needs Chromium, none found)`, body);
  else describe(name, body);
}
