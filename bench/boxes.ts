// The boxes that are timed: the examples of data/, with the thermostat that the question wants.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Enclosure } from '../src/physics/enclosure.ts';
import type { SteadyConditions } from '../src/physics/simulate.ts';
import { loadFacts } from '../src/records/facts.ts';

const data = join(process.cwd(), 'data');
export const { materials } = loadFacts(data).facts;

export const exampleBox = (name: string): Enclosure =>
  JSON.parse(readFileSync(join(data, 'examples', `${name}.json`), 'utf8')) as Enclosure;

/** The same box under on/off thermostats of 1 K differential. */
export const switched = (e: Enclosure): Enclosure => ({
  ...e,
  thermostats: e.thermostats.map((t) => ({ ...t, control: 'on-off', bandK: 1 })),
});

export const winterDay = (e: Enclosure): SteadyConditions => ({
  roomC: e.room.winter.lowC,
  roomRhPct: e.room.winter.rhPct,
  sunWPerM2: 0,
  isDay: true,
});

/** A year of a room by the hour [degC]: its own lows and highs of winter and summer, a day's swing, and some weather. */
export function roomYear(e: Enclosure): Float64Array {
  const middle = (s: 'winter' | 'summer') => (e.room[s].lowC + e.room[s].highC) / 2;
  const swing = (s: 'winter' | 'summer') => (e.room[s].highC - e.room[s].lowC) / 2;
  return Float64Array.from({ length: 8760 }, (_, h) => {
    const summer = (1 - Math.cos((2 * Math.PI * (h / 24 - 15)) / 365)) / 2;
    const mean = middle('winter') + summer * (middle('summer') - middle('winter'));
    const wave = swing('winter') + summer * (swing('summer') - swing('winter'));
    return mean - wave * Math.cos((2 * Math.PI * (h - 3)) / 24) + 0.8 * Math.sin(h / 37);
  });
}
