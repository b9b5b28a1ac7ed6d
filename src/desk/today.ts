// Which day is it at the counter, and which is the latest day that anybody on earth may write today?
import type { Clock } from './desk-context.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** The day by the clock of this machine. */
export function todayOf(clock: Clock): string {
  const now = clock.now();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A device may sit in another time zone: 14 h is the furthest ahead. */
export const latestDayOf = (clock: Clock): string =>
  new Date(clock.now().getTime() + 14 * 3_600_000).toISOString().slice(0, 10);
