// Can every sentence be said in a language that is one file? Then each book is in the collection, and no sentence changes
// its words by its blanks other than through a pattern.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { patternOf } from '../../src/shared/languages.ts';
import { blanksOf, filledPattern, isPattern, numbered } from '../../src/shared/pattern.ts';
import { countLanguage, withEveryKey } from './count-language.ts';
import { books, everyText } from './every-text.ts';

const every = everyText();
type Sentence = ((...args: readonly unknown[]) => unknown) & { readonly pattern?: string };

function sentencesIn(x: unknown, at: string): [string, Sentence][] {
  if (typeof x === 'function') return [[at, x as Sentence]];
  if (typeof x !== 'object' || x === null) return [];
  return Object.entries(x).flatMap(([key, one]) => sentencesIn(one, `${at}.${key}`));
}
const sentences = Object.entries(books).flatMap(([room, book]) => sentencesIn(book, room));

/** What a sentence answers, as text throughout. */
const asText = (x: unknown): unknown =>
  typeof x === 'object' && x !== null
    ? Object.fromEntries(Object.entries(x).map(([key, one]) => [key, asText(one)]))
    : String(x);

const filledIn = (x: unknown, args: readonly (string | number)[]): unknown =>
  typeof x === 'string'
    ? filledPattern(x, numbered(args), 'en')
    : Object.fromEntries(Object.entries(x as object).map(([key, one]) => [key, filledIn(one, args)]));

/** What holds no word a language need not say: a table's row of figures. */
const wordless = new Set(['terminal.records.table', 'terminal.records.place', 'pack.feeding.preyIs']);

describe('every sentence', () => {
  it('is counted', () => {
    expect(Object.keys(every).length).toBeGreaterThan(4500);
    expect(sentences.length).toBeGreaterThan(150);
  });

  it('is a pattern without a hole', () => {
    const odd = Object.entries(every).filter(([, text]) => !isPattern(text) || /undefined|NaN|\[object/.test(text));
    expect(odd).toEqual([]);
  });

  it.each(sentences.filter(([at]) => !wordless.has(at)))('%s says the same whatever stands in its blanks', (_, say) => {
    for (const value of [0, 1, 2, 7, 'x', '']) {
      const args = Array.from({ length: Math.max(say.length, 4) }, () => value);
      const open = say.pattern ?? patternOf(say as never);
      expect(filledIn(open, args)).toEqual(asText(say(...args)));
    }
  });

  it('stands in a book that is collected: no other file chooses between the languages', () => {
    const src = join(import.meta.dirname, '../../src');
    const choosing = readdirSync(src, { recursive: true, encoding: 'utf8' })
      .filter((name) => /(?<!\.test)\.tsx?$/.test(name) && !name.startsWith('shared'))
      .filter((name) =>
        /(?:===|!==) 'de'|\[language\]|\[settings\.(?:book|language)\]/.test(readFileSync(join(src, name), 'utf8')),
      );
    // The check of data/, German days, what an override kept in each language, the pack's form of a date, refusals by their code, patterns.
    expect(choosing.sort()).toEqual([
      'animal/care-facts.ts',
      'animal/words/say.ts',
      'desk/pack/parts/decision-part.ts',
      'proving/words/say-fault.ts',
      'proving/words/say-told.ts',
    ]);
  });
});

describe('counting a language', () => {
  const small = { 'a:x': 'One {n}', 'a:y': 'Two', 'a:z': 'Three' };
  it('tells open, changed, wrong and unknown sentences apart', () => {
    const pairs = { 'a:x': ['One {n}', 'Un {m}'], 'a:y': ['Too', 'Deux'], 'b:q': ['?', 'x'] } as const;
    expect(countLanguage(small, pairs)).toEqual({
      said: 2,
      open: ['a:z'],
      changed: ['a:y'],
      wrong: ['a:x'],
      unknown: ['b:q'],
    });
  });

  it('takes the English of today for what is open and keeps the old one beside what is said', () => {
    expect(withEveryKey(small, { 'a:y': ['Too', 'Deux'], 'a:z': ['Old', ''] })).toEqual({
      'a:x': ['One {n}', ''],
      'a:y': ['Too', 'Deux'],
      'a:z': ['Three', ''],
    });
  });

  it('finds all of a new file open', () => {
    const pairs = withEveryKey(every, {});
    expect(countLanguage(every, pairs).open).toHaveLength(Object.keys(every).length);
    expect(blanksOf(every['terminal:check.faults']!)).toEqual(['0', '1']);
  });
});
