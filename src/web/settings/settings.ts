// How this person likes the sheet: language, units, light or dark. Kept on the device, never sent anywhere.
// Leaves out everything about a placement.
import { type Language, ownLanguages } from '../../shared/languages.ts';

export type { Language };
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'cm' | 'in';
export type MassUnit = 'g' | 'oz';
export type Sheet = 'auto' | 'light' | 'dark';

export interface Settings {
  /** Language of the screens, the prints and the reasons. */
  readonly book: Language;
  readonly language: Language;
  readonly temperature: TemperatureUnit;
  readonly length: LengthUnit;
  readonly mass: MassUnit;
  readonly sheet: Sheet;
}

const storageKey = 'warmstead-settings-1';

/** What a first visitor gets: the browser's language where a book speaks it; US English reads °F and inches. */
export function firstSettings(browserLanguage: string): Settings {
  const us = browserLanguage === 'en-US';
  const code = browserLanguage.slice(0, 2).toLowerCase();
  const book = ownLanguages.includes(code) ? code : 'en';
  return {
    book,
    language: book,
    temperature: us ? 'F' : 'C',
    length: us ? 'in' : 'cm',
    // Snakes are weighed in grams there too: common practice.
    mass: 'g',
    sheet: 'auto',
  };
}

const allowed = {
  temperature: ['C', 'F'],
  length: ['cm', 'in'],
  mass: ['g', 'oz'],
  sheet: ['auto', 'light', 'dark'],
} as const;

/** Settings read back from storage; anything unknown falls back, field by field. */
export function settingsFrom(raw: unknown, fallback: Settings): Settings {
  if (typeof raw !== 'object' || raw === null) return fallback;
  const row = raw as Record<string, unknown>;
  const pick = <K extends keyof typeof allowed>(key: K): Settings[K] =>
    (allowed[key] as readonly unknown[]).includes(row[key]) ? (row[key] as Settings[K]) : fallback[key];
  // Settings kept before there were books name the language only. A code without words is read in English.
  const kept = row.book ?? row.language;
  const book = typeof kept === 'string' && /^[a-z]{2}$/.test(kept) ? kept : fallback.book;
  return {
    book,
    language: book,
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

/** The browser's language when this is a first visit and no book speaks it: a file may. Else null. */
export function languageToAskFor(): string | null {
  const code = navigator.language.slice(0, 2).toLowerCase();
  try {
    return localStorage.getItem(storageKey) === null && !ownLanguages.includes(code) ? code : null;
  } catch {
    return null;
  }
}

export function saveSettings(settings: Settings): void {
  try {
    localStorage.setItem(storageKey, JSON.stringify(settings));
  } catch {
    // Storage may be full or refused; the sheet still works for this visit.
  }
}
