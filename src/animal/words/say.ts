// Says a reason in a language, days written as the reader is used to.
import { bookIn, type Language } from '../../shared/languages.ts';
import { type Blanks, filledPattern } from '../../shared/pattern.ts';
import { isIsoDate } from '../calendar.ts';
import type { Reason } from '../reason.ts';
import { de } from './de.ts';
import { en } from './en.ts';

export type AnimalLanguage = Language;

const books = { en, de } as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** How one reader has days and quantities written, where that is not the language's own way in metric units. */
export interface Reader {
  /** Language of the days; "en-US" has the month first. */
  readonly days: AnimalLanguage;
  /** A sentence with its quantities in this person's units. */
  readonly prose: (text: string) => string;
}

export const metric = (language: AnimalLanguage): Reader => ({ days: language, prose: (text) => text });

/** Quantities stand in the words; a sentence without one may hold what a person typed, which stays as it is. */
const measured = /\}\s*(?:°C|K|g|cm|mm)(?!\w)/;

/** A pattern with its blanks filled, its quantities as this person reads them. */
export function filledFor(reader: Reader, pattern: string, blanks: Blanks, language: AnimalLanguage): string {
  const text = filledPattern(pattern, blanks, language);
  return measured.test(pattern) ? reader.prose(text) : text;
}

/** "31 Jan 2026", "Jan 31, 2026" or "31.01.2026"; anything that is no day stays as it is. */
export function sayDay(day: string, language: AnimalLanguage): string {
  if (!isIsoDate(day)) return day;
  const [year = '', month = '', date = ''] = day.split('-');
  if (language === 'de') return `${date}.${month}.${year}`;
  if (language === 'en-US') return `${months[Number(month) - 1]} ${Number(date)}, ${year}`;
  if (language === 'en') return `${Number(date)} ${months[Number(month) - 1]} ${year}`;
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' }).format(
    Date.UTC(Number(year), Number(month) - 1, Number(date)),
  );
}

export function sayReason(
  { key, blanks = {} }: Reason,
  language: AnimalLanguage,
  reader: Reader = metric(language),
): string {
  const days = Object.entries(blanks).map(([name, value]) => [name, sayDay(String(value), reader.days)]);
  return filledFor(reader, bookIn('animal', language, books)[key], Object.fromEntries(days), language);
}
