// Logs made for tests: a room that swings through the day, places that stand at one level by day and another by night.
import type { Channel, LogPlace, ReadingLog } from '../reading-log.ts';

export interface MadePlace {
  readonly place: LogPlace;
  readonly dayC: number;
  readonly nightC: number;
  readonly quantity?: 'tempC' | 'rhPct';
  readonly instrumentId?: string;
}

/** Noon of a day without a change of clocks [wall-clock s]. */
export const noonS = 20_400 * 86400 + 12 * 3600;

/** A log from noon on. @param hours its length @param stepS between readings @param skip readings to leave out */
export function madeLog(
  places: readonly MadePlace[],
  hours = 75,
  stepS = 600,
  skip: (hourOfRun: number) => boolean = () => false,
): ReadingLog {
  const timesS: number[] = [];
  for (let s = 0; s <= hours * 3600; s += stepS) if (!skip(s / 3600)) timesS.push(noonS + s);
  const wave = (t: number) => Math.cos((2 * Math.PI * (((t / 3600) % 24) - 15)) / 24);
  const channel = (p: MadePlace): Channel => ({
    id: `${p.place}-${p.quantity ?? 'tempC'}`,
    label: p.place,
    quantity: p.quantity ?? 'tempC',
    place: p.place,
    instrumentId: p.instrumentId ?? null,
    values: timesS.map((t, i) => {
      const hour = (t / 3600) % 24;
      const level = hour >= 8 && hour < 20 ? p.dayC : p.nightC;
      return Math.round((level + (p.place === 'room' ? wave(t) : 0) + 0.05 * Math.sin(i * 1.7)) * 100) / 100;
    }),
  });
  return { kind: 'logger', timesS, channels: places.map(channel) };
}
