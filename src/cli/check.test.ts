// The real process: what `warmstead check` and the command line itself answer, and the exit code.
import { chmodSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { largestBytes } from './input.ts';
import { warmstead } from './testing/spawn-cli.ts';

const example = 'data/examples/wood-1200.json';
const folder = mkdtempSync(join(tmpdir(), 'warmstead-check-'));
const file = (name: string, text: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const seconds = 30_000;
const noStack = (text: string): void => expect(text).not.toMatch(/\n\s+at |node:internal|Error:/);

describe.concurrent('a sound file', { timeout: seconds }, () => {
  it('is called sound, exit 0', async () => {
    expect(await warmstead(['check', example])).toEqual({
      code: 0,
      out: `${example} is a sound enclosure file.\n`,
      err: '',
    });
  });
  it('may come by standard input, and be answered in JSON', async () => {
    const { code, out } = await warmstead(['check', '-', '--json'], readFileSync(example));
    expect([code, JSON.parse(out)]).toEqual([0, { ok: true, faults: [] }]);
  });
  it('is answered in German by --lang or LANG', async () => {
    expect((await warmstead(['check', example, '--lang', 'de'])).out).toContain('einwandfreie Terrariendatei');
    expect((await warmstead(['check', example], '', { LANG: 'de_AT.UTF-8' })).out).toContain(
      'einwandfreie Terrariendatei',
    );
  });
  it('may start with a byte order mark', async () => {
    expect((await warmstead(['check', file('bom.json', `\ufeff${readFileSync(example, 'utf8')}`)])).code).toBe(0);
  });
});

describe.concurrent('a file that is not usable', { timeout: seconds }, () => {
  const cases: [string, () => string, string, string][] = [
    ['missing', () => join(folder, 'nowhere.json'), 'CLI_NO_FILE', 'There is no file'],
    ['folder', () => folder, 'CLI_IS_FOLDER', 'is a folder'],
    ['empty', () => file('empty.json', ' \n'), 'CLI_EMPTY', 'is empty'],
    ['not JSON', () => file('comma.json', '{\n  "a": 1,\n}'), 'CLI_NOT_JSON', 'line 3, column 1'],
    ['cut off', () => file('cut.json', '{"a": [1'), 'CLI_NOT_JSON', 'something is not closed'],
    ['a key twice', () => file('twice.json', '{"a":1,\n"a":2}'), 'CLI_KEY_TWICE', 'line 2, column 1'],
    ['not text', () => file('bytes.json', new Uint8Array([0x7b, 0xff, 0xfe])), 'CLI_NOT_TEXT', 'UTF-8'],
    ['too large', () => file('large.json', `"${'x'.repeat(largestBytes)}"`), 'CLI_TOO_LARGE', 'too large'],
    ['without end', () => '/dev/zero', 'CLI_TOO_LARGE', 'too large'],
  ];
  it.each(cases)('%s: a fault, exit 64, no stack trace', async (_name, path, code, say) => {
    const ended = await warmstead(['check', path()]);
    expect([ended.code, ended.out]).toEqual([64, '']);
    expect(ended.err).toContain(code);
    expect(ended.err.replace(/\s+/g, ' ')).toContain(say);
    noStack(ended.err);
  });

  it.skipIf(process.getuid?.() === 0)('unreadable: a fault, exit 64', async () => {
    const path = file('locked.json', '{}');
    chmodSync(path, 0);
    const ended = await warmstead(['check', path]);
    expect(ended.code).toBe(64);
    expect(ended.err).toContain('CLI_NOT_READABLE');
  });

  it('tells every fault at once, as text and as JSON', async () => {
    const raw = JSON.parse(readFileSync(example, 'utf8'));
    raw.box.lengthM = 120;
    raw.heaters[0].thermostatId = 'nobody';
    raw.lid = true;
    const text = JSON.stringify(raw);
    const ended = await warmstead(['check', '-'], text);
    expect(ended.code).toBe(64);
    for (const word of ['box.lengthM', '0.2 to 4 m', 'write 1.2', 'ENC_REFERENCE', 'lid'])
      expect(ended.err).toContain(word);
    const json = await warmstead(['check', '-', '--json'], text);
    const codes = JSON.parse(json.out).faults.map((f: { code: string }) => f.code);
    expect([json.code, codes]).toEqual([64, ['ENC_RANGE', 'ENC_UNKNOWN_KEY', 'ENC_REFERENCE']]);
  });
});

describe.concurrent('the command line', { timeout: seconds }, () => {
  it.each([[['--help']], [['plan', '--help']], [['simulate', '--help']], [['check', '--help']]])(
    '%s helps, exit 0',
    async (args) => {
      const { code, out } = await warmstead(args);
      expect(code).toBe(0);
      expect(out).toContain('Usage:');
      if (args.length > 1) expect(out).toMatch(/Examples:\n {2}warmstead [\s\S]*Exit codes:/);
    },
  );
  it.each([
    [['plan']],
    [['plna', example]],
    [['check', example, '--colour']],
    [['check', example, 'second.json']],
    [[]],
  ])('%s is bad input, exit 64', async (args) => {
    const ended = await warmstead(args);
    expect(ended.code).toBe(64);
    noStack(ended.err);
    expect(ended.err + ended.out).not.toBe('');
  });
  it('tells every bad option at once', async () => {
    const ended = await warmstead([
      'simulate',
      example,
      '--room',
      'warm',
      '--rh',
      '400',
      '--day',
      'spring',
      '--steady',
    ]);
    expect(ended.code).toBe(64);
    for (const word of ['--room', '--rh', '5 to 100 %', '--day', 'winter | summer', 'CLI_TOGETHER'])
      expect(ended.err).toContain(word);
  });
  it('repeats no control character of a file name', async () => {
    const ended = await warmstead(['check', 'no\u001b[2Jfile']);
    expect(ended.err).not.toContain('\u001b');
  });
});
