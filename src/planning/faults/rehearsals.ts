// How each fault of the catalogue is played on a plan: what changes in the home, in its room or in its running, when it
// begins and how long it is watched. Sizes of the changes are our choice and are said with the result.
// Leaves out: faults that no simulation can show (data/faults.json says "log" or "ask").
import { coded, type Saying } from '../../husbandry/coded.ts';
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { mainHeater } from '../../physics/grid.ts';
import type { BoxModel } from '../../physics/model.ts';
import { readingValue } from '../../physics/reading.ts';
import type { RunOptions } from '../../physics/run.ts';
import {
  airtight,
  bowlAtWarmEnd,
  doorAjar,
  mainThermostatOf,
  probeAtCoolEnd,
  withHeaters,
  withThermostats,
} from './alterations.ts';
import type { HarmKind } from './harm-lines.ts';

export interface Rehearsal {
  /** Id of the catalogue (data/faults.json). */
  readonly id: string;
  /** Which line to watch first; the others are watched too. */
  readonly feared: readonly HarmKind[];
  readonly season: 'winter' | 'summer';
  readonly startH: number;
  readonly hours: number;
  /** What exactly is changed, with its size. */
  readonly played: Saying;
  /** Null: this home cannot have this fault; the words say why. */
  readonly altered?: (e: Enclosure, aims: FaultAims) => Enclosure | Saying;
  readonly room?: (day: RoomDay) => RoomDay;
  readonly options?: (model: BoxModel, aims: FaultAims) => Partial<RunOptions>;
  /** Guards worth playing too. */
  readonly guards: readonly GuardKind[];
  readonly fineSteps?: boolean;
  /** The animal may burrow down to the heater: its own temperature counts as a surface in reach. */
  readonly buried?: boolean;
}

export type GuardKind = 'cut-out' | 'fewer-watts' | 'insulation';

/** What the rehearsals must know of the plan besides the home itself. */
export interface FaultAims {
  readonly wantedBaskingC: number;
  /** Share of its power that the main heater uses on the coldest day, best estimate. */
  readonly winterDutyFrac: number;
}

export const coldSnapK = 6;
export const heatWaveHighC = 35;
export const sunOnGlassWPerM2 = 400;
export const wetProbeReadsLowK = 4;
export const doorSlitM = 0.005;
export const dryRoomPct = 25;
export const buriedMatM = 0.08;
/** A box moved to a window: how much colder its night is, and the winter sun on its front; our choice. */
export const windowColderK = 4;
export const windowSunWPerM2 = 250;
const cutHours = 24;

/** What was played, by the id of the fault, and why some homes cannot have it. */
const say = coded('fault', {
  H1: 'The main heater at full power day and night, on the hottest day.',
  H2: 'The thermostat stays at full power from 9:00 on, on the hottest day.',
  H3: 'The main thermostat gives no power from 20:00 on, on the coldest night.',
  H4: 'The main heater burns out at 20:00 on the coldest night.',
  H5: 'The probe hangs outside and reads the room, on the coldest day.',
  H6: 'The probe sits on the same wall at the cool end, on the coldest day.',
  H7: (value: string) => `The probe is wet or shaded and reads ${value} K low.`,
  H8: 'The dial is set to the wanted basking temperature, day and night.',
  H10: 'The same heater switched on and off with a differential of 2 K.',
  H11: 'The power stays at what the coldest day needs, on the hottest day.',
  H13: 'Both heaters hang on the first thermostat.',
  H15: 'The clock of the heaters is six hours late: night set points until 14:00, in winter.',
  H16: (value: string) => `A cold snap: the room ${value} K colder than its coldest day, all day.`,
  H17: 'The hottest day of the room as entered, nothing else changed.',
  H18: (value: string) => `Sun of ${value} W/m² on the front from 10:00 to 16:00 on the hottest day.`,
  H19: (value: string) => `Three days with ${value} °C in the room by day, 9 K less at night.`,
  H20: (value: string) => `No power from 20:00 on for ${value} hours, on the coldest night.`,
  H21: (value: string) => `The mat lies under ${value} mm of substrate.`,
  W1: 'Nobody mists and nothing is kept damp.',
  W2: 'Vents shut, mesh covered, half of the floor wet.',
  W3: 'The bowl stands at the warm end.',
  W5: 'The coldest night as entered, with the usual water: dew on the front.',
  W6: (value: string) => `Room air of ${value} % relative humidity in winter.`,
  M6: 'The thermostat’s probe takes ten minutes to follow.',
  E2: (value: string) => `The front door stands open by ${value} mm, on the coldest night.`,
  E9: (colder: string, sun: string) =>
    `The box stands at a window: the coldest night and day ${colder} K colder, sun of ${sun} W/m² on the front from 10:00 to 14:00, dial as it was.`,
  noThermostat: 'No thermostat drives the main heater.',
  noHeater: 'There is no heater.',
  oneHeater: 'There is only one heater.',
  noMat: 'There is no heat mat.',
  noBowl: 'No bowl is drawn.',
});

