// When does the room first get colder, or hotter, than it was while the home was proven?
// The room's year is a smooth course between its winter and its summer; weather runs ahead of it by a stated time.
// Leaves out the temperature outside: how a house passes it on is not known.
import { addDays, dateOfDay, dayNumber, type IsoDate } from '../../animal/calendar.ts';
import { numberOf } from '../../animal/care-facts.ts';
import type { FactTable } from '../../husbandry/fact.ts';
import type { RoomDay } from '../../physics/enclosure.ts';

export interface SeasonRoom {
  readonly winter: RoomDay;
  readonly summer: RoomDay;
}

export interface SeasonTurn {
  /** From when weather may bring it, until the smooth course does. */
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly roomC: number;
}

const yearDays = 365.25;

/** 1 in the middle of the coldest time, 0 in the middle of the warmest.
 *  @param coldestDay day of the year on which the coldest time has its middle [d] */
export function winterShare(on: IsoDate, coldestDay: number): number {
  const yearStart = dayNumber(`${on.slice(0, 4)}-01-01`);
  return (1 + Math.cos((2 * Math.PI * (dayNumber(on) - yearStart - coldestDay)) / yearDays)) / 2;
}

/** First night colder than the coldest one read. Null when the room's winter brings none: all was read already.
 *  @param readC lowest temperature of the room while it was read [degC]
 *  Source: OUR-CHOICE (course of the year, data/aftercare.json). */
export function firstColdNight(
  room: SeasonRoom,
  readC: number,
  after: IsoDate,
  facts: FactTable,
  southern: boolean,
): SeasonTurn | null {
  const [cold, warm] = [room.winter.lowC, room.summer.lowC];
  if (readC <= cold) return null;
  return turn({ cold, warm, readC, sign: -1 }, after, facts, southern);
}

/** First day hotter than the hottest one read. @param readC highest temperature of the room while it was read [degC] */
export function firstHotDay(
  room: SeasonRoom,
  readC: number,
  after: IsoDate,
  facts: FactTable,
  southern: boolean,
): SeasonTurn | null {
  const [cold, warm] = [room.winter.highC, room.summer.highC];
  if (readC >= warm) return null;
  return turn({ cold, warm, readC, sign: 1 }, after, facts, southern);
}

interface Line {
  readonly cold: number;
  readonly warm: number;
  readonly readC: number;
  /** -1 looks for colder than readC, 1 for hotter. */
  readonly sign: 1 | -1;
}

function turn(line: Line, after: IsoDate, facts: FactTable, southern: boolean): SeasonTurn | null {
  const { cold, warm, readC, sign } = line;
  const coldest = numberOf(facts, 'coldestAfterYearStartDays') + (southern ? yearDays / 2 : 0);
  const share = (readC - warm) / (cold - warm);
  // A room that is as warm in winter as in summer has no course to find a day on.
  if (!Number.isFinite(share)) return null;
  for (let days = 0; days <= 366; days++) {
    const on = dateOfDay(dayNumber(after) + days);
    const roomC = warm + winterShare(on, coldest) * (cold - warm);
    if (sign * (roomC - readC) <= 0) continue;
    const early = addDays(on, -numberOf(facts, 'weatherSpreadDays'));
    return { from: early < after ? after : early, to: on, roomC: readC };
  }
  return null;
}
