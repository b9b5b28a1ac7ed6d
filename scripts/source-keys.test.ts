// Texts of data/ that a person may read name a source by its authors or its title, never by its key.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '..', 'data');
const read = (name: string): unknown => JSON.parse(readFileSync(join(folder, name), 'utf8'));
const keys = new Set(Object.keys(read('sources.json') as object));

/** Every text in a file with where it stands, names of its fields too; a text that is a key and nothing else is a reference. */
function textsIn(value: unknown, at = ''): { readonly at: string; readonly text: string }[] {
  if (typeof value === 'string') return keys.has(value) ? [] : [{ at, text: value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => [
    ...(keys.has(name) ? [] : [{ at, text: name }]),
    ...textsIn(inner, `${at}/${name}`),
  ]);
}

const keysIn = (text: string): string[] => text.split(/[^A-Za-z0-9_-]+/).filter((word) => keys.has(word));

test('no text holds a key of a source', () => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.json'));
  expect(files.length).toBeGreaterThan(30);
  const found = files.flatMap((name) =>
    textsIn(read(name))
      .filter(({ at }) => !/\/(howRead|url)$/.test(at))
      // A paper may be called by the very number that is its key.
      .flatMap(({ at, text }) =>
        keysIn(text)
          .filter((key) => at !== `/${key}/title`)
          .map((key) => `${name}${at}: ${key}`),
      ),
  );
  expect(found).toEqual([]);
  expect(keysIn('285 ALLEN2017; 332')).toEqual(['ALLEN2017']);
});