const stuckAt =
  (duty: (aims: FaultAims) => number) =>
  (model: BoxModel, aims: FaultAims): Partial<RunOptions> => ({
    stuck: { thermostat: mainThermostatOf(model.enclosure), duty: duty(aims), fromH: 0 },
  });
const needsThermostat = (e: Enclosure): Enclosure | Saying => (mainThermostatOf(e) < 0 ? say.noThermostat : e);
const daily = { season: 'summer', startH: 9, hours: 24 } as const;
const nightly = { season: 'winter', startH: 20, hours: 24 } as const;

export const rehearsals: readonly Rehearsal[] = [
  {
    id: 'H1',
    ...daily,
    feared: ['burns', 'too-hot'],
    played: say.H1,
    altered: (e) =>
      e.heaters.length === 0
        ? say.noHeater
        : withHeaters(e, (_, i) => (i === mainHeater(e) ? { thermostatId: null } : {})),
    guards: ['fewer-watts'],
  },
  {
    id: 'H2',
    ...daily,
    feared: ['too-hot', 'burns'],
    played: say.H2,
    altered: needsThermostat,
    options: stuckAt(() => 1),
    guards: ['cut-out', 'fewer-watts'],
  },
  {
    id: 'H3',
    ...nightly,
    feared: ['too-cold'],
    played: say.H3,
    altered: needsThermostat,
    options: stuckAt(() => 0),
    guards: ['insulation'],
  },
  {
    id: 'H4',
    ...nightly,
    feared: ['too-cold'],
    played: say.H4,
    altered: (e) => (e.heaters.length === 0 ? say.noHeater : e),
    options: (model) => ({ dead: { heater: Math.max(0, mainHeater(model.enclosure)), fromH: 0 } }),
    guards: ['insulation'],
  },
  {
    id: 'H5',
    ...daily,
    season: 'winter',
    feared: ['burns', 'too-hot'],
    played: say.H5,
    altered: needsThermostat,
    options: (model) => ({
      probeOverride: (t, _, roomC) => (t === mainThermostatOf(model.enclosure) ? roomC : null),
    }),
    guards: ['cut-out', 'fewer-watts'],
  },
  {
    id: 'H6',
    ...daily,
    season: 'winter',
    feared: ['burns', 'too-hot'],
    played: say.H6,
    altered: (e) => (mainThermostatOf(e) < 0 ? say.noThermostat : probeAtCoolEnd(e)),
    guards: ['cut-out', 'fewer-watts'],
  },
  {
    id: 'H7',
    ...daily,
    season: 'winter',
    feared: ['burns', 'too-hot'],
    played: say.H7(String(wetProbeReadsLowK)),
    altered: needsThermostat,
    options: (model) => ({ probeOverride: lowReading(model) }),
    guards: ['cut-out', 'fewer-watts'],
  },
  {
    id: 'H8',
    ...daily,
    feared: ['burns', 'too-hot'],
    season: 'winter',
    played: say.H8,
    altered: (e, aims) =>
      mainThermostatOf(e) < 0
        ? say.noThermostat
        : withThermostats(e, (t) => ({
            setDayC: Math.max(t.setDayC, aims.wantedBaskingC),
            setNightC: Math.max(t.setNightC, aims.wantedBaskingC),
          })),
    guards: ['fewer-watts'],
  },
  {
    id: 'H10',
    ...daily,
    season: 'winter',
    hours: 12,
    feared: ['too-hot', 'too-cold'],
    played: say.H10,
    altered: (e) =>
      mainThermostatOf(e) < 0 ? say.noThermostat : withThermostats(e, () => ({ control: 'on-off', bandK: 2 })),
    guards: ['fewer-watts'],
    fineSteps: true,
  },
  {
    id: 'H11',
    ...daily,
    feared: ['too-hot', 'burns'],
    played: say.H11,
    altered: needsThermostat,
    options: stuckAt((aims) => aims.winterDutyFrac),
    guards: [],
  },
  {
    id: 'H13',
    ...daily,
    season: 'winter',
    feared: ['burns', 'too-hot'],
    played: say.H13,
    altered: (e) => {
      const first = e.thermostats[0];
      if (e.heaters.length < 2 || !first) return say.oneHeater;
      return withHeaters(e, () => ({ thermostatId: first.id }));
    },
    guards: [],
  },
  {
    id: 'H15',
    ...nightly,
    feared: ['too-cold'],
    played: say.H15,
    altered: (e) => ({ ...e, day: { startH: (e.day.startH + 6) % 24, endH: (e.day.endH + 6) % 24 } }),
    guards: [],
  },
  {
    id: 'H16',
    ...nightly,
    feared: ['too-cold'],
    played: say.H16(String(coldSnapK)),
    room: (day) => ({ ...shifted(day, -coldSnapK) }),
    guards: ['insulation'],
  },
  {
    id: 'H17',
    ...daily,
    feared: ['too-hot'],
    played: say.H17,
    guards: ['fewer-watts'],
  },
  {
    id: 'H18',
    ...daily,
    feared: ['too-hot', 'burns'],
    played: say.H18(String(sunOnGlassWPerM2)),
    room: (day) => ({ ...day, sunPeakWPerM2: sunOnGlassWPerM2, sunFromH: 10, sunToH: 16 }),
    guards: [],
  },
  {
    id: 'H19',
    ...daily,
    hours: 72,
    feared: ['too-hot'],
    played: say.H19(String(heatWaveHighC)),
    room: (day) => ({ ...plain(day), lowC: heatWaveHighC - 9, highC: heatWaveHighC }),
    guards: [],
  },
  {
    id: 'H20',
    ...nightly,
    feared: ['too-cold'],
    played: say.H20(String(cutHours)),
    options: () => ({ powerCut: { fromH: 0, toH: 1000 } }),
    guards: ['insulation'],
  },
  {
    id: 'H21',
    ...daily,
    feared: ['burns', 'too-cold'],
    buried: true,
    played: say.H21(String(buriedMatM * 1000)),
    altered: (e) => {
      if (!e.heaters.some((h) => h.kind === 'heat-mat')) return say.noMat;
      const materialId = e.substrate?.materialId ?? 'aspen-chips';
      return { ...e, substrate: { materialId, depthM: Math.min(buriedMatM, e.box.heightM / 2), wetFrac: 0 } };
    },
    guards: ['cut-out'],
  },
  {
    id: 'W1',
    ...daily,
    season: 'winter',
    feared: ['too-dry'],
    played: say.W1,
    altered: (e) => ({ ...e, misting: null, substrate: e.substrate && { ...e.substrate, wetFrac: 0 } }),
    guards: [],
  },
  {
    id: 'W2',
    ...nightly,
    feared: ['too-damp'],
    played: say.W2,
    altered: (e) => ({
      ...airtight(e),
      substrate: { materialId: 'coir-dry', depthM: 0.04, ...e.substrate, wetFrac: 0.5 },
    }),
    guards: [],
  },
  {
    id: 'W3',
    ...daily,
    season: 'winter',
    feared: ['too-damp', 'too-dry'],
    played: say.W3,
    altered: (e) => (e.bowl ? bowlAtWarmEnd(e) : say.noBowl),
    guards: [],
  },
  {
    id: 'W5',
    ...nightly,
    feared: ['too-damp'],
    played: say.W5,
    guards: [],
  },
  {
    id: 'W6',
    ...daily,
    season: 'winter',
    feared: ['too-dry'],
    played: say.W6(String(dryRoomPct)),
    room: (day) => ({ ...day, rhPct: Math.min(day.rhPct, dryRoomPct) }),
    guards: [],
  },
  {
    id: 'M6',
    ...daily,
    season: 'winter',
    hours: 12,
    feared: ['too-hot', 'too-cold'],
    played: say.M6,
    altered: needsThermostat,
    options: () => ({ probeLagS: 600 }),
    guards: [],
  },
  {
    id: 'E2',
    ...nightly,
    feared: ['too-cold', 'too-dry'],
    played: say.E2(String(doorSlitM * 1000)),
    altered: (e) => doorAjar(e, doorSlitM),
    guards: [],
  },
  {
    id: 'E9',
    ...nightly,
    feared: ['too-cold', 'too-hot'],
    played: say.E9(String(windowColderK), String(windowSunWPerM2)),
    room: (day) => ({ ...shifted(day, -windowColderK), sunPeakWPerM2: windowSunWPerM2, sunFromH: 10, sunToH: 14 }),
    guards: ['insulation'],
  },
];

const shifted = (day: RoomDay, kelvin: number): RoomDay => ({
  ...day,
  lowC: day.lowC + kelvin,
  highC: day.highC + kelvin,
  ...(day.hourlyC ? { hourlyC: day.hourlyC.map((c) => c + kelvin) } : {}),
});

/** Without its hourly readings, so that low and high count. */
function plain(day: RoomDay): RoomDay {
  const { hourlyC: _, ...rest } = day;
  return rest;
}

/** The true reading of the main probe less a few kelvin; direct radiation of the heater is left out of it. */
function lowReading(model: BoxModel): NonNullable<RunOptions['probeOverride']> {
  const main = mainThermostatOf(model.enclosure);
  const none = model.heaters.map(() => ({ radiatedW: 0, shortWaveW: 0 }));
  return (t, state) => (t === main ? readingValue(model.readings.probes[t]!, state, none) - wetProbeReadsLowK : null);
}
