// From a log to the numbers a fit explains: settled windows of every channel that measures something inside the box.
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { roomAt } from '../../physics/room-day.ts';
import type { ReadingLog } from '../reading-log.ts';
import { hourOfDay, usualIntervalS } from '../reading-log.ts';
import type { Observation } from './fit.ts';
import { settledWindows, windowS } from './settled-windows.ts';

export interface ObservationChoice {
  readonly enclosure: Enclosure;
  readonly lagH: number;
  /** The room of these days when nobody read it: the enclosure's own day that fits the season. */
  readonly assumedRoom: RoomDay;
}

/** Observations in order of time; the instrument group of a reading is the index of its channel. */
export function observationsOf(log: ReadingLog, choice: ObservationChoice): Observation[] {
  const { day } = choice.enclosure;
  const sun = choice.assumedRoom.sunPeakWPerM2 > 0;
  const sunH = sun ? { from: choice.assumedRoom.sunFromH ?? 10, to: choice.assumedRoom.sunToH ?? 16 } : null;
  const windows = settledWindows(log, { day, lagH: choice.lagH, sunH });
  const single = log.kind === 'hand' || usualIntervalS(log.timesS) > windowS / 3;
  const stretch = (atS: number, isDay: boolean) => `${Math.floor((atS - day.startH * 3600) / 86400)}${isDay}`;
  const counts = new Map<string, number>();
  for (const w of windows) {
    const key = stretch((w.fromS + w.toS) / 2, w.isDay);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return windows.flatMap((w) => {
    const atS = (w.fromS + w.toS) / 2;
    const alike = counts.get(stretch(atS, w.isDay)) ?? 1;
    const roomC = w.roomC ?? assumedRoomC(choice, hourOfDay(atS));
    return w.values.flatMap((v): Observation[] => {
      const channel = log.channels[v.channel]!;
      if (channel.place === null || channel.place === 'room') return [];
      const { quantity, place } = channel;
      return [{ quantity, place, isDay: w.isDay, value: v.value, roomC, instrument: v.channel, single, alike, atS }];
    });
  });
}

/** The assumed room as the box feels it, later by its lag. */
const assumedRoomC = (choice: ObservationChoice, hour: number): number =>
  roomAt(choice.assumedRoom, hour - Math.min(choice.lagH, 3));
