import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { accountsIn, canRun, canWriteIn, databaseAccount, runsAsRoot } from './account.ts';
import { installedBinaries } from './engine-binaries.ts';
import { databasePlace, noteName } from './place.ts';

let base: string;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'warmstead-place-'));
  chmodSync(base, 0o755);
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

function placed(dataFolder: string) {
  const installed = installedBinaries();
  if (!installed.ok) throw new Error('no binaries');
  const place = databasePlace(dataFolder, installed.value, join(base, 'elsewhere'));
  if (!place.ok) throw new Error(JSON.stringify(place.faults));
  return place.value;
}

test('a line of the account list is read, a broken one is left out', () => {
  expect(accountsIn('root:x:0:0::/root:/bin/sh\nnobody:x:65534:65534\nbroken\n')).toEqual([
    { name: 'root', uid: 0, gid: 0 },
    { name: 'nobody', uid: 65534, gid: 65534 },
  ]);
});

test('a platform without programs is told what else works', () => {
  expect(installedBinaries('win32', 'x64')).toMatchObject({ ok: false, faults: [{ code: 'RECORDS_ENGINE_MISSING' }] });
  expect(installedBinaries('linux', 's390x')).toMatchObject({ ok: false, faults: [{ field: 'DATABASE_URL' }] });
});

test('a folder that can be reached keeps its data', () => {
  const data = join(base, 'data-local');
  expect(placed(data).cluster).toBe(join(data, 'pg'));
  expect(existsSync(join(data, noteName))).toBe(false);
});

describe.runIf(runsAsRoot())('as root', () => {
  test('the database never runs as root', () => {
    expect(databaseAccount(null)?.uid).toBeGreaterThan(0);
  });

  test('a folder that the account cannot enter sends the data elsewhere and says where', () => {
    const home = join(base, 'home');
    mkdirSync(home, { mode: 0o700 });
    const data = join(home, 'data-local');
    const place = placed(data);
    expect(place.folder.startsWith(join(base, 'elsewhere'))).toBe(true);
    expect(canWriteIn(home, place.account)).toBe(false);
    expect(canRun(place.binaries, place.account)).toBe(true);
    expect(readFileSync(join(data, noteName), 'utf8')).toContain(`Folder: ${place.folder}`);
  });

  test('data elsewhere are found again, also when the folder was moved, and never shared with a copy', () => {
    const home = join(base, 'home');
    mkdirSync(home, { mode: 0o700 });
    const first = placed(join(home, 'data-local'));
    mkdirSync(first.cluster);
    chmodSync(home, 0o755);
    expect(placed(join(home, 'data-local')).cluster).toBe(first.cluster);
    renameSync(home, join(base, 'moved'));
    expect(placed(join(base, 'moved', 'data-local')).cluster).toBe(first.cluster);
    // A new checkout at the old path, and a copy of the moved one, begin with nothing.
    mkdirSync(home, { mode: 0o700 });
    expect(placed(join(home, 'data-local')).cluster).not.toBe(first.cluster);
    cpSync(join(base, 'moved'), join(base, 'copy'), { recursive: true });
    expect(placed(join(base, 'copy', 'data-local')).cluster).not.toBe(first.cluster);
    expect(placed(join(base, 'moved', 'data-local')).cluster).toBe(first.cluster);
  });
});
