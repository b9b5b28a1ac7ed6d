import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { readMarkCounts } from '../../src/husbandry/fact-counts.ts';
import { readRawFacts } from '../../src/records/facts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'facts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(change: (text: string) => string) {
  cpSync(join(root, 'data'), folder, { recursive: true });
  const path = join(folder, 'species', 'corn.json');
  writeFileSync(path, change(readFileSync(path, 'utf8')));
  return spawnSync(process.execPath, ['--import', 'tsx', 'scripts/check-data.ts', folder], {
    cwd: root,
    encoding: 'utf8',
  });
}

describe('the data check from a terminal', () => {
  test('is content with the data of the program', () => {
    const { status, stdout } = run((text) => text);
    expect(stdout).toContain('data: sound');
    expect(status).toBe(0);
  });

  test('names file, key and reason of a bad fact and exits 1', () => {
    const { status, stdout } = run((text) => text.replace('"low": 29.5, "high": 32', '"low": 29.5, "high": 320'));
    expect(stdout).toMatch(/BAD\s+species\/corn\.json: all\.baskingSurfaceC: .*Got 320; allowed: 24 to 40/);
    expect(status).toBe(1);
  });

  test('names a file that is no JSON', () => {
    const { status, stdout } = run((text) => text.slice(0, -20));
    expect(stdout).toMatch(/BAD\s+species\/corn\.json: The file is not JSON/);
    expect(status).toBe(1);
  });
});

describe('the page on facts', () => {
  const page = readFileSync(join(root, 'docs', 'facts.md'), 'utf8');
  const counts = readMarkCounts(readRawFacts(join(root, 'data')).raw);

  test.each(['species', 'materials', 'standards', 'law', 'cautions', 'faults'])('counts %s as they are', (name) => {
    const { page: read = 0, memory = 0 } = counts[name] ?? {};
    expect(page).toContain(`| ${name} | ${read} | ${memory} |`);
  });
});
