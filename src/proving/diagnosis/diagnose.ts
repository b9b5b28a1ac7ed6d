// Which mistake do these readings look like? The door of diagnosis: shapes of the curves first, then levels against the
// simulator with each mistake made. A mistake that looks like another one is named beside it; a person looks.
import { coded, type Saying, told } from '../../husbandry/coded.ts';
import type { DayPeriod, Enclosure } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import type { Priors } from '../../physics/priors.ts';
import { isDayAt } from '../../physics/room-day.ts';
import type { InsidePlace } from '../calibration/forecast.ts';
import { sinceChangeH } from '../calibration/settled-windows.ts';
import { type Channel, hourOfDay, type ReadingLog } from '../reading-log.ts';
import { type Cause, type Diagnosis, type Evidence, namedFrom, type Suspect } from './cause.ts';
import { type Level, stateWeights } from './levels.ts';
import { dayShift, type HalfHour, halfHours, lastingJump, middayBump, saturated } from './shapes.ts';

export interface DiagnosisInput {
  readonly enclosure: Enclosure;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  /** Corrected readings. */
  readonly log: ReadingLog;
  readonly baskingAimC: number;
}

interface Curve {
  readonly channel: Channel;
  readonly place: InsidePlace;
  readonly points: readonly HalfHour[];
}

const say = coded('seen', {
  falls: (byK: string) => `Falls by ${byK} K and does not come back.`,
  rises: (byK: string) => `Rises by ${byK} K and stays.`,
  bump: (byK: string) => `A bump of ${byK} K around noon.`,
  wet: (hours: string) => `Stands at the top of the scale for ${hours} h.`,
  late: (hours: string) => `The warm part of the day comes ${hours} h late.`,
  early: (hours: string) => `The warm part of the day comes ${hours} h early.`,
  state: {
    'no-thermostat': 'Stands where full power would hold it, by day and by night alike.',
    'stuck-off': 'Stands at the room: no heat.',
    'probe-cool-end': 'The cool end stands at the set point, the warm end far above.',
    'dial-set-to-basking': 'By day everything stands higher than the planned dial would hold it.',
    'deep-substrate': 'The surface stays cool although the mat works.',
  },
});

/** Name likely mistakes, most likely first. */
export function diagnose(input: DiagnosisInput): Diagnosis {
  const { enclosure, log } = input;
  const curves = log.channels.flatMap((channel): Curve[] => {
    if (channel.quantity !== 'tempC' || channel.place === null || channel.place === 'room') return [];
    return [{ channel, place: channel.place, points: halfHours(log, channel) }];
  });
  const found = new Map<Cause, Suspect>();
  const add = (cause: Cause, weight: number, evidence: readonly Evidence[]) => {
    if (weight > (found.get(cause)?.weight ?? Number.NEGATIVE_INFINITY)) found.set(cause, { cause, weight, evidence });
  };
  wet(log, add);
  const jumped = jumps(enclosure, curves, add);
  const shifted = !jumped && shifts(input, curves, add);
  const sunny = !jumped && !shifted && sun(enclosure, curves, add);
  // Levels mean little across a jump, and at the wrong hours.
  if (!jumped && !shifted) levelCauses(input, curves, sunny, add);
  const suspects = [...found.values()].filter((s) => s.weight >= namedFrom).sort((a, b) => b.weight - a.weight);
  return { suspects, healthy: suspects.length === 0 };
}

type Add = (cause: Cause, weight: number, evidence: readonly Evidence[]) => void;

const mark = (
  c: { channel: Channel; place: InsidePlace | null },
  fromS: number,
  toS: number,
  words: Saying,
): Evidence => ({
  channelId: c.channel.id,
  place: c.place,
  fromS,
  toS,
  say: words.en,
  told: told(words),
});

/** Humidity at the top for longer than misting explains [s]; our choice. */
const wetS = 5 * 3600;

function wet(log: ReadingLog, add: Add): void {
  for (const channel of log.channels) {
    if (channel.quantity !== 'rhPct' || channel.place === 'room') continue;
    const at = saturated(log, channel);
    if (at === null || at.toS - at.fromS < wetS) continue;
    const hours = ((at.toS - at.fromS) / 3600).toFixed(0);
    add('wet-sensor', 6 + (at.toS - at.fromS) / 86400, [
      {
        channelId: channel.id,
        place: channel.place,
        fromS: at.fromS,
        toS: at.toS,
        say: say.wet(hours).en,
        told: told(say.wet(hours)),
      },
    ]);
  }
}

/** A lasting change that is no mistake of the room [K]; our choice. */
const jumpK = 2;

function jumps(enclosure: Enclosure, curves: readonly Curve[], add: Add): boolean {
  let any = false;
  for (const c of curves) {
    const jump = lastingJump(c.points, jumpK);
    if (jump === null) continue;
    any = true;
    const end = c.points.at(-1)!.atS;
    const weight = 5 + 2 * Math.abs(jump.byK);
    if (jump.byK < 0) {
      add('stuck-off', weight, [mark(c, jump.atS, end, say.falls((-jump.byK).toFixed(1)))]);
      continue;
    }
    const seen = [mark(c, jump.atS, end, say.rises(jump.byK.toFixed(1)))];
    add('stuck-on', weight, seen);
    if (enclosure.thermostats.length > 0) add('probe-fallen', weight - 0.5, seen);
  }
  return any;
}

