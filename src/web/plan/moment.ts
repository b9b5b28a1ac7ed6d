// The moment the drawing shows: a season, and in it the settled night, the settled midday, or an hour of the day.
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { isDayAt } from '../pictures/readings.ts';
import type { Conditions } from '../worker/protocol.ts';

export type Season = 'winter' | 'summer';
/** night: coldest of the day, night set points; noon: warmest, day set points; a number: hours since midnight. */
export type At = 'night' | 'noon' | number;

export interface Moment {
  readonly season: Season;
  readonly at: At;
}

/** Winter is looked at on its coldest night, summer at its hottest midday. */
export const firstMoment: Moment = { season: 'winter', at: 'night' };
export const usualAt: Readonly<Record<Season, At>> = { winter: 'night', summer: 'noon' };

export function roomDayOf(enclosure: Enclosure, season: Season): RoomDay {
  return enclosure.room[season];
}

/** Whether the settled state of this moment is that of the day. */
export function momentIsDay(moment: Moment, enclosure: Enclosure): boolean {
  return typeof moment.at === 'number' ? isDayAt(moment.at, enclosure.day) : moment.at === 'noon';
}

/** The room for the settled state of a moment; an hour takes the nearer of night and midday. */
export function conditionsAt(moment: Moment, enclosure: Enclosure): Conditions {
  const room = roomDayOf(enclosure, moment.season);
  const isDay = momentIsDay(moment, enclosure);
  return {
    roomC: isDay ? room.highC : room.lowC,
    roomRhPct: room.rhPct,
    sunWPerM2: isDay ? room.sunPeakWPerM2 : 0,
    isDay,
  };
}
