// Every exported formula must say where it comes from and what checks it, and may only name checks and sources that exist.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cases } from './tables.ts';

const folders = ['formulas', 'conduction'].map((name) => new URL(`../src/physics/${name}/`, import.meta.url));
const files = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') })),
);
/** Helpers that compute no physics of their own. */
const plain = new Set(['rangeNotes', 'kelvinFromCelsius']);
const exported = /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/)?\n?export (?:function (\w+)|const (\w+) = (?:\(|<))/g;

const formulas = files.flatMap(({ name, text }) =>
  [...text.matchAll(exported)].map((match) => ({
    what: `${name}: ${match[2] ?? match[3]}`,
    id: match[2] ?? match[3] ?? '',
    doc: match[1] ?? '',
  })),
);

describe('formulas', () => {
  it('are found', () => expect(formulas.length).toBeGreaterThan(80));
  it('say what checks them', () => {
    const silent = formulas.filter((each) => !plain.has(each.id) && !each.doc.includes('Checks:'));
    expect(silent.map((each) => each.what)).toEqual([]);
  });
  it('name only checks that exist', async () => {
    const known = new Set((await cases()).map((row) => row.id));
    const named = formulas.flatMap((each) =>
      [...each.doc.matchAll(/\bP-\d{3}\b/g)].map((m) => [each.what, m[0]] as const),
    );
    expect(named.length).toBeGreaterThan(80);
    expect(named.filter(([, id]) => !known.has(id))).toEqual([]);
  });
  it('name only sources that exist', () => {
    const sources = JSON.parse(readFileSync(new URL('./sources.json', import.meta.url), 'utf8')) as object;
    const used = files.flatMap(({ text }) => [
      ...[...text.matchAll(/Source: ([A-Z][A-Z0-9-]{3,})/g)].map((m) => m[1] ?? ''),
      ...[...text.matchAll(/source: '([A-Z][A-Z0-9-]+)'/g)].map((m) => m[1] ?? ''),
    ]);
    expect(used.length).toBeGreaterThan(60);
    expect(used.filter((key) => !(key in sources))).toEqual([]);
  });
});

describe('theory pages', () => {
  it('name only files that exist', () => {
    const folder = new URL('../docs/theory/', import.meta.url);
    const known = new Set(files.map((file) => file.name));
    const named = readdirSync(folder).flatMap((page) => {
      const head = /\*\*Files\*\*: ([^\n]*)/.exec(readFileSync(new URL(page, folder), 'utf8'))?.[1] ?? '';
      return [...head.matchAll(/`([\w-]+\.ts)`/g)].map((m) => m[1] ?? '');
    });
    expect(named.length).toBeGreaterThan(30);
    expect(named.filter((name) => !known.has(name))).toEqual([]);
  });
});
