// Which stretches of a log show the box settled? The fit looks only at these: the uncertain quantities decide where
// temperatures settle, not how fast. A window lies well after a change between day and night, without sun.
// The room is taken as the box feels it: its own reading, delayed by the box's lag.
import type { DayPeriod } from '../../physics/enclosure.ts';
import { isDayAt } from '../../physics/room-day.ts';
import { channelAt, hourOfDay, type ReadingLog, usualIntervalS } from '../reading-log.ts';

export interface WindowValue {
  /** Index into log.channels. */
  readonly channel: number;
  readonly value: number;
  readonly readings: number;
}

export interface SettledWindow {
  readonly fromS: number;
  readonly toS: number;
  readonly isDay: boolean;
  /** What the box feels of the room [degC]; null when the room was not read. */
  readonly roomC: number | null;
  /** Hours since day and night last changed, at the window's middle. */
  readonly sinceChangeH: number;
  readonly values: readonly WindowValue[];
}

export interface WindowChoice {
  readonly day: DayPeriod;
  /** The box's lag behind its room [h]. */
  readonly lagH: number;
  /** Hours of the day with sun on the glass; none when null. */
  readonly sunH: { readonly from: number; readonly to: number } | null;
}

/** Length of one window [s]; our choice: longer than a thermostat's cycle, shorter than the room's change. */
export const windowS = 7200;
/** After a change between day and night a box settles in a few lags; our choice, at least two hours. */
export const settleAfterH = (lagH: number): number => Math.min(5, Math.max(2, 2 * lagH));

/** Cut a log into settled windows. Hand readings count alone, each as a window of its own. */
export function settledWindows(log: ReadingLog, choice: WindowChoice): SettledWindow[] {
  const interval = usualIntervalS(log.timesS);
  const single = log.kind === 'hand' || interval > windowS / 3;
  const room = feltRoom(log, choice.lagH);
  const wait = single ? Math.min(2, settleAfterH(choice.lagH)) : settleAfterH(choice.lagH);
  const buckets = new Map<string, number[]>();
  log.timesS.forEach((t, i) => {
    const hour = hourOfDay(t);
    const since = sinceChangeH(choice.day, hour);
    if (since < wait || inSun(choice, hour)) return;
    const isDay = isDayAt(choice.day, hour);
    const key = single ? String(t) : `${Math.floor(t / windowS)}${isDay}`;
    const list = buckets.get(key);
    if (list) list.push(i);
    else buckets.set(key, [i]);
  });
  return [...buckets.values()].flatMap((rows) => {
    const enough = single ? 1 : Math.max(1, (0.5 * windowS) / Math.max(interval, 1) / 2);
    if (rows.length < enough) return [];
    const values = log.channels.flatMap((c, channel) => meanOf(c.values, rows, channel));
    const felt = room === null ? null : rows.reduce((s, i) => s + room[i]!, 0) / rows.length;
    const first = log.timesS[rows[0]!]!;
    const last = log.timesS[rows.at(-1)!]!;
    const hour = hourOfDay((first + last) / 2);
    return [
      {
        fromS: first,
        toS: last,
        isDay: isDayAt(choice.day, hour),
        roomC: felt,
        sinceChangeH: sinceChangeH(choice.day, hour),
        values,
      },
    ];
  });
}

function meanOf(values: readonly (number | null)[], rows: readonly number[], channel: number): WindowValue[] {
  const there = rows.map((i) => values[i]!).filter((v): v is number => v !== null);
  if (there.length === 0) return [];
  return [{ channel, value: there.reduce((s, v) => s + v, 0) / there.length, readings: there.length }];
}

function inSun(choice: WindowChoice, hour: number): boolean {
  if (choice.sunH === null) return false;
  return hour >= choice.sunH.from && hour <= choice.sunH.to + 2;
}

/** Hours since the day period last began or ended; 24 when it never does. */
export function sinceChangeH(day: DayPeriod, hour: number): number {
  if ((day.endH - day.startH + 24) % 24 === 0) return 24;
  const after = (mark: number) => (hour - mark + 48) % 24;
  return Math.min(after(day.startH), after(day.endH));
}

/** The room delayed by a first-order lag, at each time of the log; null when it was never read. */
export function feltRoom(log: ReadingLog, lagH: number): number[] | null {
  const channel = channelAt(log, 'room', 'tempC');
  const first = channel?.values.find((v) => v !== null);
  if (channel === undefined || first === undefined || first === null) return null;
  let felt = first;
  let lastRoom = first;
  let lastS = log.timesS[0]!;
  return log.timesS.map((t, i) => {
    const room = channel.values[i] ?? lastRoom;
    const dt = (t - lastS) / 3600;
    felt = room + (felt - room) * Math.exp(-dt / Math.max(0.05, lagH));
    lastRoom = room;
    lastS = t;
    return felt;
  });
}
