// Says a reason in a language, days written as the reader is used to.
import { isIsoDate } from '../calendar.ts';
import type { Reason } from '../reason.ts';
import { de } from './de.ts';
import { en } from './en.ts';

export type AnimalLanguage = 'en' | 'de';

const books = { en, de } as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "31 Jan 2026" or "31.01.2026"; anything that is no day stays as it is. */
export function sayDay(day: string, language: AnimalLanguage): string {
  if (!isIsoDate(day)) return day;
  const [year = '', month = '', date = ''] = day.split('-');
  return language === 'de' ? `${date}.${month}.${year}` : `${Number(date)} ${months[Number(month) - 1]} ${year}`;
}

export function sayReason({ key, blanks = {} }: Reason, language: AnimalLanguage): string {
  return books[language][key].replace(/\{(\w+)\}/g, (all, name: string) =>
    Object.hasOwn(blanks, name) ? sayDay(String(blanks[name]), language) : all,
  );
}
