// What this does: makes a fresh copy of the program ready, using only what Node.js itself brings.
// Why: `npm start` and `npm test` work right after `git clone`, and do nothing twice.
// Usage: node scripts/prepare.mjs start | test | build      exit code 1 = could not; the reason is printed.

import { ensureBrowser } from './prepare-browser.mjs';
import { ensureBuilt } from './prepare-build.mjs';
import { ensureInstalled, ensureNode } from './prepare-install.mjs';
import { alone } from './prepare-lock.mjs';

const purpose = process.argv[2] ?? 'build';
try {
  ensureNode();
  await alone(async () => {
    await ensureInstalled();
    await ensureBuilt();
  });
  if (purpose === 'test') await ensureBrowser();
} catch (error) {
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
