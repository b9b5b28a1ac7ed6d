// Finds the words for a key in the chosen language and fills in its blanks.
// Leaves out numbers and units: they come written already (settings/measure.ts).
import type { Language } from '../settings/settings.ts';
import { de } from './de.ts';
import { en, type MessageKey } from './en.ts';

export type Translate = (key: MessageKey, blanks?: Readonly<Record<string, string | number>>) => string;

const books = { en, de } as const;

/** Replaces {name} by its blank; a blank that was not handed stays visible as {name}. */
export function filled(message: string, blanks: Readonly<Record<string, string | number>>): string {
  return message.replace(/\{(\w+)\}/g, (all, name: string) => (name in blanks ? String(blanks[name]) : all));
}

export function translateFor(language: Language): Translate {
  const book = books[language];
  return (key, blanks) => (blanks ? filled(book[key], blanks) : book[key]);
}

/** True when the key stands in the book: for keys made from an id that comes from data. */
export function isMessageKey(key: string): key is MessageKey {
  return key in en;
}
