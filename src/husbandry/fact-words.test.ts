// Every text of data/ that a screen or a printed page may show has its German, and no German stands for a text that is gone.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dataFile } from '../records/data-files.ts';
import { readRawFacts } from '../records/facts.ts';
import { type FactWords, factWord, inWords, textKeys } from './fact-words.ts';

const words = dataFile('words/de.json') as unknown as FactWords;
const { raw } = readRawFacts(join(import.meta.dirname, '../../data'));

/** Files whose notes explain a number to whoever works on the program and reach no reader. */
const inside =
  /^(?:aftercare|care-headings|condition|examination|feeding|growth|length-mass|priors|privacy|quarantine|register|release|triage|usual-rooms)\.json$/;
/** Kinds of sources that are no publication with a title of its own. */
const untitled = ['common practice', 'our choice', 'computed', 'trade data', "keepers' pages", 'literature'];

/** An id or a word that rules compare ("not-first", "peat", "II"): messages say it (factword.*, row.*). */
const isWord = (text: string): boolean => /^(?:[a-z]+(?:-[a-z0-9]+)*|I{1,3}|[AB])$/.test(text);

function textsIn(x: unknown, key: string, take: (text: string, key: string) => void): void {
  if (typeof x === 'string') {
    if (textKeys.has(key) && /\p{L}{2}/u.test(x)) take(x, key);
  } else if (Array.isArray(x)) for (const one of x) textsIn(one, key, take);
  else if (typeof x === 'object' && x !== null) for (const [name, one] of Object.entries(x)) textsIn(one, name, take);
}

const shown = new Set<string>();
for (const [file, rows] of Object.entries(raw)) {
  if (file === 'sources.json') {
    for (const { title, kind } of Object.values(rows as Record<string, { title: string; kind: string }>))
      if (untitled.includes(kind)) shown.add(title);
  } else if (!inside.test(file))
    textsIn(rows, '', (text, key) => {
      if (!(['value', 'values', 'unit'].includes(key) && isWord(text))) shown.add(text);
    });
}

describe('the facts in German', () => {
  it('leave no text of data/ in English', () => {
    expect(shown.size).toBeGreaterThan(700);
    expect([...shown].filter((text) => !Object.hasOwn(words, text))).toEqual([]);
  });

  it('hold no German of a text that is gone, and none that is empty', () => {
    const all = new Set<string>();
    for (const rows of Object.values(raw)) textsIn(rows, '', (text) => all.add(text));
    expect(Object.keys(words).filter((text) => !all.has(text))).toEqual([]);
    expect(Object.values(words).filter((text) => text.trim() === '')).toEqual([]);
  });
});

describe('inWords', () => {
  it('says the texts of rows and leaves ids, sources and unknown texts', () => {
    const row = { id: 'boa', name: 'Heat mat', source: 'Heat mat', facts: { a: { values: ['Heat mat', 'x'] } }, n: 3 };
    expect(inWords(row, { 'Heat mat': 'Heizmatte' })).toEqual({
      id: 'boa',
      name: 'Heizmatte',
      source: 'Heat mat',
      facts: { a: { values: ['Heizmatte', 'x'] } },
      n: 3,
    });
    expect(factWord({}, 'constructor')).toBe('constructor');
  });
});
