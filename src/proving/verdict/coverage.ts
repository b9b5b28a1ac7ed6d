// Do the readings cover what the rule asks: enough nights, close enough, without long holes, at the places that count?
import type { DayPeriod } from '../../physics/enclosure.ts';
import { isDayAt } from '../../physics/room-day.ts';
import { type Channel, hourOfDay, loggerPart, type ReadingLog, usualIntervalS } from '../reading-log.ts';
import type { ProofRule } from './rule.ts';

export interface Hole {
  readonly fromS: number;
  readonly toS: number;
}

export interface Coverage {
  /** Nights with readings from end to end. */
  readonly nights: number;
  readonly intervalS: number;
  readonly holes: readonly Hole[];
  readonly handDays: number;
  readonly enough: boolean;
}

/** Coverage of a log. Beside a logger, a place that only a person read is covered by the rule for hands; at a place that
 *  both read, the logger covers it. */
export function coverageOf(log: ReadingLog, day: DayPeriod, rule: ProofRule): Coverage {
  const logged = loggerPart(log);
  const own = coverageOfOne(logged, day, rule);
  const inside = (c: Channel) => c.quantity === 'tempC' && c.place !== null && c.place !== 'room';
  const loggedPlaces = new Set(logged.channels.filter(inside).map((c) => c.place));
  const handOnly =
    logged === log ? [] : log.channels.filter((c) => c.byHand && inside(c) && !loggedPlaces.has(c.place));
  if (handOnly.length === 0) return own;
  const days = handOnly.map((c) => {
    const timesS = log.timesS.filter((_, i) => typeof c.values[i] === 'number');
    return daysByHand({ kind: 'hand', timesS, channels: [] }, rule);
  });
  const handDays = Math.min(...days);
  const nights = loggedPlaces.size === 0 ? handDays : Math.min(own.nights, handDays);
  return { ...own, nights, handDays, enough: own.enough && handDays >= rule.nights };
}

/** Coverage of a log by one kind of reading: the temperatures inside, each by its own readings, the sparsest decides. A night counts when no
 *  hole longer than allowed lies in it. */
function coverageOfOne(log: ReadingLog, day: DayPeriod, rule: ProofRule): Coverage {
  if (log.kind === 'hand') {
    const handDays = daysByHand(log, rule);
    return {
      nights: handDays,
      intervalS: usualIntervalS(log.timesS),
      holes: [],
      handDays,
      enough: handDays >= rule.nights,
    };
  }
  const own = log.channels
    .filter((c) => c.quantity === 'tempC' && c.place !== null && c.place !== 'room')
    .map((c) => log.timesS.filter((_, i) => c.values[i] !== null && c.values[i] !== undefined));
  const intervalS = Math.max(0, ...own.map(usualIntervalS));
  const holes = own.flatMap((times) =>
    times.slice(1).flatMap((t, i): Hole[] => (t - times[i]! > rule.longestGapS ? [{ fromS: times[i]!, toS: t }] : [])),
  );
  const nightsIn = (times: readonly number[]) =>
    nightsOf(times, day).filter(
      (n) =>
        n.toS - n.fromS >= nightLengthS(day) - 2 * rule.longestGapS &&
        !holes.some((h) => h.fromS < n.toS && h.toS > n.fromS),
    ).length;
  const nights = own.length === 0 ? 0 : Math.min(...own.map(nightsIn));
  const close = intervalS > 0 && intervalS <= rule.longestIntervalS + 1;
  return { nights, intervalS, holes, handDays: 0, enough: close && nights >= rule.nights && holes.length === 0 };
}

const nightLengthS = (day: DayPeriod): number => {
  const dayH = (((day.endH - day.startH) % 24) + 24) % 24 || 24;
  return (24 - dayH === 0 ? 8 : 24 - dayH) * 3600;
};

/** Stretches of night readings; a box without night (day all round) counts from 22 to 6 h. */
export function nightsOf(timesS: readonly number[], day: DayPeriod): Hole[] {
  const always = (day.endH - day.startH + 24) % 24 === 0;
  const isNight = (h: number) => (always ? h >= 22 || h < 6 : !isDayAt(day, h));
  const out: { fromS: number; toS: number }[] = [];
  for (const t of timesS) {
    if (!isNight(hourOfDay(t))) continue;
    const last = out.at(-1);
    if (last && t - last.fromS < 24 * 3600 && !dayBetween(last.toS, t, isNight)) last.toS = t;
    else out.push({ fromS: t, toS: t });
  }
  return out;
}

function dayBetween(fromS: number, toS: number, isNight: (hour: number) => boolean): boolean {
  for (let t = fromS; t < toS; t += 1800) if (!isNight(hourOfDay(t))) return true;
  return false;
}

/** Days with readings in the morning (before 11), in the afternoon (11 to 18) and in the evening; a rule that asks fewer
 *  than three a day asks as many of these parts. */
function daysByHand(log: ReadingLog, rule: ProofRule): number {
  const days = new Map<number, Set<string>>();
  const counts = new Map<number, number>();
  for (const t of log.timesS) {
    const h = hourOfDay(t);
    const day = Math.floor(t / 86400);
    const part = h < 11 ? 'morning' : h < 18 ? 'afternoon' : 'evening';
    days.set(day, (days.get(day) ?? new Set()).add(part));
    counts.set(day, (counts.get(day) ?? 0) + 1);
  }
  return [...days].filter(
    ([day, parts]) => parts.size >= Math.min(3, rule.handReadingsPerDay) && counts.get(day)! >= rule.handReadingsPerDay,
  ).length;
}
