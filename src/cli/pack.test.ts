// The real process: a pack from a file, and files or folders that will not do.
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const timeout = 90_000;
const home = 'data/examples/wood-1200.json';
const folder = mkdtempSync(join(tmpdir(), 'warmstead-pack-'));

it('writes the pages, says how many, and never writes over a file', { timeout }, async () => {
  const out = join(folder, 'pack.pdf');
  const ended = await warmstead(['pack', home, '--out', out, '--lang', 'de', '--place', 'germany']);
  expect([ended.code, ended.err]).toEqual([0, '']);
  expect(ended.out).toMatch(/pack\.pdf: [2-6] Seiten/);
  const pdf = readFileSync(out);
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  const again = await warmstead(['pack', home, '--out', out]);
  expect(again.code).toBe(64);
  expect(again.err).toContain('CLI_NOT_WRITABLE');
  expect(readFileSync(out).equals(pdf)).toBe(true);
});

it('refuses a home without an animal and an unknown place', { timeout }, async () => {
  const file = join(folder, 'empty.json');
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(home, 'utf8')), animal: null }));
  const ended = await warmstead(['pack', file, '--out', join(folder, 'a.pdf')]);
  expect(ended.code).toBe(64);
  expect(ended.err).toContain('PLAN_NO_ANIMAL');
  const place = await warmstead(['pack', home, '--out', join(folder, 'b.pdf'), '--place', 'atlantis']);
  expect(place.code).toBe(64);
  expect(place.err).toContain('CLI_CHOICE');
});
