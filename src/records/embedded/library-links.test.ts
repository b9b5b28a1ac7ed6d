import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, lstatSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { installedBinaries } from './engine-binaries.ts';
import { makeLibraryLinks } from './library-links.ts';

let folder: string;
let native: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'warmstead-links-'));
  native = join(folder, 'native');
  const installed = installedBinaries();
  if (!installed.ok) throw new Error(JSON.stringify(installed.faults));
  cpSync(installed.value.folder, native, { recursive: true, verbatimSymlinks: true });
  // As the package comes, before any script.
  for (const name of readdirSync(join(native, 'lib'))) {
    const path = join(native, 'lib', name);
    if (lstatSync(path).isSymbolicLink()) rmSync(path);
  }
});
afterAll(() => rmSync(folder, { recursive: true }));

test('without the install script the programs do not run; with our links they do', () => {
  const initdb = join(native, 'bin', 'initdb');
  expect(spawnSync(initdb, ['--version']).status).not.toBe(0);
  expect(makeLibraryLinks(native)).toBeGreaterThan(0);
  expect(execFileSync(initdb, ['--version'], { encoding: 'utf8' })).toContain('PostgreSQL');
  expect(execFileSync(join(native, 'bin', 'postgres'), ['--version'], { encoding: 'utf8' })).toContain('PostgreSQL');
  expect(makeLibraryLinks(native)).toBe(0);
});
