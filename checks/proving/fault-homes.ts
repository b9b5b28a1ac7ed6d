// Logs of homes in which one thing is wrong, made with the different model (other-box.ts), noise and biased sensors and
// all; and logs of healthy ones. For judging the diagnosis; nothing in it was set on the seeds that the check uses.
import type { Enclosure } from '../../src/physics/enclosure.ts';
import type { MaterialTable } from '../../src/physics/material.ts';
import type { Cause } from '../../src/proving/diagnosis/cause.ts';
import type { Channel, LogPlace, ReadingLog } from '../../src/proving/reading-log.ts';
import { seededUniform } from '../../src/shared/seeded.ts';
import { otherBox, type TruePlace, type Wrong } from './other-box.ts';
import { cosineDay, hiddenTruth, normalFrom } from './other-homes.ts';

export interface FaultHome {
  /** As planned, which is what the diagnosis is told. */
  readonly planned: Enclosure;
  readonly log: ReadingLog;
}

const hours = 84;
const intervalS = 300;

/** One log of three and a half days. @param cause null = healthy  @param baskingC what a keeper would dial by mistake */
export function faultHome(
  planned: Enclosure,
  materials: MaterialTable,
  seed: number,
  cause: Cause | null,
  baskingC: number,
): FaultHome {
  const uniform = seededUniform(seed);
  const normal = normalFrom(uniform);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const truth = hiddenTruth(uniform);
  const made = withCause(planned, cause, baskingC, between);
  const { winter } = planned.room;
  const lowC = winter.lowC + between(0.5, 3.5);
  const spanK = between(1.5, 3.5);
  const box = otherBox(made, materials, truth, lowC + 4);
  const fromH = between(24, 50);
  const timerH = (uniform() < 0.5 ? -1 : 1) * between(3, 8);
  const sunPeak = between(350, 700);
  const clouds = Array.from({ length: 5 }, () => between(0.4, 1));
  const startS = 20_100 * 86400;
  const places: readonly TruePlace[] = ['basking-surface', 'warm-hide', 'cool-air'];
  const rows: { t: number; roomC: number; read: number[] }[] = [];
  let wander = 0;
  for (let s = -24 * 3600; s < hours * 3600; s += 20) {
    const hour = ((((s % 86400) + 86400) % 86400) / 3600) % 24;
    wander = wander * 0.997 + 0.02 * normal();
    const sunWPerM2 =
      cause === 'sun-on-glass' && hour > 10 && hour < 16
        ? clouds[Math.floor(s / 86400) + 1]! * sunPeak * Math.sin((Math.PI * (hour - 10)) / 6)
        : 0;
    const roomC = cosineDay(lowC, spanK, hour) + wander;
    const timer = cause === 'timer-shifted' ? (hour - timerH + 48) % 24 : hour;
    box.step(timer, roomC, wrongNow(cause, s / 3600, fromH, sunWPerM2));
    if (s >= 0 && s % intervalS === 0) rows.push({ t: startS + s, roomC, read: places.map((p) => box.read(p)) });
  }
  const channel = (place: LogPlace, values: readonly number[]): Channel => {
    const bias = 0.4 * normal();
    return {
      id: place,
      label: place,
      quantity: 'tempC',
      place,
      instrumentId: null,
      values: values.map((v) => Math.round((v + bias + 0.1 * normal()) * 10) / 10),
    };
  };
  const channels = [
    channel(
      'room',
      rows.map((r) => r.roomC),
    ),
    ...places.map((p, i) =>
      channel(
        p,
        rows.map((r) => r.read[i]!),
      ),
    ),
    humidity(rows, cause, fromH, normal, between),
  ];
  return { planned, log: { kind: 'logger', timesS: rows.map((r) => r.t), channels } };
}

function withCause(
  planned: Enclosure,
  cause: Cause | null,
  baskingC: number,
  between: (a: number, b: number) => number,
): Enclosure {
  const { box, thermostats } = planned;
  if (cause === 'dial-set-to-basking')
    return { ...planned, thermostats: thermostats.map((t) => ({ ...t, setDayC: baskingC })) };
  if (cause === 'probe-cool-end') {
    const left = planned.heaters[0]!.xM < box.lengthM / 2;
    const xM = box.lengthM * (left ? between(0.8, 0.95) : between(0.05, 0.2));
    const probe = { xM, yM: box.depthM * 0.8, zM: between(0.05, 0.15), at: 'air' as const };
    return { ...planned, thermostats: thermostats.map((t) => ({ ...t, probe })) };
  }
  if (cause === 'deep-substrate')
    return {
      ...planned,
      substrate: {
        materialId: 'bark-chips',
        wetFrac: 0,
        depthM: (planned.substrate?.depthM ?? 0) + between(0.03, 0.06),
      },
    };
  return planned;
}

function wrongNow(cause: Cause | null, hour: number, fromH: number, sunWPerM2: number): Wrong {
  if (cause === 'no-thermostat') return { stuckDuty: 1 };
  if (cause === 'stuck-on' && hour >= fromH) return { stuckDuty: 1 };
  if (cause === 'stuck-off' && hour >= fromH) return { stuckDuty: 0 };
  if (cause === 'probe-fallen' && hour >= fromH) return { probeOut: true };
  if (cause === 'sun-on-glass') return { sunWPerM2 };
  return {};
}

/** A humidity sensor: falls as the air warms, jumps with misting; in the wet it climbs to the top and stays. */
function humidity(
  rows: readonly { roomC: number; read: number[] }[],
  cause: Cause | null,
  fromH: number,
  normal: () => number,
  between: (a: number, b: number) => number,
): Channel {
  const base = between(45, 75);
  const misted = between(0, 1) < 0.3;
  const bias = 2 * normal();
  let mist = 0;
  let wet = 0;
  const values = rows.map(({ read }, i) => {
    const hour = (i * intervalS) / 3600;
    mist *= 0.985;
    if (misted && i % 288 === 120) mist = between(15, 35);
    if (cause === 'wet-sensor' && hour >= fromH) wet = Math.min(1, wet + 0.02);
    const dry = base - 1.8 * (read[2]! - 22) + mist + bias + 0.8 * normal();
    return Math.round(Math.max(5, Math.min(100, dry * (1 - wet) + wet * (99.6 + 0.3 * normal()))) * 10) / 10;
  });
  return { id: 'rh', label: 'rh', quantity: 'rhPct', place: 'cool-air', instrumentId: null, values };
}
