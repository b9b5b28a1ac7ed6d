// The door of calibration: an enclosure, a log and its instruments in; the fitted box, what was learned, forecasts out.
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import type { Priors } from '../../physics/priors.ts';
import { bestParameters, boxGeometry, modelFrom, settleBox } from '../../physics/simulate.ts';
import { type Instrument, powerErrorShare, sdOfError, trustIn } from '../instrument.ts';
import { channelAt, type ReadingLog } from '../reading-log.ts';
import { boxLagH } from './box-lag.ts';
import { roomNodes } from './box-response.ts';
import { type Fit, fitBox } from './fit.ts';
import { observationsOf } from './observations.ts';
import { unknownsOf } from './unknowns.ts';

export interface CalibrationInput {
  readonly enclosure: Enclosure;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  /** Readings as taken; instruments are corrected here. */
  readonly log: ReadingLog;
  readonly instruments: readonly Instrument[];
}

export interface Calibrated {
  readonly fit: Fit;
  readonly lagH: number;
  readonly roomFrom: 'read' | 'assumed';
}

/** Error of a room that nobody read, one standard deviation [K]; our choice. */
const unreadRoomSdK = 2;

/** Readings of each channel with its instrument's correction added. */
export function correctedLog(log: ReadingLog, instruments: readonly Instrument[]): ReadingLog {
  const at = log.timesS.at(-1) ?? 0;
  return {
    ...log,
    channels: log.channels.map((c) => {
      const { correction } = trustIn(instrumentOf(c.instrumentId, instruments), c.quantity, at);
      return correction === 0 ? c : { ...c, values: c.values.map((v) => (v === null ? null : v + correction)) };
    }),
  };
}

export const instrumentOf = (id: string | null, all: readonly Instrument[]): Instrument | null =>
  all.find((i) => i.id === id) ?? null;

/** Fit a box to a log; null when no settled reading of any place is in it. */
export function calibrate(input: CalibrationInput): Calibrated | null {
  const { enclosure, materials, priors, instruments } = input;
  const log = correctedLog(input.log, instruments);
  const geometry = boxGeometry(enclosure, materials);
  const roomFrom = channelAt(log, 'room', 'tempC') ? 'read' : 'assumed';
  const assumedRoom = assumedRoomOf(enclosure, log);
  const model = modelFrom(geometry, bestParameters);
  const start = { roomC: assumedRoom.lowC, roomRhPct: assumedRoom.rhPct, sunWPerM2: 0, isDay: true };
  const lagH = boxLagH(model, settleBox(model, start), assumedRoom.lowC);
  const observations = observationsOf(log, { enclosure, lagH, assumedRoom });
  if (observations.length === 0) return null;
  const at = log.timesS.at(-1)!;
  const instrumentSd = log.channels.map((c) => {
    if (c.quantity === 'powerW') return powerErrorShare * Math.max(1, mean(c.values));
    return sdOfError(trustIn(instrumentOf(c.instrumentId, instruments), c.quantity, at).error);
  });
  const room = channelAt(log, 'room', 'tempC');
  const roomSdK = room ? instrumentSd[log.channels.indexOf(room)]! : unreadRoomSdK;
  const rooms = (isDay: boolean) => roomNodes(observations.filter((o) => o.isDay === isDay).map((o) => o.roomC));
  const roomRh = channelAt(log, 'room', 'rhPct');
  const plan = {
    geometry,
    unknowns: unknownsOf(
      enclosure,
      priors,
      log.channels.some((c) => c.quantity === 'rhPct' && c.place !== 'room'),
    ),
    roomRhPct: roomRh ? mean(roomRh.values) : assumedRoom.rhPct,
    dayRoomsC: rooms(true),
    nightRoomsC: rooms(false),
  };
  return { fit: fitBox({ plan, observations, instrumentSd, roomSdK }), lagH, roomFrom };
}

/** Winter or summer, whichever day of the enclosure's year is nearer to the readings' own season: by the room when it
 *  was read, else by the calendar (May to September is summer north of the equator; our choice). */
function assumedRoomOf(enclosure: Enclosure, log: ReadingLog): RoomDay {
  const { winter, summer } = enclosure.room;
  const room = channelAt(log, 'room', 'tempC');
  if (room) {
    const here = mean(room.values);
    const middle = (d: RoomDay) => (d.lowC + d.highC) / 2;
    return Math.abs(middle(winter) - here) <= Math.abs(middle(summer) - here) ? winter : summer;
  }
  const dayOfYear = ((log.timesS[0] ?? 0) / 86400) % 365.25;
  return dayOfYear > 120 && dayOfYear < 273 ? summer : winter;
}

function mean(values: readonly (number | null)[]): number {
  const there = values.filter((v): v is number => v !== null);
  return there.reduce((s, v) => s + v, 0) / Math.max(1, there.length);
}
