// Says a reason in a language, days written as the reader is used to.
import { bookIn, type Language } from '../../shared/languages.ts';
import { filledPattern } from '../../shared/pattern.ts';
import { isIsoDate } from '../calendar.ts';
import type { Reason } from '../reason.ts';
import { de } from './de.ts';
import { en } from './en.ts';

export type AnimalLanguage = Language;

const books = { en, de } as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "31 Jan 2026" or "31.01.2026"; anything that is no day stays as it is. */
export function sayDay(day: string, language: AnimalLanguage): string {
  if (!isIsoDate(day)) return day;
  const [year = '', month = '', date = ''] = day.split('-');
  if (language === 'de') return `${date}.${month}.${year}`;
  if (language === 'en') return `${Number(date)} ${months[Number(month) - 1]} ${year}`;
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' }).format(
    Date.UTC(Number(year), Number(month) - 1, Number(date)),
  );
}

export function sayReason({ key, blanks = {} }: Reason, language: AnimalLanguage): string {
  const days = Object.entries(blanks).map(([name, value]) => [name, sayDay(String(value), language)]);
  return filledPattern(bookIn('animal', language, books)[key], Object.fromEntries(days), language);
}
