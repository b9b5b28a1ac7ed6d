// The real process: what `warmstead proof` says of a file, and of files that are none.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { wallText } from '../proving/files/stamp.ts';
import { madeLog } from '../proving/testing/made-log.ts';
import { warmstead } from './testing/spawn-cli.ts';

const timeout = 90_000;
const home = 'data/examples/wood-1200.json';
const folder = mkdtempSync(join(tmpdir(), 'warmstead-proof-'));
const log = madeLog([
  { place: 'room', dayC: 18, nightC: 17 },
  { place: 'basking-surface', dayC: 34.5, nightC: 28 },
  { place: 'cool-air', dayC: 22, nightC: 20 },
]);
const german = [
  'Zeit;Raum °C;Sonnenplatz °C;Kühles Ende °C',
  ...log.timesS.map((t, i) =>
    [wallText(t), ...log.channels.map((c) => String(c.values[i]).replace('.', ','))].join(';'),
  ),
].join('\n');
const file = join(folder, 'log.csv');
writeFileSync(file, german);

it('fails a basking surface far too hot, says what was understood and what to do', { timeout }, async () => {
  const ended = await warmstead(['proof', file, '--enclosure', home]);
  expect(ended.code).toBe(1);
  expect(ended.out).toContain('x FAILED');
  expect(ended.out).toContain('Next: Set the dial from');
  expect(ended.out).toContain('decimal ","');
});

it('answers a program in SI with hash and verdict', { timeout }, async () => {
  const ended = await warmstead(['proof', file, '--enclosure', home, '--json', '--check', 'Sonnenplatz °C=0.4']);
  const answer = JSON.parse(ended.out);
  expect(answer.understood[0].sha256).toMatch(/^[0-9a-f]{64}$/);
  expect(answer.answer.verdict).toBe('failed');
  const basking = answer.answer.needs.find((n: { id: string }) => n.id === 'basking-surface');
  expect([basking.checked, Math.round(10 * basking.worst) / 10]).toEqual([true, 34.1]);
  expect(answer.answer.dial.adviceC.high).toBeLessThan(27);
});

it.each([
  ['empty', '', 'LOG_EMPTY'],
  ['no log', 'hello\nworld\n', 'LOG_NO_TIMES'],
  ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 1, 2, 3, 4, 5, 6, 0, 0, 0, 1, 0, 0, 2, 7]), 'LOG_NOT_TEXT'],
])('%s gets a clear answer', { timeout }, async (_, bytes, code) => {
  const ended = await warmstead(['proof', '-', '--enclosure', home, '--json'], bytes);
  const { faults } = JSON.parse(ended.out);
  expect([ended.code, faults.map((f: { code: string }) => f.code)]).toEqual([64, [code]]);
});

it('a file far too large stops early', { timeout }, async () => {
  const ended = await warmstead(
    ['proof', '-', '--enclosure', home, '--json'],
    Buffer.alloc(40_000_000, '2026-11-24 10:00,25\n'),
  );
  expect([ended.code, JSON.parse(ended.out).faults[0].code]).toEqual([64, 'LOG_TOO_LARGE']);
});
