// One day of the room: temperature between its low and high, or hour by hour; sun on the front between two hours.
import type { DayPeriod, RoomDay } from './enclosure.ts';

/** Hour of the lowest and the highest room temperature; our choice. */
const lowHour = 5;
const highHour = 15;

/** Room temperature at an hour of the day [degC]: half a cosine up from 5 to 15 h, half a cosine down to 5 h. */
export function roomAt(day: RoomDay, hour: number): number {
  const h = ((hour % 24) + 24) % 24;
  if (day.hourlyC && day.hourlyC.length === 24) {
    const i = Math.floor(h);
    const f = h - i;
    return day.hourlyC[i]! * (1 - f) + day.hourlyC[(i + 1) % 24]! * f;
  }
  const rising = h >= lowHour && h < highHour;
  const part = rising ? (h - lowHour) / (highHour - lowHour) : ((h - highHour + 24) % 24) / (24 - (highHour - lowHour));
  const cos = (1 - Math.cos(Math.PI * part)) / 2;
  return rising ? day.lowC + (day.highC - day.lowC) * cos : day.highC - (day.highC - day.lowC) * cos;
}

/** Sun on the outside of the front [W/m2], a half sine between its two hours. */
export function sunAt(day: RoomDay, hour: number): number {
  if (day.sunPeakWPerM2 <= 0) return 0;
  const from = day.sunFromH ?? 10;
  const to = day.sunToH ?? 16;
  const h = ((hour % 24) + 24) % 24;
  return h <= from || h >= to ? 0 : day.sunPeakWPerM2 * Math.sin((Math.PI * (h - from)) / (to - from));
}

export const isDayAt = (period: DayPeriod, hour: number): boolean => {
  const h = ((hour % 24) + 24) % 24;
  return period.startH <= period.endH ? h >= period.startH && h < period.endH : h >= period.startH || h < period.endH;
};
