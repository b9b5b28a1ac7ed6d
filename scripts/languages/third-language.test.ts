// A third language is one file: with it in the folder, no command of the terminal says a word that is not in it.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { warmstead } from '../../src/cli/testing/spawn-cli.ts';
import { wallText } from '../../src/proving/files/stamp.ts';
import { madeLog } from '../../src/proving/testing/made-log.ts';
import { bracketed, unbracketed, writeBracketed } from './bracketed.ts';
import { everyText } from './every-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'third-language-'));
const env = { WARMSTEAD_DATA: folder, COLUMNS: '100' };
const box = 'data/examples/wood-1200.json';
const tub = 'data/examples/tub-mat-600.json';
const root = join(import.meta.dirname, '../..');
const log = join(folder, '1.csv');
const wrong = join(folder, '2.json');

/** Where its channels lay is told by options: a heading is not said by the program. */
const placed = ['T1=room', 'T2=basking-surface', 'T3=cool-air'].flatMap((one) => ['--place', one]);

function writeLog(file: string): void {
  const { timesS, channels } = madeLog([
    { place: 'room', dayC: 18, nightC: 17 },
    { place: 'basking-surface', dayC: 34.5, nightC: 28 },
    { place: 'cool-air', dayC: 22, nightC: 20 },
  ]);
  const rows = timesS.map((time, i) => [wallText(time), ...channels.map(({ values }) => values[i])].join(';'));
  writeFileSync(file, ['Time;T1 °C;T2 °C;T3 °C', ...rows].join('\n'));
}

const titleOf = (file: string): string =>
  (JSON.parse(readFileSync(join(import.meta.dirname, '../..', file), 'utf8')) as { name: string }).name;

/** Options, names of blanks and codes, files, what a file or the shelf calls its things, and the picture of the hours. */
const may =
  /(?:verify|move)-records|--?[a-z][\w-]*|\p{Lu}[\p{Lu}_]+|(?:data\/examples\/)?[\w-]+\.(?:json|csv|pdf|md|typ)|warmstead|data\/[\w/.-]*|\bo{2,}\b/gu;

const commands = [
  'plan',
  'simulate',
  'check',
  'shelf',
  'pack',
  'proof',
  'verify-records',
  'backup',
  'restore',
  'move-records',
];

/** A list of words to choose from stands as they are typed. */
const ids = [
  ...commands,
  'records',
  'bash',
  'zsh',
  'fish',
  'pulse',
  'mat-stat',
  'Starter',
  'shelf',
  'emitter',
  'stat',
  'mat',
  'winter',
  'summer',
  'both',
  'none',
];

/** "box.lengthM ENC_RANGE": the place in a file as its keys are called. */
const fieldBeforeCode = /[\w.[\]-]+ (?=\p{Lu}+_\p{Lu}+)/gu;

async function leftIn(...args: string[]): Promise<{ readonly left: string; readonly signs: number }> {
  const { out, err } = await warmstead([...args, '--lang', 'pl'], '', env);
  const typed = [titleOf(box), titleOf(tub), folder];
  const text = typed.reduce(
    (rest, one) => rest.replaceAll(one, ' '),
    `${out}\n${err}`.replace(/\s+/g, ' ').replace(fieldBeforeCode, ' '),
  );
  const left = unbracketed(text, may).filter((one) => !ids.includes(one));
  return { left: [...new Set(left)].join(' '), signs: text.length };
}

describe('the terminal in a language of one file', () => {
  beforeAll(() => {
    writeBracketed(folder, everyText());
    writeLog(log);
    // Too long, layers of the wrong kind, a key nobody knows: several refusals at once.
    const unsound = JSON.parse(readFileSync(join(root, box), 'utf8'));
    unsound.box.lengthM = 12;
    unsound.box.panels.left.layers = 'felt';
    unsound.extra = 1;
    writeFileSync(wrong, JSON.stringify(unsound));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('finds a word outside of brackets', () => {
    expect(unbracketed('[two] words, 20.5 °C of [heat]', may)).toEqual(['words', 'of']);
  });

  it.each(commands.filter((one) => one !== 'verify' && one !== 'move'))(
    '%s --help says nothing else',
    async (command) => {
      const { left, signs } = await leftIn(command, '--help');
      expect(left).toBe('');
      expect(signs).toBeGreaterThan(200);
    },
  );

  it.each([
    [['plan', box]],
    [['plan', tub, '--standard', 'home-third', '--map', 'both']],
    [['plan', tub, '--faults', '--map', 'none']],
    [['plan', tub, '--stages', '--map', 'none']],
    [['simulate', box, '--steady', '--room', '17']],
    [['simulate', box, '--day', 'winter']],
    [['check', box]],
    [['shelf']],
    [['plan', 'nowhere.json']],
    [['check', wrong]],
    [['proof', log, '--enclosure', box, ...placed]],
    [['proof', log, '--enclosure', box, '--units', 'us', '--nights', '5', ...placed]],
    [['proof', wrong, '--enclosure', box]],
    [['plan', box, '--members', 'x', '--seed', '-3']],
  ])(
    '%j says nothing else',
    async (args) => {
      const { left, signs } = await leftIn(...args);
      expect(left).toBe('');
      expect(signs).toBeGreaterThan(60);
    },
    240_000,
  );

  it('counts by its own rules of plural', async () => {
    const [count, form] = [2, 'few'];
    const options = ['--members', '--seed'].slice(0, count);
    const { err } = await warmstead(['plan', box, ...options.flatMap((one) => [one, '-']), '--lang', 'pl'], '', env);
    expect(err).toContain(`${count} [things] [${form}] [to] [mend]`);
  });

  it('leaves units and blanks as they are', () => {
    expect(bracketed('{0} g on {1}, room {2} °C')).toBe('{0} g [on] {1}, [room] {2} °C');
  });
});
