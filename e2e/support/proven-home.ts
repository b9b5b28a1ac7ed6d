// A home whose readings prove it: the logger file is made by the simulation of that very home, sent and judged through the
// program's own doors.
import type { Enclosure } from '../../src/physics/enclosure.ts';
import { bestParameters, boxGeometry, modelFrom, solveSteady } from '../../src/physics/simulate.ts';
import { wallText } from '../../src/proving/files/stamp.ts';
import type { LogPlace } from '../../src/proving/reading-log.ts';
import { madeLog } from '../../src/proving/testing/made-log.ts';
import { allFacts } from '../../src/records/animal-facts.ts';
import { exampleDocument } from '../../src/server/testing/example-document.ts';
import { answeredDocument } from '../../src/server/testing/fit-animal.ts';

const day = (lowC: number, highC: number) => ({ lowC, highC, rhPct: 55, sunPeakWPerM2: 0 });

function home(part: object): Enclosure {
  const { enclosure } = exampleDocument() as unknown as { enclosure: Enclosure };
  return {
    ...enclosure,
    thermostats: enclosure.thermostats.map((one) => ({ ...one, setDayC: 27, setNightC: 22 })),
    room: { winter: day(16, 18.5), summer: day(17, 20) },
    animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 1.15, massG: 560 },
    ...part,
  };
}

/** Three nights up to this morning. */
function logText(enclosure: Enclosure): string {
  const model = modelFrom(boxGeometry(enclosure, allFacts().facts.materials), bestParameters);
  const settled = (roomC: number, isDay: boolean) =>
    solveSteady(model, { roomC, roomRhPct: 55, sunWPerM2: 0, isDay }).places as Readonly<Record<string, number>>;
  const [byDay, byNight] = [settled(18, true), settled(17, false)];
  const at = (place: LogPlace) => ({ place, dayC: byDay[place]!, nightC: byNight[place]! });
  const log = madeLog([
    { place: 'room', dayC: 18, nightC: 17 },
    at('basking-surface'),
    at('warm-hide'),
    at('cool-air'),
  ]);
  const shiftS = Math.floor(Date.now() / 86_400_000) * 86_400 - 4 * 86_400 + 43_200 - log.timesS[0]!;
  const rows = log.timesS.map((t, i) => [wallText(t + shiftS), ...log.channels.map((c) => c.values[i])].join(','));
  return ['time,Room °C,Basking °C,Warm hide °C,Cool end °C', ...rows].join('\n');
}

/** @returns id of the enquiry; throws when the home is not proven */
export async function provenHome(
  url: string,
  label: string,
  { proven, enclosure = {} }: { readonly proven: boolean; readonly enclosure?: object },
): Promise<string> {
  const send = async (path: string, body: string, type = 'application/json') => {
    const answer = await fetch(`${url}${path}`, { method: 'POST', headers: { 'content-type': type }, body });
    const json = (await answer.json()) as { id?: string; answer?: { verdict: string; reason: string } };
    if (!answer.ok) throw new Error(`${path}: ${JSON.stringify(json)}`);
    return json;
  };
  const box = home(enclosure);
  const { id = '' } = await send('/api/enquiries', JSON.stringify({ document: answeredDocument(label, box) }));
  if (!proven) return id;
  await send(`/api/enquiries/${id}/reading-files?name=log.csv`, logText(box), 'application/octet-stream');
  const { answer } = await send(`/api/enquiries/${id}/proof`, '{}');
  if (answer?.verdict !== 'proven') throw new Error(`the home of ${label} is not proven: ${answer?.reason}`);
  return id;
}
