// How far apart are two days, and which day comes so many days later? Days are ISO dates of the branch, e.g. "2026-01-31".
// Leaves out times of day and time zones: whoever records an event says which day it was.

export type IsoDate = string;

const dayMs = 86_400_000;

/** True for a day that exists, written yyyy-mm-dd. */
export function isIsoDate(text: unknown): text is IsoDate {
  if (typeof text !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

/** Days since 1970-01-01. Throws on a text that is no day: that is our own bug. */
export function dayNumber(date: IsoDate): number {
  if (!isIsoDate(date)) throw new Error(`"${date}" is no day`);
  return Date.parse(`${date}T00:00:00Z`) / dayMs;
}

export const dateOfDay = (day: number): IsoDate => new Date(day * dayMs).toISOString().slice(0, 10);

export const addDays = (date: IsoDate, days: number): IsoDate => dateOfDay(dayNumber(date) + Math.round(days));

/** Days from the first to the second; negative when the second is earlier. */
export const daysBetween = (from: IsoDate, to: IsoDate): number => dayNumber(to) - dayNumber(from);

/** Month 1..12. */
export const monthOf = (date: IsoDate): number => Number(date.slice(5, 7));
