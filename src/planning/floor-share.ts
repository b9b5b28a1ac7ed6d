// How much of the floor suits this animal, row by row of a simulated day.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import { kelvinOutside, wantedFloorAt } from '../husbandry/wanted-floor.ts';
import type { DayAnswer } from '../physics/answer.ts';
import type { DayPeriod } from '../physics/enclosure.ts';
import { isDayAt } from '../physics/room-day.ts';

/** Share of the floor's length within the wanted band in each row of the day, 0..1.
 *  @param lengthM inside length of the box [m] */
export function floorShareWanted(day: DayAnswer, lengthM: number, period: DayPeriod, climate: ClimateNeeds): number[] {
  const edges = [0, ...day.columnXM.slice(1).map((x, i) => (x + day.columnXM[i]!) / 2), lengthM];
  return day.hours.map((hour, row) => {
    const isDay = isDayAt(period, hour - 1e-6);
    let suits = 0;
    day.columnXM.forEach((x, i) => {
      const fromWarm = (day.warmEnd === 'left' ? x : lengthM - x) / lengthM;
      if (kelvinOutside(day.floorC[row]![i]!, wantedFloorAt(fromWarm, isDay, climate)) === 0)
        suits += edges[i + 1]! - edges[i]!;
    });
    return suits / lengthM;
  });
}
