// Every refusal that can reach a screen has its German.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { faultsDe } from '../../proving/words/faults-de.ts';
import type { Fault } from '../../shared/fault.ts';
import { measureFor } from '../settings/measure.ts';
import { firstSettings } from '../settings/settings.ts';
import { faultSentence, faultSentences } from './fault-words.ts';
import { loadBook } from './translate.ts';

const page = readFileSync(join(import.meta.dirname, '../../../docs/errors.md'), 'utf8');
const codes = [...page.matchAll(/^\| `([A-Z_]+)` \|/gm)].map((m) => m[1] ?? '');
/** Said in a terminal only: by the command line, a start that failed, backups, a check of data/ itself. */
const terminal =
  /^(?:CLI|SETTING|RESTORE|BACKUP|BULK)_|^SERVER_PORT$|^DATA_JSON$|^ACCOUNT_WHICH_OWNER$|^RECORDS_(?!AWAY|FULL|BUSY)/;
const fault: Fault = {
  code: 'ENC_RANGE',
  field: 'box.lengthM',
  got: '12',
  allowed: '0.2 to 4 m',
  say: 'No.',
  fix: 'Do.',
};

describe('refusals in German', () => {
  beforeAll(async () => await loadBook('de'));

  it('are there for every code that a screen can show, and for no other', () => {
    const shown = codes.filter((code) => !terminal.test(code)).map((code) => `fault.${code}`);
    expect(shown.length).toBeGreaterThan(120);
    expect(
      Object.keys(faultsDe)
        .filter((key) => !key.endsWith('Word'))
        .sort(),
    ).toEqual(shown.sort());
  });

  it('say figures with a decimal comma and leave out what is English', () => {
    expect(faultSentence(fault, { book: 'de' }).text).toMatch(/\(eingegeben: 12; möglich: 0,2–4 m\)$/);
    expect(faultSentence({ ...fault, allowed: 'a name of 3 letters' }, { book: 'de' }).text).not.toContain('name');
    expect(faultSentence(fault, { book: 'en' })).toEqual({
      text: 'No. Allowed: 0.2 to 4 m. Do.',
      lang: undefined,
    });
    const told = { ...fault, fix: 'Give 0.2 to 4 m.' };
    expect(faultSentence(told, { book: 'en' }).text).toBe('No. Give 0.2 to 4 m.');
  });

  it.each(['en', 'de'] as const)('several in one line are in the units of whoever reads them: %s', (book) => {
    const cold = { ...fault, code: 'HAND_RANGE', say: 'Too cold.', got: '-40 °C', allowed: '-10 to 60 °C' };
    const short = { ...fault, code: 'ENC_RANGE', got: '254 cm', allowed: '20 to 127 cm', say: 'Too long: 254 cm.' };
    const own = { ...firstSettings('en-GB'), book, language: book };
    const metric = faultSentences([cold, short, cold], measureFor(own));
    expect(metric).toMatch(/60 °C/);
    expect(metric).toMatch(/127 cm/);
    const us = faultSentences([cold, short, cold], measureFor({ ...own, temperature: 'F', length: 'in', mass: 'oz' }));
    expect(us).toMatch(/140 °F/);
    expect(us).toMatch(/50[.,]0 in/);
    expect(us).not.toMatch(/\d\s*(?:°C|cm\b)/);
    expect(us.split('140 °F').length, 'what was said is not said twice').toBe(2);
  });

  it('reach a screen by one of the two ways that know its units', () => {
    const web = join(import.meta.dirname, '..');
    const files = readdirSync(web, { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));
    const alone = files.filter(
      (name) => !name.includes('.test.') && /\bfaultSentence\(/.test(readFileSync(join(web, name), 'utf8')),
    );
    expect(alone.sort()).toEqual(['controls/fault-text.tsx', 'messages/fault-words.ts']);
  });

  it('stay English and marked so where a code has no words', () => {
    expect(faultSentence({ ...fault, code: 'NO_SUCH' }, { book: 'de' })).toEqual({
      text: 'No. Allowed: 0.2 to 4 m. Do.',
      lang: 'en',
    });
  });
});
