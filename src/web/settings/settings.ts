// How this person likes the sheet: language, units, light or dark. Kept on the device, never sent anywhere.
// Leaves out everything about a placement.

export type Language = 'en' | 'de';
export type TemperatureUnit = 'C' | 'F';
export type LengthUnit = 'cm' | 'in';
export type Sheet = 'auto' | 'light' | 'dark';

export interface Settings {
  readonly language: Language;
  readonly temperature: TemperatureUnit;
  readonly length: LengthUnit;
  readonly sheet: Sheet;
}

const storageKey = 'warmstead-settings-1';

/** What a first visitor gets: the browser's language; US English reads °F and inches. */
export function firstSettings(browserLanguage: string): Settings {
  const us = browserLanguage === 'en-US';
  return {
    language: browserLanguage.toLowerCase().startsWith('de') ? 'de' : 'en',
    temperature: us ? 'F' : 'C',
    length: us ? 'in' : 'cm',
    sheet: 'auto',
  };
}

const allowed = {
  language: ['en', 'de'],
  temperature: ['C', 'F'],
  length: ['cm', 'in'],
  sheet: ['auto', 'light', 'dark'],
} as const;

/** Settings read back from storage; anything unknown falls back, field by field. */
export function settingsFrom(raw: unknown, fallback: Settings): Settings {
  if (typeof raw !== 'object' || raw === null) return fallback;
  const row = raw as Record<string, unknown>;
  const pick = <K extends keyof Settings>(key: K): Settings[K] =>
    (allowed[key] as readonly unknown[]).includes(row[key]) ? (row[key] as Settings[K]) : fallback[key];
  return {
    language: pick('language'),
    temperature: pick('temperature'),
    length: pick('length'),
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
