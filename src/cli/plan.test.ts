// The real process: what `warmstead plan` says, and that its exit code is the verdict.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { warmstead } from './testing/spawn-cli.ts';

const example = 'data/examples/wood-1200.json';
const timeout = 90_000;
const few = ['--members', '10', '--map', 'none'];
/** The wooden example after a change, as standard input. */
// biome-ignore lint/suspicious/noExplicitAny: tests change parts of a parsed file
function changed(change: (e: any) => void): string {
  const raw = JSON.parse(readFileSync(example, 'utf8'));
  change(raw);
  return JSON.stringify(raw);
}

describe.concurrent('the verdict is the exit code', () => {
  it('0 when every need holds, with the numbers that were asked for', { timeout }, async () => {
    const mild = changed((e) => {
      e.room.summer.highC = 23;
    });
    const ended = await warmstead(['plan', '-', '--standard', 'home-third'], mild);
    expect(ended.err).toBe('');
    expect(ended.out).toContain('+ HOLDS');
    for (const part of ['Needs', 'Temperatures', 'Dial', 'Power', 'kWh a day', 'Gradient map', 'warm end']) {
      expect(ended.out).toContain(part);
    }
    expect(ended.code).toBe(0);
  });

  it('2 and what would settle it when no space standard is to be judged', { timeout }, async () => {
    const ended = await warmstead(['plan', example, ...few, '--standard', 'none']);
    expect(ended.code).toBe(2);
    expect(ended.out).toMatch(/\? NOT KNOWN[\s\S]*what would settle it/);
  });

  it('1 with reason and fix when a 40 W heater faces a cold room', { timeout }, async () => {
    const cold = changed((e) => {
      e.heaters[0].powerW = 40;
      e.room.winter = { lowC: 8, highC: 12, rhPct: 50, sunPeakWPerM2: 0 };
    });
    const ended = await warmstead(['plan', '-', ...few], cold);
    expect(ended.code).toBe(1);
    expect(ended.out).toMatch(/x FAILS +Basking surface[\s\S]*->/);
  });
});

it('the same seed gives the same answer for the animal asked for, and JSON carries all of it', {
  timeout,
}, async () => {
  const args = ['plan', example, '--json', '--members', '10', '--seed', '7', '--species', 'royal', '--stage', 'young'];
  const [first, second] = await Promise.all([warmstead(args), warmstead(args)]);
  expect(first.out).toBe(second.out);
  const { ok, answer, versions, enclosure, climate } = JSON.parse(first.out);
  expect([ok, answer.members, answer.seed]).toEqual([true, 10, 7]);
  expect(answer.needs.length).toBeGreaterThan(10);
  expect(versions.model).not.toBe('');
  expect([enclosure.animal.speciesId, enclosure.animal.stage, climate.speciesId]).toEqual(['royal', 'young', 'royal']);
});

it('shows °F, German, colour and only what does not hold when asked', { timeout }, async () => {
  const args = [
    'plan',
    example,
    '--standard',
    'none',
    '--members',
    '10',
    '--map',
    'winter',
    '--brief',
    '--units',
    'us',
    '--lang',
    'de',
  ];
  const { out } = await warmstead(args, '', { FORCE_COLOR: '1' });
  for (const part of ['[°F]', 'NICHT BEKANNT', 'Temperaturen', 'Regler', 'weitere halten', '\u2580'])
    expect(out).toContain(part);
  expect(out).not.toContain('Basking surface on');
});

it.each([
  ['no animal', [], changed((e) => (e.animal = null)), 'CLI_NO_ANIMAL'],
  ['an unknown species', [], changed((e) => (e.animal.speciesId = 'constructor')), 'CLI_SPECIES'],
  ['an unknown species option', ['--species', 'cron'], changed(() => {}), 'corn?'],
  ['too few members', ['--members', '3'], changed(() => {}), '10 to 2000'],
  ['an unknown standard', ['--standard', 'x'], changed(() => {}), '--standard'],
])('%s: fault, exit 64', { timeout }, async (_name, args, text, word) => {
  const ended = await warmstead(['plan', '-', ...args], text);
  expect([ended.code, ended.out]).toEqual([64, '']);
  expect(ended.err).toContain(word);
});
