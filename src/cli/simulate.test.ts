// The real process: what `warmstead simulate` writes for people, programs and spreadsheets.
import { expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const example = 'data/examples/wood-1200.json';
const timeout = 60_000;

const csvOf = (text: string): string[][] =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));

it('a settled state at fixed watts uses just those watts and closes its balance', { timeout }, async () => {
  const ended = await warmstead(['simulate', example, '--steady', '--room', '17', '--watts', '100', '--json']);
  const { conditions, answer } = JSON.parse(ended.out);
  expect([ended.code, conditions.roomC, answer.heaterW]).toEqual([0, 17, [100]]);
  expect(answer.places['basking-surface']).toBeGreaterThan(answer.places['cool-floor']);
  expect(answer.places['cool-floor']).toBeGreaterThan(17);
  expect(Math.abs(answer.balance.relative)).toBeLessThan(0.001);
});

it('more watts are warmer everywhere, and no watts are the room', { timeout }, async () => {
  const at = async (watts: string) => {
    const ended = await warmstead(['simulate', example, '--steady', '--room', '20', '--watts', watts, '--json']);
    return JSON.parse(ended.out).answer.places;
  };
  const [none, some, more] = await Promise.all([at('0'), at('60'), at('120')]);
  expect(none['warm-air']).toBeCloseTo(20, 0);
  for (const place of ['basking-surface', 'warm-air', 'cool-floor']) {
    expect(some[place]).toBeGreaterThan(none[place]);
    expect(more[place]).toBeGreaterThan(some[place]);
  }
});

it('a settled state as CSV has one quantity a line with its unit', { timeout }, async () => {
  const ended = await warmstead(['simulate', example, '--steady', '--room', '17', '--csv']);
  const [head, ...rows] = csvOf(ended.out);
  expect(head).toEqual(['quantity', 'unit', 'value']);
  expect(rows.find(([quantity]) => quantity === 'room')).toEqual(['room', '°C', '17']);
  for (const row of rows) expect(row).toHaveLength(3);
});

it('a day as CSV has units in its head, whole rows, and the room asked for', { timeout }, async () => {
  const ended = await warmstead(['simulate', example, '--low', '15', '--high', '23', '--csv']);
  const [head = [], ...rows] = csvOf(ended.out);
  expect(ended.code).toBe(0);
  expect(head.slice(0, 3)).toEqual(['hour_h', 'room_C', 'heaters_W']);
  for (const name of head) expect(name).toMatch(/_(h|C|W|pct|on_glass)$/);
  for (const row of rows) expect(row).toHaveLength(head.length);
  const room = rows.map((row) => Number(row[1]));
  expect(Math.min(...room)).toBeCloseTo(15, 1);
  expect(Math.max(...room)).toBeCloseTo(23, 1);
});

it('is read and shown in °F with --units us', { timeout }, async () => {
  const [us, metric] = await Promise.all([
    warmstead(['simulate', example, '--steady', '--room', '68', '--units', 'us']),
    warmstead(['simulate', example, '--steady', '--room', '20']),
  ]);
  const read = (text: string): number => Number(/basking surface\s+(\S+) °/.exec(text)?.[1]);
  expect(us.out).toContain('room 68 °F');
  expect(read(us.out)).toBe(Math.round(read(metric.out) * 1.8 + 32));
});

it('refuses watts that do not fit the heaters', { timeout }, async () => {
  const ended = await warmstead(['simulate', example, '--steady', '--room', '20', '--watts', '60,40']);
  expect(ended.code).toBe(64);
  expect(ended.err).toContain('CLI_WATTS');
});

it('ends quietly when its reader hangs up', { timeout }, async () => {
  const { spawnSync } = await import('node:child_process');
  const command = `${JSON.stringify(process.execPath)} bin/warmstead.mjs simulate ${example} --day winter --csv | head -n 1`;
  const { stdout, stderr } = spawnSync('bash', ['-c', command], { encoding: 'utf8' });
  expect(stdout).toMatch(/^hour_h/);
  expect(stderr).toBe('');
});
