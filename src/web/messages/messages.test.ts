import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { blanksOf } from '../../shared/pattern.ts';
import { de } from './de.ts';
import { en, type MessageKey } from './en.ts';
import { languageName, taughtBook } from './translate.ts';

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

describe('a further language', () => {
  it('says in English what it leaves open, and refusals by their code', () => {
    const book = taughtBook(en, { 'web:tool.undo': 'Annuler', 'fault:ENC_RANGE': 'Non.', 'pack:title': 'Dossier' });
    expect(book['tool.undo']).toBe('Annuler');
    expect(book['tool.redo']).toBe(en['tool.redo']);
    expect(Object.keys(book).filter((key) => !(key in en))).toEqual(['fault.ENC_RANGE']);
  });

  it('is called what it calls itself', () => {
    expect(['de', 'en', 'fr'].map(languageName)).toEqual(['Deutsch', 'English', 'Français']);
  });
});
