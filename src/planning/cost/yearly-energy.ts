// Power used in a year: the room of each hour, the power that holds the dial in it, three kinds of day.
// The year is taken to swing as a cosine between the coldest and the hottest day: a quarter of it like the one, a quarter
// like the other, half like the middle (exact for a cosine). Leaves out: sun, doors left open, the animal's own warmth.
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { isDayAt, roomAt } from '../../physics/room-day.ts';
import { type Behaviour, kitPowers } from '../search/judge-kit.ts';
import { heldPowerW, type MemberSurface, type WattLine } from '../search/surface.ts';

export interface YearlyEnergy {
  readonly kWhDay: number;
  readonly kWhNight: number;
  readonly kWh: number;
  /** Mean share of its power over the hours in which each heater may work. */
  readonly dayDutyFrac: number;
  readonly nightDutyFrac: number;
}

/** @param surface one version of the box   @param b the kit   @param enclosure its room and day */
export function yearlyEnergy(surface: MemberSurface, b: Behaviour, enclosure: Enclosure): YearlyEnergy {
  const { dialC, nightSetC } = kitPowers(surface, b);
  const ratedW = b.powerW * surface.heaterPower;
  const nightRatedW = b.nightPowerW * surface.heaterPower;
  const { winter, summer } = enclosure.room;
  let dayWh = 0;
  let nightWh = 0;
  let dayHours = 0;
  for (let hour = 0.5; hour < 24; hour += 1) {
    const isDay = isDayAt(enclosure.day, hour);
    if (isDay) dayHours++;
    for (const [share, roomC] of yearRooms(winter, summer, hour)) {
      if (isDay) dayWh += share * heldPowerW(inRoom(surface.day, roomC), dialC, b.bandK, ratedW);
      else nightWh += share * heldPowerW(inRoom(surface.night, roomC), nightSetC, b.nightBandK, nightRatedW);
    }
  }
  return {
    kWhDay: (365 * dayWh) / 1000,
    kWhNight: (365 * nightWh) / 1000,
    kWh: (365 * (dayWh + nightWh)) / 1000,
    dayDutyFrac: ratedW > 0 && dayHours > 0 ? dayWh / dayHours / ratedW : 0,
    nightDutyFrac: nightRatedW > 0 && dayHours < 24 ? nightWh / (24 - dayHours) / nightRatedW : 0,
  };
}

/** Share of the year and room temperature at this hour: like the coldest, the middle and the hottest day. */
function yearRooms(winter: RoomDay, summer: RoomDay, hour: number): readonly (readonly [number, number])[] {
  const cold = roomAt(winter, hour);
  const hot = roomAt(summer, hour);
  return [
    [0.25, cold],
    [0.5, (cold + hot) / 2],
    [0.25, hot],
  ];
}

/** The line in another room: at the same watts everything stands as much higher as the room does. */
function inRoom(line: WattLine, roomC: number): WattLine {
  const raise = (values: readonly number[]) => values.map((v) => v + roomC - line.roomC);
  return { ...line, roomC, low: raise(line.low), high: raise(line.high) };
}
