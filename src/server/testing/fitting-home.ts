// A home that fits its animal, and the logger file of three nights read in it without fault: made by the simulation of that
// very home, so that a proof through the program's own doors can be told from one that should not hold.
import type { Enclosure } from '../../physics/enclosure.ts';
import { bestParameters, boxGeometry, modelFrom, solveSteady } from '../../physics/simulate.ts';
import { wallText } from '../../proving/files/stamp.ts';
import type { LogPlace } from '../../proving/reading-log.ts';
import { madeLog } from '../../proving/testing/made-log.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { exampleDocument } from './example-document.ts';

const day = (lowC: number, highC: number) => ({ lowC, highC, rhPct: 55, sunPeakWPerM2: 0 });

/** @param part  what is to differ from it */
export function fittingHome(part: object = {}): Enclosure {
  const { enclosure } = exampleDocument() as unknown as { enclosure: Enclosure };
  return {
    ...enclosure,
    thermostats: enclosure.thermostats.map((one) => ({ ...one, setDayC: 27, setNightC: 22 })),
    room: { winter: day(16, 18.5), summer: day(17, 20) },
    animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 1.15, massG: 560 },
    ...part,
  };
}

/** @param firstS  time of its first row [s since 1970, on the wall's clock]; @returns the file's text, CSV */
export function logFileOf(box: Enclosure, firstS: number): string {
  const model = modelFrom(boxGeometry(box, allFacts().facts.materials), bestParameters);
  const settled = (roomC: number, isDay: boolean) =>
    solveSteady(model, { roomC, roomRhPct: 55, sunWPerM2: 0, isDay }).places as Readonly<Record<string, number>>;
  const [byDay, byNight] = [settled(18, true), settled(17, false)];
  const at = (place: LogPlace) => ({ place, dayC: byDay[place]!, nightC: byNight[place]! });
  const room = { place: 'room', dayC: 18, nightC: 17 } as const;
  const log = madeLog([room, at('basking-surface'), at('warm-hide'), at('cool-air')]);
  const shiftS = firstS - log.timesS[0]!;
  const rows = log.timesS.map((t, i) => [wallText(t + shiftS), ...log.channels.map((c) => c.values[i])].join(','));
  return ['time,Room °C,Basking °C,Warm hide °C,Cool end °C', ...rows].join('\n');
}
