// How much water does a floor that lies wet all over dry in a day of winter and of summer? More than that cannot be sprayed
// for long: the rest stays. Leaves out which part of a floor dries first, for what lies there spreads from wet to dry.
import type { DayPeriod, Enclosure, RoomDay } from '../physics/enclosure.ts';
import { isDayAt, roomAt, sunAt } from '../physics/room-day.ts';
import { type BoxModel, type SettledBox, type SteadyConditions, settleBox } from '../physics/simulate.ts';
import { roomRatioOf } from '../physics/steady.ts';

export interface DriesGPerDay {
  readonly winter: number;
  readonly summer: number;
}

/** What the keeper's dial does by day and by night, beside the set points. */
export interface HeldBy {
  readonly day: Pick<SteadyConditions, 'holdBaskingC'>;
  readonly night: Pick<SteadyConditions, 'setC'>;
}

/** Water sprayed in a day [g]; 0 where nobody sprays. */
export const sprayedGPerDay = ({ misting }: Enclosure): number => misting?.waterGPerDay ?? 0;

/** What a floor wet all over dries, at rest in the mean room of the day period and of the night [g/day].
 *  Against 24 hours run with a floor that stays wet: docs/theory/box-moisture.md. */
export function driesGPerDay(model: BoxModel, held: HeldBy, warm?: SettledBox): DriesGPerDay {
  const { room } = model.enclosure;
  const winter = dayDries(model, room.winter, held, warm);
  return { winter, summer: dayDries(model, room.summer, held, warm) };
}

function dayDries(model: BoxModel, room: RoomDay, held: HeldBy, warm?: SettledBox): number {
  let last = warm;
  let grams = 0;
  for (const isDay of [true, false]) {
    const { hours, conditions } = meanOf(model.enclosure.day, room, isDay);
    if (hours === 0) continue;
    const own = isDay ? held.day : held.night;
    last = settleBox(model, { ...conditions, ...own, floorWet: true }, last);
    grams += last.moisture.sprayKgPerS * 3.6e6 * hours;
  }
  // a floor may take up water from a bowl; then it dries none
  return Math.max(0, grams);
}

const looksPerH = 2;

/** Mean room of the hours of day, or of night; the water in its air is that of the whole day, as in a run. */
function meanOf(period: DayPeriod, room: RoomDay, isDay: boolean): { hours: number; conditions: SteadyConditions } {
  const looks = Array.from({ length: 24 * looksPerH }, (_, i) => (i + 0.5) / looksPerH).filter(
    (hour) => isDayAt(period, hour) === isDay,
  );
  const mean = (of: (hour: number) => number) => looks.reduce((sum, hour) => sum + of(hour), 0) / looks.length;
  const roomC = mean((hour) => roomAt(room, hour));
  const ratio = roomRatioOf((room.lowC + room.highC) / 2, room.rhPct);
  return {
    hours: looks.length / looksPerH,
    conditions: {
      roomC,
      roomRhPct: (100 * ratio) / roomRatioOf(roomC, 100),
      sunWPerM2: mean((hour) => sunAt(room, hour)),
      isDay,
    },
  };
}
