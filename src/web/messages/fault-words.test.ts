// Every refusal that can reach a screen has its German.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { faultsDe } from '../../proving/words/faults-de.ts';
import type { Fault } from '../../shared/fault.ts';
import { faultSentence } from './fault-words.ts';
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

  it('stay English and marked so where a code has no words', () => {
    expect(faultSentence({ ...fault, code: 'NO_SUCH' }, { book: 'de' })).toEqual({
      text: 'No. Allowed: 0.2 to 4 m. Do.',
      lang: 'en',
    });
  });
});
