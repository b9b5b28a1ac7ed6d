// The languages that files bring: data/languages/xx.json of the program, and languages/xx.json in the shop's own folder,
// which comes second and so wins. Read once at start. Leaves out whether they are complete (npm run language).
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ownLanguages, teachLanguage, type Words } from '../shared/languages.ts';
import { isPattern } from '../shared/pattern.ts';
import { programRoot } from './root.ts';

/** Key to the English it was made from and what is said instead; the latter is empty where it is open. */
export type LanguagePairs = Readonly<Record<string, readonly [english: string, said: string]>>;

export interface LanguageFile {
  readonly code: string;
  readonly words: Words;
  readonly pairs: LanguagePairs;
}

export const shippedLanguages = (): string => join(programRoot(), 'data', 'languages');

const isPair = (x: unknown): x is readonly [string, string] =>
  Array.isArray(x) && x.length === 2 && x.every((one) => typeof one === 'string');

/** Sentences that cannot be used (a bracket that does not close) count as open. Null when it is no such file at all. */
export function languageFrom(code: string, text: string): LanguageFile | null {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return null;
  }
  const rows = typeof raw === 'object' && raw !== null && 'words' in raw ? raw.words : null;
  if (typeof rows !== 'object' || rows === null || Array.isArray(rows)) return null;
  const pairs = Object.fromEntries(Object.entries(rows).filter(([, pair]) => isPair(pair))) as LanguagePairs;
  const usable = Object.entries(pairs).filter(([, [, said]]) => said !== '' && isPattern(said));
  return { code, pairs, words: Object.fromEntries(usable.map(([key, [, said]]) => [key, said])) };
}

/** Every file of a folder that is named by a two-letter code; an unreadable one is told under its name. */
export function languageFiles(folder: string): {
  readonly files: readonly LanguageFile[];
  readonly unreadable: readonly string[];
} {
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => /^[a-z]{2}\.json$/.test(name)) : [];
  const files: LanguageFile[] = [];
  const unreadable: string[] = [];
  for (const name of names.sort()) {
    const code = name.slice(0, 2);
    const file = ownLanguages.includes(code) ? null : languageFrom(code, readFileSync(join(folder, name), 'utf8'));
    if (file === null) unreadable.push(join(folder, name));
    else files.push(file);
  }
  return { files, unreadable };
}

/**
 * @param ownFolder folder of this shop's records, e.g. data-local
 * @returns files that could not be used
 */
export function teachLanguages(ownFolder: string): readonly string[] {
  return [shippedLanguages(), join(ownFolder, 'languages')].flatMap((folder) => {
    const { files, unreadable } = languageFiles(folder);
    for (const { code, words } of files) teachLanguage(code, words);
    return unreadable;
  });
}
