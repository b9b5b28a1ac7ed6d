// The moments nobody has read yet: the coldest night and the hottest day of the year, as the box will feel them.
// A room's extreme lasts an hour or two, the box lags behind it: the delayed room is taken, not its bare extreme.
import type { DayPeriod, Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { isDayAt, roomAt, sunAt } from '../../physics/room-day.ts';

export type MomentId = 'coldest-night' | 'coldest-day' | 'hottest-day' | 'hottest-night';

export interface ForecastMoment {
  readonly id: MomentId;
  readonly isDay: boolean;
  /** What the box feels of the room [degC]. */
  readonly roomC: number;
  readonly roomRhPct: number;
  readonly sunWPerM2: number;
}

/** Hours after the day period begins at which the box counts as warmed up; our choice. */
const warmUpH = 2;

/** The four moments that decide, from the room's year. @param lagH the box's lag [h] */
export function forecastMoments(enclosure: Enclosure, lagH: number): ForecastMoment[] {
  const { winter, summer } = enclosure.room;
  const of = (id: MomentId, room: RoomDay, isDay: boolean, sign: 1 | -1): ForecastMoment => {
    const hour = extremeHour(enclosure.day, room, isDay, sign, lagH);
    return {
      id,
      isDay,
      roomC: feltRoomC(room, hour, lagH),
      roomRhPct: room.rhPct,
      sunWPerM2: isDay ? sunAt(room, hour) : 0,
    };
  };
  return [
    of('coldest-night', winter, false, -1),
    of('coldest-day', winter, true, -1),
    of('hottest-day', summer, true, 1),
    of('hottest-night', summer, false, 1),
  ];
}

/** Room of a repeating day delayed by a first-order lag [degC], summed over the last hours in quarter hours. */
export function feltRoomC(room: RoomDay, hour: number, lagH: number): number {
  const step = 0.25;
  let sum = 0;
  let weight = 0;
  for (let back = step / 2; back < 6 * lagH + step; back += step) {
    const w = Math.exp(-back / Math.max(0.05, lagH));
    sum += w * roomAt(room, hour - back);
    weight += w;
  }
  return sum / weight;
}

function extremeHour(day: DayPeriod, room: RoomDay, isDay: boolean, sign: 1 | -1, lagH: number): number {
  let best = isDay ? 12 : 3;
  let most = Number.NEGATIVE_INFINITY;
  for (let h = 0; h < 24; h += 0.5) {
    if (isDayAt(day, h) !== isDay || isDayAt(day, h - warmUpH) !== isDay) continue;
    const warmth = sign * (feltRoomC(room, h, lagH) + (sign > 0 && isDay ? sunAt(room, h) / 20 : 0));
    if (warmth > most + 1e-9) {
      most = warmth;
      best = h;
    }
  }
  return best;
}
