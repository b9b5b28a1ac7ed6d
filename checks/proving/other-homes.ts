// Homes made with the different model (other-box.ts): hidden truths drawn at random, three nights of a log with biased,
// noisy, rounded instruments in a room that wanders, and what then really happens on the coldest night and hottest day.
import type { Enclosure, RoomDay } from '../../src/physics/enclosure.ts';
import type { MaterialTable } from '../../src/physics/material.ts';
import type { LogPlace, ReadingLog } from '../../src/proving/reading-log.ts';
import { seededUniform } from '../../src/shared/seeded.ts';
import { type HiddenTruth, type OtherBox, otherBox, type TruePlace } from './other-box.ts';

export const truePlaces: readonly TruePlace[] = ['basking-surface', 'warm-hide', 'warm-air', 'cool-air', 'cool-floor'];

export interface OtherHome {
  readonly enclosure: Enclosure;
  readonly truth: HiddenTruth;
  readonly log: ReadingLog;
  /** Means over the coldest hour of the winter night and the hottest of the summer day. */
  readonly coldestNightC: Readonly<Record<TruePlace, number>>;
  readonly hottestDayC: Readonly<Record<TruePlace, number>>;
}

/** Fixed error of a sensor [K], one standard deviation: two cheap classes read side by side were off by +0.4 and -0.6 K. */
const sensorBiasSdK = 0.5;

export interface HomeChoice {
  readonly nights: number;
  readonly intervalS: number;
  readonly places: readonly TruePlace[];
}

/** Standard normal numbers from uniform ones. */
export const normalFrom = (uniform: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());

/** What is true of a home and hidden from the fit; widths of our choice, wider than any one home's doubt. */
export function hiddenTruth(uniform: () => number): HiddenTruth {
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const normal = normalFrom(uniform);
  const times = (sd: number) => Math.exp(sd * normal());
  return {
    conductivity: times(0.17),
    substrateConductivity: times(0.3),
    insideFilm: between(0.75, 1.35),
    outsideWPerM2K: between(6.5, 10.5),
    circulation: times(0.6),
    leak: times(0.5),
    convectedFrac: between(0.3, 0.5),
    toCeilingFrac: between(0.5, 0.9),
    floorFrac: between(0.35, 0.6),
    patchM: between(0.18, 0.34),
    power: 1 + 0.03 * normal(),
    dialErrorK: 0.6 * normal(),
    probeDirect: between(0.4, 1.6),
    hideShade: between(0.4, 1),
  };
}

/** One home from a seed. @param base an enclosure whose heater the other model knows */
export function otherHome(base: Enclosure, materials: MaterialTable, seed: number, choice: HomeChoice): OtherHome {
  const uniform = seededUniform(seed);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const normal = normalFrom(uniform);
  const truth = hiddenTruth(uniform);
  const enclosure = base;
  const { winter, summer } = enclosure.room;
  const lowC = winter.lowC + between(1, 4);
  const spanK = between(2, 4);
  const days = choice.nights + 1;
  const offsets = Array.from({ length: days + 1 }, () => 0.6 * normal());
  const startC = winter.lowC + 3;
  // the log runs from noon, after a day of running in
  const box = otherBox(enclosure, materials, truth, startC);
  const startS = 20_000 * 86400;
  const rows: { t: number; roomC: number; read: Record<TruePlace, number> }[] = [];
  let wander = 0;
  run(
    box,
    startS - 12 * 3600,
    choice.nights * 24 + 24,
    (hour, dayPart) => {
      wander = wander * 0.997 + 0.02 * normal();
      const day = Math.max(0, Math.min(days, Math.floor(dayPart)));
      return cosineDay(lowC + offsets[day]! + wander, spanK, hour);
    },
    (t, roomC) => {
      if (t >= startS + 12 * 3600 && t % choice.intervalS === 0) rows.push({ t, roomC, read: readAll(box) });
    },
  );
  const channel = (place: LogPlace, values: readonly number[]) => {
    const bias = sensorBiasSdK * normal();
    return {
      id: place,
      label: place,
      quantity: 'tempC' as const,
      place,
      instrumentId: null,
      values: values.map((v) => Math.round((v + bias + 0.08 * normal()) * 10) / 10),
    };
  };
  const log: ReadingLog = {
    kind: 'logger',
    timesS: rows.map((r) => r.t),
    channels: [
      channel(
        'room',
        rows.map((r) => r.roomC),
      ),
      ...choice.places.map((p) =>
        channel(
          p,
          rows.map((r) => r.read[p]),
        ),
      ),
    ],
  };
  return {
    enclosure,
    truth,
    log,
    coldestNightC: extremes(enclosure, materials, truth, winter, false),
    hottestDayC: extremes(enclosure, materials, truth, summer, true),
  };
}

const readAll = (box: OtherBox): Record<TruePlace, number> =>
  Object.fromEntries(truePlaces.map((p) => [p, box.read(p)])) as Record<TruePlace, number>;

function run(
  box: OtherBox,
  fromS: number,
  hours: number,
  roomAt: (hour: number, dayPart: number) => number,
  each: (t: number, roomC: number) => void,
): void {
  for (let s = 0; s < hours * 3600; s += 20) {
    const t = fromS + s;
    const hour = (((t % 86400) + 86400) % 86400) / 3600;
    const roomC = roomAt(hour, s / 86400);
    box.step(hour, roomC);
    each(t + 20, roomC);
  }
}

/** A day that is lowest at 5 and highest at 15 h. */
export function cosineDay(lowC: number, spanK: number, hour: number): number {
  const h = (hour + 24) % 24;
  const up = h >= 5 && h < 15;
  const part = up ? (h - 5) / 10 : ((h - 15 + 24) % 24) / 14;
  const c = (1 - Math.cos(Math.PI * part)) / 2;
  return lowC + spanK * (up ? c : 1 - c);
}

/** What happens at the coldest hour of the winter night, or the hottest of the summer day, on the second such day. */
function extremes(
  enclosure: Enclosure,
  materials: MaterialTable,
  truth: HiddenTruth,
  room: RoomDay,
  hot: boolean,
): Record<TruePlace, number> {
  const box = otherBox(enclosure, materials, truth, (room.lowC + room.highC) / 2 + 4);
  const { from, to } = hot ? hottestHours : coldestHours;
  const sum = Object.fromEntries(truePlaces.map((p) => [p, 0])) as Record<TruePlace, number>;
  let count = 0;
  run(
    box,
    0,
    24 + to,
    (hour) => cosineDay(room.lowC, room.highC - room.lowC, hour),
    (t) => {
      if (t <= (24 + from) * 3600) return;
      count++;
      for (const p of truePlaces) sum[p] += box.read(p);
    },
  );
  return Object.fromEntries(truePlaces.map((p) => [p, sum[p] / count])) as Record<TruePlace, number>;
}

/** The room is coldest at 5 h and hottest at 15 h; the box follows. */
const coldestHours = { from: 5.5, to: 6.5 } as const;
const hottestHours = { from: 15.5, to: 16.5 } as const;
