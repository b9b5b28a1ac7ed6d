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
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < rest.length - 12; k++) {
    const after = rest.slice(k).map((r) => r.byK);
    const before = rest.slice(0, k).map((r) => r.byK);
    const a = median(after);
    const b = before.length === 0 ? 0 : median(before);
    if (Math.abs(a) < leastK || Math.abs(b) >= leastK / 2) continue;
    const stays = after.filter((v) => Math.sign(v) === Math.sign(a) && Math.abs(v) > leastK / 2).length / after.length;
    if (stays <= 0.75) continue;
    // the jump lies where "nothing before, this much after" leaves the least unexplained
    const miss = before.reduce((m, v) => m + v * v, 0) + after.reduce((m, v) => m + (v - a) ** 2, 0);
    if (miss >= least) continue;
    least = miss;
    best = { atS: rest[k]!.atS, byK: a };
  }
  return best;
}

export interface Shift {
  /** Hours by which the warm part of the day comes late; negative = early. */
  readonly byH: number;
  /** Step from night to day at the found shift, what the room does taken off [K]. */
  readonly stepK: number;
  /** What is left unexplained at the found shift over what is at the planned hours, 0..1. */
  readonly leftFrac: number;
}

/** How far the warm part of the day is shifted against the planned one: the shift at which a step and the room together
 *  leave the least of the curve unexplained. */
export function dayShift(points: readonly HalfHour[], day: DayPeriod): Shift | null {
  if ((day.endH - day.startH + 24) % 24 === 0 || points.length < 48) return null;
  const planned = stepFit(points, day, 0);
  if (planned === null) return null;
  let best = { byH: 0, ...planned };
  for (let byH = -11.5; byH <= 12; byH += 0.5) {
    const fit = stepFit(points, day, byH);
    if (fit !== null && fit.stepK > 0 && fit.missK2 < best.missK2) best = { byH, ...fit };
  }
  // hours after a change are left out, so earlier shifts fit as well: the latest of those that fit alike is meant
  for (let byH = best.byH + 0.5; byH <= 12; byH += 0.5) {
    const fit = stepFit(points, day, byH);
    if (fit === null || fit.stepK <= 0 || fit.missK2 > best.missK2 * 1.1 + 1e-3) break;
    best = { byH, stepK: fit.stepK, missK2: Math.min(fit.missK2, best.missK2) };
  }
  return { byH: best.byH, stepK: best.stepK, leftFrac: best.missK2 / Math.max(1e-6, planned.missK2) };
}

/** Least squares of value = level + slope room + step [in the warm part]; mean squared miss [K2]. */
function stepFit(points: readonly HalfHour[], day: DayPeriod, byH: number): { stepK: number; missK2: number } | null {
  const rows = points.flatMap((p) => {
    const hour = hourOfDay(p.atS - byH * 3600);
    if (sinceChangeH(day, hour) < 1.5) return [];
    return [{ step: isDayAt(day, hour) ? 1 : 0, room: Number.isFinite(p.roomC) ? p.roomC : 0, y: p.valueC }];
  });
  const n = rows.length;
  if (n < 24) return null;
  const m = { step: mean(rows.map((r) => r.step)), room: mean(rows.map((r) => r.room)), y: mean(rows.map((r) => r.y)) };
  let [ss, rr, sr, sy, ry, yy] = [0, 1e-6, 0, 0, 0, 0];
  for (const r of rows) {
    const [s, t, y] = [r.step - m.step, r.room - m.room, r.y - m.y];
    ss += s * s;
    rr += t * t;
    sr += s * t;
    sy += s * y;
    ry += t * y;
    yy += y * y;
  }
  const det = ss * rr - sr * sr;
  if (det < 1e-6 * ss * rr) return null;
  const stepK = (sy * rr - ry * sr) / det;
  const slope = (ry * ss - sy * sr) / det;
  return { stepK, missK2: Math.max(0, yy - stepK * sy - slope * ry) / n };
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
