// How much prey of which class does the shop need for the coming weeks? Adds up the next feeds of all animals.
import type { PreyChoice } from './feeding.ts';

export interface Eater {
  readonly animalId: string;
  /** Class that is bought for it; null when none fits or nothing is known. */
  readonly prey: PreyChoice | null;
  readonly intervalDays: { readonly low: number; readonly high: number } | null;
  /** Days from today to the next feed; negative when overdue; null when it must not be fed now. */
  readonly nextInDays: number | null;
}

export interface PreyNeed {
  readonly preyId: string;
  /** Pieces: fewest when fed at the long interval, most at the short one. */
  readonly low: number;
  readonly high: number;
}

export interface StockNeed {
  readonly needs: readonly PreyNeed[];
  /** Animals that could not be counted. */
  readonly unknown: readonly string[];
}

const feedsWithin = (days: number, first: number, interval: number): number =>
  first > days ? 0 : 1 + Math.floor((days - Math.max(0, first)) / interval);

/** @param days how far ahead, at least 1 */
export function preyNeed(eaters: readonly Eater[], days: number): StockNeed {
  const needs = new Map<string, { low: number; high: number }>();
  const unknown: string[] = [];
  for (const { animalId, prey, intervalDays, nextInDays } of eaters) {
    if (prey === null || intervalDays === null || nextInDays === null) {
      unknown.push(animalId);
      continue;
    }
    const sum = needs.get(prey.preyId) ?? { low: 0, high: 0 };
    sum.low += prey.count * feedsWithin(days, nextInDays, intervalDays.high);
    sum.high += prey.count * feedsWithin(days, nextInDays, intervalDays.low);
    needs.set(prey.preyId, sum);
  }
  const rows = [...needs].map(([preyId, need]) => ({ preyId, ...need }));
  return { needs: rows.sort((a, b) => b.high - a.high || (a.preyId < b.preyId ? -1 : 1)), unknown };
}
