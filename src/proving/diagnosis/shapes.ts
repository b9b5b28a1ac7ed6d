// What the shape of the curves says by itself: a lasting jump, a day that starts at the wrong hour, a bump at midday,
// humidity nailed to the top. Works without a simulation. Leaves out levels (levels.ts).
import type { DayPeriod } from '../../physics/enclosure.ts';
import { isDayAt } from '../../physics/room-day.ts';
import { sinceChangeH } from '../calibration/settled-windows.ts';
import { type Channel, channelAt, hourOfDay, type ReadingLog } from '../reading-log.ts';

/** Half-hour means of a channel, and of the room beside it. */
export interface HalfHour {
  readonly atS: number;
  readonly valueC: number;
  readonly roomC: number;
}

export function halfHours(log: ReadingLog, channel: Channel): HalfHour[] {
  const room = channelAt(log, 'room', 'tempC');
  const out = new Map<number, { v: number; r: number; n: number; rn: number }>();
  log.timesS.forEach((t, i) => {
    const value = channel.values[i];
    if (value === null || value === undefined) return;
    const key = Math.floor(t / 1800);
    const b = out.get(key) ?? { v: 0, r: 0, n: 0, rn: 0 };
    b.v += value;
    b.n++;
    const roomC = room?.values[i];
    if (roomC !== null && roomC !== undefined) {
      b.r += roomC;
      b.rn++;
    }
    out.set(key, b);
  });
  let lastRoom = Number.NaN;
  return [...out].map(([key, b]) => {
    if (b.rn > 0) lastRoom = b.r / b.rn;
    return { atS: key * 1800 + 900, valueC: b.v / b.n, roomC: lastRoom };
  });
}

export interface Jump {
  readonly atS: number;
  /** Lasting change [K], what the room did taken off. */
  readonly byK: number;
}

/** A lasting change of level between like hours of different days; null when there is none.
 *  Each half hour is compared with the same half hour of the first day. */
export function lastingJump(points: readonly HalfHour[], leastK: number): Jump | null {
  const firstDay = new Map<number, HalfHour>();
  const rest: { atS: number; byK: number }[] = [];
  const startS = points[0]?.atS ?? 0;
  for (const p of points) {
    const slot = Math.floor((p.atS % 86400) / 1800);
    const before = firstDay.get(slot);
    if (before === undefined) {
      if (p.atS - startS < 86400) firstDay.set(slot, p);
      continue;
    }
    const room = Number.isFinite(p.roomC - before.roomC) ? p.roomC - before.roomC : 0;
    rest.push({ atS: p.atS, byK: p.valueC - before.valueC - 0.6 * room });
  }
  if (rest.length < 24) return null;
  let best: Jump | null = null;
  let most = 0;
  for (let k = 0; k < rest.length - 12; k++) {
    const after = rest.slice(k).map((r) => r.byK);
    const before = rest.slice(0, k).map((r) => r.byK);
    const a = median(after);
    const b = before.length === 0 ? 0 : median(before);
    const sameSide =
      after.filter((v) => Math.sign(v) === Math.sign(a) && Math.abs(v) > leastK / 2).length / after.length;
    const gain = (Math.abs(a) - Math.abs(b)) * Math.sqrt(after.length);
    if (Math.abs(a) >= leastK && Math.abs(b) < leastK / 2 && sameSide > 0.75 && gain > most) {
      most = gain;
      best = { atS: rest[k]!.atS, byK: a };
    }
  }
  return best;
}

export interface Shift {
  /** Hours by which the warm part of the day comes late; negative = early. */
  readonly byH: number;
  /** Warm part less cool part at the found shift, and at the planned hours [K]. */
  readonly contrastK: number;
  readonly plannedK: number;
}

/** How far the warm part of the day is shifted against the planned one. */
export function dayShift(points: readonly HalfHour[], day: DayPeriod): Shift | null {
  if ((day.endH - day.startH + 24) % 24 === 0) return null;
  const contrast = (byH: number): number => {
    const warm: number[] = [];
    const cool: number[] = [];
    for (const p of points) {
      const hour = hourOfDay(p.atS - byH * 3600);
      if (sinceChangeH(day, hour) < 1.5) continue;
      const rise = p.valueC - 0.6 * (Number.isFinite(p.roomC) ? p.roomC : 0);
      (isDayAt(day, hour) ? warm : cool).push(rise);
    }
    return warm.length < 6 || cool.length < 6 ? Number.NEGATIVE_INFINITY : mean(warm) - mean(cool);
  };
  let best = 0;
  let most = contrast(0);
  const plannedK = most;
  for (let byH = -11.5; byH <= 12; byH += 0.5) {
    const c = contrast(byH);
    if (c > most + 0.02) {
      most = c;
      best = byH;
    }
  }
  return { byH: best, contrastK: most, plannedK };
}

/** Height of a midday bump on each day: 11 to 15 h over the settled day before ten and after 17 h, what the room does
 *  taken off [K]; the highest day counts, clouds hide the others. */
export function middayBump(
  points: readonly HalfHour[],
  day: DayPeriod,
): { readonly byK: number; readonly dayS: number } {
  const days = new Map<number, { noon: number[]; edge: number[] }>();
  for (const p of points) {
    const hour = hourOfDay(p.atS);
    if (!isDayAt(day, hour) || sinceChangeH(day, hour) < 1) continue;
    const key = Math.floor(p.atS / 86400);
    const d = days.get(key) ?? { noon: [], edge: [] };
    const rise = p.valueC - 0.8 * (Number.isFinite(p.roomC) ? p.roomC : 0);
    if (hour >= 11.5 && hour < 15) d.noon.push(rise);
    else if (hour < 10.2 || hour >= 17.5) d.edge.push(rise);
    days.set(key, d);
  }
  let byK = Number.NEGATIVE_INFINITY;
  let dayS = 0;
  for (const [key, d] of days) {
    if (d.noon.length < 4 || d.edge.length < 3) continue;
    const bump = mean(d.noon) - mean(d.edge);
    if (bump > byK) {
      byK = bump;
      dayS = key * 86400;
    }
  }
  return { byK, dayS };
}

/** Longest stretch at the top of the humidity scale [s], and where. */
export function saturated(log: ReadingLog, channel: Channel): { readonly fromS: number; readonly toS: number } | null {
  let best: { fromS: number; toS: number } | null = null;
  let from: number | null = null;
  log.timesS.forEach((t, i) => {
    const v = channel.values[i];
    if (v !== null && v !== undefined && v >= 97.5) {
      from ??= t;
      if (best === null || t - from > best.toS - best.fromS) best = { fromS: from, toS: t };
    } else if (v !== null && v !== undefined) from = null;
  });
  return best;
}

const mean = (v: readonly number[]): number => v.reduce((s, x) => s + x, 0) / v.length;

function median(v: readonly number[]): number {
  const sorted = [...v].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
