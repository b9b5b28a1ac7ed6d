// What this does: finds a Chromium for the journeys in a real browser; as root on Debian it installs one.
// Why: without one those tests are skipped, and that must be said and not pass in silence.
import { existsSync } from 'node:fs';
import { run } from './prepare-run.mjs';

const usualPlaces = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a browser, or null. WARMSTEAD_BROWSER names another. */
export function browserPath() {
  const named = process.env.WARMSTEAD_BROWSER;
  return [named, ...usualPlaces].find((path) => path && existsSync(path)) ?? null;
}

export async function ensureBrowser() {
  if (browserPath() !== null) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the tests in a real browser ...');
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    try {
      await run('apt-get', ['update', '-qq'], 'apt-get update failed', { env });
      await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], 'apt-get failed', { env });
    } catch (error) {
      console.log(error.message);
    }
  }
  if (browserPath() === null) {
    console.log('No Chromium found: every test in e2e/ that needs a browser will be SKIPPED.');
    console.log('Install it (Debian: "sudo apt-get install chromium") or name one in WARMSTEAD_BROWSER.');
  }
}
