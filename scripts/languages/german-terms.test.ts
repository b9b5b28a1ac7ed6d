// One German word for each of the program's own terms (data/words/terms.json): none of the words that were in use beside it
// stands in a book of words, in a text of data/ or in a paper's words.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Term {
  readonly term: string;
  readonly de: string;
  /** Patterns of whole words. */
  readonly not: readonly string[];
}

const root = join(import.meta.dirname, '../..');
const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');
const terms = JSON.parse(textOf('data/words/terms.json')) as readonly Term[];

/** The lines of every file that holds German, without the English of the same row. */
function germanLines(): readonly (readonly [string, string])[] {
  const source = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((file) => `src/${file}`);
  const books = source.filter((file) =>
    /[-/]de\.ts$|[-/](?:words|messages)\.ts$|words\/(?:prey|register)\.ts$/.test(file),
  );
  const lines = (file: string) =>
    textOf(file)
      .split('\n')
      .map((line) => [file, line] as const);
  const facts = lines('data/words/de.json').map(
    ([file, line]) => [file, line.replace(/^\s*"(?:[^"\\]|\\.)*":/, '')] as const,
  );
  const tables = readdirSync(join(root, 'data')).filter((file) => file.endsWith('.json'));
  const rows = tables
    .map((file) => `data/${file}`)
    .flatMap((file) =>
      [...textOf(file).matchAll(/"de":\s*"((?:[^"\\]|\\.)*)"/g)].map((row) => [file, row[1]!] as const),
    );
  return [...books.flatMap(lines), ...facts, ...rows];
}

describe('German terms', () => {
  const lines = germanLines();

  it('are read from every book', () => {
    const files = new Set(lines.map(([file]) => file));
    for (const file of [
      'src/web/messages/de.ts',
      'src/cli/messages/de.ts',
      'src/desk/pack/words/de.ts',
      'src/cli/proof-messages.ts',
    ])
      expect(files).toContain(file);
    expect(lines.length).toBeGreaterThan(4000);
  });

  it.each(terms)('$term is $de and nothing else', ({ not }) => {
    const other = new RegExp(`(?<![\\p{L}-])(?:${not.join('|')})(?![\\p{L}-])`, 'u');
    expect(lines.filter(([, line]) => other.test(line)).map(([file, line]) => `${file}: ${line.trim()}`)).toEqual([]);
  });

  it('each stand in the books', () => {
    const all = lines.map(([, line]) => line).join('\n');
    for (const { de } of terms)
      for (const word of de.split(', '))
        expect(all.toLowerCase()).toContain(
          word
            .replace(/^der /, '')
            .replace(/es Ende$/, 'e')
            .toLowerCase(),
        );
  });
});
