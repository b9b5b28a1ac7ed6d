import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { de } from './de.ts';
import { en, type MessageKey } from './en.ts';
import { bookCodes, bookOf, filled, languageName } from './translate.ts';

const blanksOf = (message: string): readonly string[] =>
  [...message.matchAll(/\{(\w+)\}/g)].map((m) => m[1] ?? '').sort();
const web = join(import.meta.dirname, '..');

describe('message books', () => {
  it('ask for the same blanks in both languages', () => {
    for (const key of Object.keys(en) as MessageKey[]) expect(blanksOf(de[key]), key).toEqual(blanksOf(en[key]));
  });

  it('leave no German message empty or equal to its key', () => {
    for (const [key, message] of Object.entries(de)) {
      expect(message.trim().length, key).toBeGreaterThan(0);
      expect(message).not.toBe(key);
    }
  });

  it('hold no word between tags of a component: every text comes from here', () => {
    const texts: string[] = [];
    for (const folder of readdirSync(web, { withFileTypes: true })) {
      if (!folder.isDirectory()) continue;
      for (const name of readdirSync(join(web, folder.name))) {
        if (!name.endsWith('.tsx')) continue;
        const code = readFileSync(join(web, folder.name, name), 'utf8').replace(/\/\/.*$/gm, '');
        for (const found of code.matchAll(/>\s*([A-Za-zÄÖÜäöü]{3,}[^<>{}();=]*)<\//g))
          texts.push(`${name}: ${found[1]}`);
      }
    }
    expect(texts).toEqual([]);
  });
});

describe('filled', () => {
  it('fills every blank and leaves an unknown one visible', () => {
    expect(filled('{a} and {b} and {a}', { a: 1, b: 'two' })).toBe('1 and two and 1');
    expect(filled('{a} and {c}', { a: 1 })).toBe('1 and {c}');
  });
});

describe('a further language', () => {
  it('is one file named by its code', () => {
    const files = readdirSync(import.meta.dirname).filter((name) => /^[a-z]{2}\.ts$/.test(name));
    expect(bookCodes).toEqual(files.map((name) => name.slice(0, 2)).sort());
    expect(bookCodes.map(languageName)).toEqual(['Deutsch', 'English']);
  });

  it('says in English what it leaves open', async () => {
    const book = await bookOf('fr', {
      './en.ts': async () => ({ en }),
      './fr.ts': async () => ({ fr: { 'tool.undo': 'Annuler' } }),
    });
    expect(book['tool.undo']).toBe('Annuler');
    expect(book['tool.redo']).toBe(en['tool.redo']);
  });
});
