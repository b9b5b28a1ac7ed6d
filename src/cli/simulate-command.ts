// warmstead simulate FILE: raw temperatures and watts of a box, settled or over a day, also at fixed watts.
// Leaves out: any verdict, and the spread of what is not known (plan gives both).
import { withShopValues } from '../husbandry/overlay.ts';
import type { Enclosure, RoomDay } from '../physics/enclosure.ts';
import { buildModel, simulateDay, solveSteady } from '../physics/simulate.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { displayFor, type Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import type { Season } from './messages/en.ts';
import { optionRanges } from './option-ranges.ts';
import { numberOf, OptionReader, type RawOptions, unitSystems } from './options.ts';
import {
  factsOfProgram,
  fileLabel,
  type RunContext,
  readEnclosure,
  refuse,
  writeJson,
  writeLines,
} from './run-context.ts';
import { shopValuesOf } from './shop-values.ts';
import { dayCsv, steadyCsv } from './simulate-tables.ts';
import { dayLines, steadyLines } from './simulate-text.ts';

const seasons: readonly Season[] = ['winter', 'summer'];
/** The same limits as a room in an enclosure file. */

interface Asked {
  readonly steady: boolean;
  readonly night: boolean;
  readonly roomC: number | null;
  readonly rhPct: number | null;
  readonly sunWPerM2: number | null;
  readonly season: Season;
  readonly lowC: number | null;
  readonly highC: number | null;
  readonly watts: string | null;
}

export async function simulateCommand(
  file: string,
  raw: RawOptions,
  language: Language,
  run: RunContext,
): Promise<number> {
  const { terminal, messages } = run;
  const options = new OptionReader(raw, messages);
  const [asJson, asCsv] = [options.flag('json'), options.flag('csv')];
  const units = options.word('units', unitSystems, 'metric');
  const asked = askedFor(options, run);
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, asJson, run);

  const label = fileLabel(file, messages);
  const valuesFile = options.text('shopValues');
  const values = await shopValuesOf(valuesFile, run);
  if (!values.ok) return refuse(values.faults, valuesFile ?? '', asJson, run);
  const { facts } = withShopValues(factsOfProgram(), values.value);
  const read = await readEnclosure(file, facts, run);
  if (!read.ok) return refuse(read.faults, label, asJson, run);
  const driven = withFixedWatts(read.value, asked.watts, run);
  if (!driven.ok) return refuse(driven.faults, messages.check.commandLine, asJson, run);
  const enclosure = driven.value;
  const model = buildModel(enclosure, facts.materials);
  const show = displayFor(units, language);
  if (asked.steady) {
    const roomRhPct = asked.rhPct ?? enclosure.room.winter.rhPct;
    const room = { roomC: asked.roomC ?? 20, roomRhPct, sunWPerM2: asked.sunWPerM2 ?? 0, isDay: !asked.night };
    const answer = solveSteady(model, room);
    if (asJson) writeJson(terminal, { ok: true, conditions: room, enclosure, answer });
    else
      writeLines(terminal, asCsv ? steadyCsv(answer, enclosure) : steadyLines(answer, roomRhPct, enclosure, show, run));
    return exitCodes.holds;
  }
  const answer = simulateDay(model, roomDayOf(asked, enclosure));
  if (asJson) writeJson(terminal, { ok: true, enclosure, answer });
  else writeLines(terminal, asCsv ? dayCsv(answer) : dayLines(answer, enclosure, show, run));
  return exitCodes.holds;
}

function askedFor(options: OptionReader, run: RunContext): Asked {
  const units = options.text('units') === 'us' ? 'us' : 'metric';
  options.apart(['json', 'csv']);
  options.apart(['steady', 'day', 'low']);
  options.apart(['steady', 'day', 'high']);
  options.together('low', 'high');
  options.together('high', 'low');
  options.together('steady', 'room');
  options.together('room', 'steady');
  options.together('night', 'steady');
  const asked: Asked = {
    steady: options.flag('steady'),
    night: options.flag('night'),
    roomC: options.tempC('room', units),
    rhPct: options.ranged('rh'),
    sunWPerM2: options.ranged('sun'),
    season: options.word('day', seasons, 'winter'),
    lowC: options.tempC('low', units),
    highC: options.tempC('high', units),
    watts: options.text('watts'),
  };
  if (asked.lowC !== null && asked.highC !== null && asked.lowC > asked.highC) {
    options.fault('CLI_ORDER', 'low', options.text('low') ?? '', '--low <= --high', run.messages.faults.order);
  }
  return asked;
}

function roomDayOf(asked: Asked, enclosure: Enclosure): RoomDay {
  const ofFile = enclosure.room[asked.season];
  const rhPct = asked.rhPct ?? ofFile.rhPct;
  if (asked.lowC === null || asked.highC === null) {
    return { ...ofFile, rhPct, sunPeakWPerM2: asked.sunWPerM2 ?? ofFile.sunPeakWPerM2 };
  }
  return { lowC: asked.lowC, highC: asked.highC, rhPct, sunPeakWPerM2: asked.sunWPerM2 ?? 0 };
}

/** The heaters at fixed watts, day and night, without a thermostat. */
function withFixedWatts(enclosure: Enclosure, text: string | null, run: RunContext): Result<Enclosure> {
  if (text === null) return good(enclosure);
  const watts = text.split(',').map(numberOf);
  const inLimits = watts.every((value) => value >= optionRanges.watts.low && value <= optionRanges.watts.high);
  if (watts.length !== enclosure.heaters.length || !inLimits) {
    const words = run.messages.faults.wattsCount(enclosure.heaters.length);
    const allowed = `${enclosure.heaters.length} x ${optionRanges.watts.low} to ${optionRanges.watts.high} W`;
    return bad([{ code: 'CLI_WATTS', field: '--watts', got: text.slice(0, 60), allowed, ...words }]);
  }
  const heaters = enclosure.heaters.map((heater, i) => ({
    ...heater,
    powerW: watts[i] ?? 0,
    thermostatId: null,
    period: 'all' as const,
  }));
  return good({ ...enclosure, heaters });
}
