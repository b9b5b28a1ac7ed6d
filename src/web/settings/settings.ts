// How this person likes the sheet: language, units, light or dark. Kept on the device, never sent anywhere.
// Leaves out everything about a placement.
import { bookCodes } from '../messages/translate.ts';

/** Languages that the reasons of the pure rooms are written in. */
export type Language = 'en' | 'de';
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'cm' | 'in';
export type MassUnit = 'g' | 'oz';
export type Sheet = 'auto' | 'light' | 'dark';

export interface Settings {
  /** Language of the screens, the code of a file of messages/. */
  readonly book: string;
  /** Language of the reasons; English where a language of screens has none of its own. */
  readonly language: Language;
  readonly temperature: TemperatureUnit;
  readonly length: LengthUnit;
  readonly mass: MassUnit;
  readonly sheet: Sheet;
}

const storageKey = 'warmstead-settings-1';

/** What a first visitor gets: the browser's language; US English reads °F and inches. */
export function firstSettings(browserLanguage: string): Settings {
  const us = browserLanguage === 'en-US';
  const code = browserLanguage.slice(0, 2).toLowerCase();
  const book = bookCodes.includes(code) ? code : 'en';
  return {
    book,
    language: languageOfBook(book),
    temperature: us ? 'F' : 'C',
    length: us ? 'in' : 'cm',
    // Snakes are weighed in grams there too: common practice.
    mass: 'g',
    sheet: 'auto',
  };
}

export const languageOfBook = (book: string): Language => (book === 'de' ? 'de' : 'en');

const allowed = {
  book: bookCodes,
  language: ['en', 'de'],
  temperature: ['C', 'F'],
  length: ['cm', 'in'],
  mass: ['g', 'oz'],
  sheet: ['auto', 'light', 'dark'],
} as const;

/** Settings read back from storage; anything unknown falls back, field by field. */
export function settingsFrom(raw: unknown, fallback: Settings): Settings {
  if (typeof raw !== 'object' || raw === null) return fallback;
  const row = raw as Record<string, unknown>;
  const pick = <K extends keyof Settings>(key: K): Settings[K] =>
    (allowed[key] as readonly unknown[]).includes(row[key]) ? (row[key] as Settings[K]) : fallback[key];
  // Settings kept before there were books name the language only.
  const book = typeof row.book === 'string' ? pick('book') : pick('language');
  return {
    book,
    language: languageOfBook(book),
    temperature: pick('temperature'),
    length: pick('length'),
    mass: pick('mass'),
    sheet: pick('sheet'),
  };
}

export function loadSettings(): Settings {
  const fallback = firstSettings(navigator.language);
  try {
    return settingsFrom(JSON.parse(localStorage.getItem(storageKey) ?? 'null'), fallback);
  } catch {
    return fallback;
  }
}

export function saveSettings(settings: Settings): void {
  try {
    localStorage.setItem(storageKey, JSON.stringify(settings));
  } catch {
    // Storage may be full or refused; the sheet still works for this visit.
  }
}
