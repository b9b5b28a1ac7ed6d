// Which day is it at the counter, and which is the latest day that anybody on earth may write today?
import type { Clock } from './desk-context.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** The day by the clock of this machine. */
export const todayOf = (clock: Clock): string => dayOf(clock.now());

/** The day that a moment lies in, by the clock of this machine. */
export const dayOf = (at: Date): string => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

/** A device may sit in another time zone: 14 h is the furthest ahead. */
export const latestDayOf = (clock: Clock): string =>
  new Date(clock.now().getTime() + 14 * 3_600_000).toISOString().slice(0, 10);
