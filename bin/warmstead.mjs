#!/usr/bin/env node
// The program from a terminal. Runs what was built when it is up to date, else straight from the sources.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { isBuilt } from '../scripts/prepare-build.mjs';
import { ensureNode, isInstalled } from '../scripts/prepare-install.mjs';
import { root } from '../scripts/prepare-run.mjs';

try {
  ensureNode();
  if (!existsSync(join(root, 'node_modules')) || !isInstalled()) {
    throw new Error(`The packages are not installed. Run once: npm --prefix "${root}" ci`);
  }
  if (isBuilt()) await import(pathToFileURL(join(root, 'dist', 'cli', 'main.mjs')).href);
  else await runSources();
} catch (error) {
  if (error?.code === undefined && error instanceof Error) console.error(error.message);
  else throw error;
  process.exitCode = 70;
}

async function runSources() {
  const { tsImport } = await import('tsx/esm/api');
  await tsImport(pathToFileURL(join(root, 'src', 'cli', 'main.ts')).href, import.meta.url);
}