function shifts({ enclosure, baskingAimC }: DiagnosisInput, curves: readonly Curve[], add: Add): boolean {
  const { day } = enclosure;
  const rows = curves.flatMap((c) => {
    const shift = dayShift(c.points, day);
    return shift === null || shift.stepK < 1 ? [] : [{ c, shift }];
  });
  rows.sort((a, b) => b.shift.stepK - a.shift.stepK);
  const clearest = rows[0];
  if (clearest === undefined) return false;
  const { c, shift } = clearest;
  const agreeing = rows.filter((r) => Math.abs(r.shift.byH - shift.byH) <= 2).length;
  if (Math.abs(shift.byH) < 2 || shift.leftFrac > 0.5 || agreeing < (2 * rows.length) / 3) return false;
  const weight = 5 + 3 * shift.stepK * (1 - shift.leftFrac);
  const words = (shift.byH > 0 ? say.late : say.early)(Math.abs(shift.byH).toFixed(1));
  const seen = [mark(c, c.points[0]!.atS, c.points.at(-1)!.atS, words)];
  add('timer-shifted', weight, seen);
  // a day dial turned below the night dial looks like half a day's shift
  if (Math.abs(shift.byH) > 9 && enclosure.thermostats.some((t) => baskingAimC < t.setNightC))
    add('dial-set-to-basking', weight + 0.2, seen);
  return true;
}

/** Midday bump that only sun explains, in at least two places or very high in one [K]; our choice. */
const sunBumpK = 1.5;

function sun(enclosure: Enclosure, curves: readonly Curve[], add: Add): boolean {
  const bumps = curves
    .map((c) => ({ c, bump: middayBump(c.points, enclosure.day) }))
    .filter(({ bump }) => bump.byK >= sunBumpK);
  const high = bumps.some(({ bump }) => bump.byK >= 2.5 * sunBumpK);
  if (bumps.length < Math.min(2, curves.length) && !high) return false;
  const sum = bumps.reduce((s, b) => s + b.bump.byK, 0);
  add(
    'sun-on-glass',
    4 + 2 * sum,
    bumps.map(({ c, bump }) => mark(c, bump.dayS + 11 * 3600, bump.dayS + 16 * 3600, say.bump(bump.byK.toFixed(1)))),
  );
  return true;
}

function levelCauses(input: DiagnosisInput, curves: readonly Curve[], sunny: boolean, add: Add): void {
  const levels = curves.flatMap((c) => levelsOf(c, input.enclosure.day, sunny));
  if (levels.length === 0) return;
  const weights = stateWeights({ ...input, levels });
  const healthy = weights.get('healthy')!;
  for (const [state, logLikelihood] of weights) {
    if (state === 'healthy') continue;
    const weight = logLikelihood - healthy;
    const seen = curves.map((c) => mark(c, c.points[0]!.atS, c.points.at(-1)!.atS, say.state[state]));
    add(state, weight, seen);
    // A probe that lies outside drives the heater like no thermostat at all, as long as the room is below the dial.
    if (state === 'no-thermostat' && input.enclosure.thermostats.length > 0) {
      add('probe-fallen', weight - 0.3, seen);
      add('stuck-on', weight - 0.6, seen);
    }
  }
}

/** Settled levels of a curve; hours that sun can reach are left out on sunny days. */
function levelsOf(c: Curve, day: DayPeriod, sunny: boolean): Level[] {
  return [true, false].flatMap((isDay): Level[] => {
    const some = c.points.filter((p) => {
      const hour = hourOfDay(p.atS);
      if (isDayAt(day, hour) !== isDay || sinceChangeH(day, hour) < 3 || !Number.isFinite(p.roomC)) return false;
      return !(sunny && hour > 10 && hour < 18);
    });
    if (some.length < 6) return [];
    const mean = (pick: (p: HalfHour) => number) => some.reduce((s, p) => s + pick(p), 0) / some.length;
    return [
      { place: c.place, isDay, valueC: mean((p) => p.valueC), roomC: mean((p) => p.roomC), bySlope: slopeByRoom(some) },
    ];
  });
}

/** Least rooms apart for a slope to say anything [K], as a standard deviation; our choice. */
const leastRoomSdK = 0.35;

/** Change of a place by the room over settled half hours, with the error that the room's spread leaves. */
function slopeByRoom(some: readonly HalfHour[]): Level['bySlope'] {
  const n = some.length;
  const room = some.reduce((s, p) => s + p.roomC, 0) / n;
  const value = some.reduce((s, p) => s + p.valueC, 0) / n;
  const sxx = some.reduce((s, p) => s + (p.roomC - room) ** 2, 0);
  const sxy = some.reduce((s, p) => s + (p.roomC - room) * (p.valueC - value), 0);
  const sd = Math.sqrt(sxx / n);
  return sd < leastRoomSdK ? null : { slope: sxy / sxx, sd: 0.15 + 0.12 / sd };
}
