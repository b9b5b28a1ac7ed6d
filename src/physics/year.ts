// A year of a box in a room known hour by hour: what it costs to heat, and the hourly temperatures and humidity at the
// places that matter. Long steps and renewals, thermostats by their mean power. Leaves out: switching within the hour
// (day.ts), and the sun, whose hours a list of room temperatures does not tell.
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Balance } from './answer.ts';
import type { Thermostat } from './enclosure.ts';
import { relativeHumidityFrac, vapourPressurePaFromRatio } from './formulas/moist-air.ts';
import { warmEndOf } from './grid.ts';
import { type BoxModel, columnAt } from './model.ts';
import { baskingSurface } from './places.ts';
import { readingValue } from './reading.ts';
import { isDayAt } from './room-day.ts';
import { runStateFrom, startTally, waterMissShare } from './run.ts';
import { settleBox } from './steady.ts';
import { runSlowly, type SlowMoment } from './year-run.ts';

export interface YearOptions {
  /** Relative humidity of the room [%]; default that of the enclosure's winter. */
  readonly roomRhPct?: number;
  /** Step [s], an hour or a whole part of it; default 1800. */
  readonly stepS?: number;
  /** Longest time between renewals of conductances and water [s]; default 7200. */
  readonly renewS?: number;
}

export interface YearAnswer {
  /** One number for each hour: the mean of heaterW [W], the others at the hour's end. */
  readonly heaterW: Float64Array;
  readonly baskingC: Float64Array;
  readonly warmAirC: Float64Array;
  readonly coolAirC: Float64Array;
  readonly coolRhPct: Float64Array;
  readonly kWh: number;
  /** Heat in, out and stored [J] over the whole run, and water. */
  readonly balance: Balance;
}

/** Simulate a year, or any whole number of days.
 *  @param hourlyC room temperature at 0:00, 1:00 ... [degC], -20..60; straight between two hours
 *  On/off thermostats are run as proportional ones of the same band: their mean, without the swing.
 *  Against steps of a minute: bench/ measures and docs/speed.md states it. Checks: books of every run close. */
export function simulateYear(
  model: BoxModel,
  hourlyC: ArrayLike<number>,
  options: YearOptions = {},
): Result<YearAnswer> {
  const stepS = options.stepS ?? 1800;
  const faults = [...hoursFaults(hourlyC), ...stepFaults(stepS)];
  if (faults.length > 0) return bad(faults);
  const mean = withMeanPower(model);
  const rhPct = options.roomRhPct ?? model.enclosure.room.winter.rhPct;
  const settled = settleBox(mean, {
    roomC: hourlyC[0]!,
    roomRhPct: rhPct,
    sunWPerM2: 0,
    isDay: isDayAt(model.enclosure.day, 0),
  });
  const hours = hourlyC.length;
  const rows = hourRows(mean, hours, 3600 / stepS);
  const tally = startTally(mean);
  const slow = { stepS, renewS: options.renewS ?? 7200 };
  runSlowly(mean, { hourlyC, rhPct }, runStateFrom(mean, settled), slow, tally, rows.add);
  const heaterJ = tally.heaterJ.reduce((s, j) => s + j, 0);
  return good({
    ...rows.columns,
    kWh: heaterJ / 3.6e6,
    balance: {
      heatIn: tally.heatInJ,
      heatOut: tally.heatOutJ + tally.directJ - tally.latentJ,
      stored: tally.storedJ,
      relative: Math.abs(tally.heatMissJ) / Math.max(1, tally.heatInJ),
      waterInGPerH: (tally.waterInKg * 1000) / hours,
      waterOutGPerH: ((tally.waterOutKg + tally.condensedKg) * 1000) / hours,
      waterRelative: waterMissShare(tally),
    },
  });
}

/** The same box with every on/off thermostat replaced by its mean. */
function withMeanPower(model: BoxModel): BoxModel {
  const { enclosure } = model;
  const mean = (t: Thermostat): Thermostat => (t.control === 'on-off' ? { ...t, control: 'pulse' } : t);
  return { ...model, enclosure: { ...enclosure, thermostats: enclosure.thermostats.map(mean) } };
}

function hourRows(model: BoxModel, hours: number, perHour: number) {
  const column = () => new Float64Array(hours);
  const columns = {
    heaterW: column(),
    baskingC: column(),
    warmAirC: column(),
    coolAirC: column(),
    coolRhPct: column(),
  };
  const { lengthM } = model.enclosure.box;
  const coolX = warmEndOf(model.enclosure) === 'left' ? lengthM * (15 / 16) : lengthM / 16;
  const cool = columnAt(model.grid, coolX);
  let steps = 0;
  const add = (m: SlowMoment): void => {
    const row = Math.floor(steps / perHour);
    columns.heaterW[row]! += m.now.reduce((s, h) => s + h.powerW, 0) / perHour;
    steps++;
    if (steps % perHour !== 0) return;
    const { box, moisture } = m.state;
    columns.baskingC[row] = baskingSurface(model, box);
    columns.warmAirC[row] = readingValue(model.readings.warmAir, box, m.now);
    columns.coolAirC[row] = readingValue(model.readings.coolAir, box, m.now);
    const rh = relativeHumidityFrac(box.airC[cool]!, vapourPressurePaFromRatio(moisture.ratio[cool]!));
    columns.coolRhPct[row] = Math.min(100, 100 * rh);
  };
  return { columns, add };
}

function hoursFaults(hourlyC: ArrayLike<number>): Fault[] {
  const faults: Fault[] = [];
  if (hourlyC.length < 24 || hourlyC.length % 24 !== 0)
    faults.push({
      code: 'ENC_RANGE',
      field: 'hourlyC',
      got: `${hourlyC.length} hours`,
      allowed: 'a whole number of days, at least one',
      say: `hourlyC: ${hourlyC.length} hours are no whole number of days.`,
      fix: 'Give one temperature for each hour from the first midnight to the last hour of the last day.',
    });
  for (let h = 0; h < hourlyC.length; h++) {
    const t = hourlyC[h]!;
    if (t >= lowestC && t <= highestC) continue;
    faults.push({
      code: 'ENC_RANGE',
      field: `hourlyC[${h}]`,
      got: `${t} °C`,
      allowed: `${lowestC} to ${highestC} °C`,
      say: `hourlyC[${h}]: ${t} °C is no temperature of a room.`,
      fix: 'Correct the reading, or fill the gap from the hours around it.',
    });
  }
  return faults;
}

/** Room temperatures that are believed [degC]; our choice. */
const lowestC = -20;
const highestC = 60;

function stepFaults(stepS: number): Fault[] {
  if (stepS > 0 && stepS <= 3600 && Number.isInteger(3600 / stepS)) return [];
  return [
    {
      code: 'ENC_RANGE',
      field: 'stepS',
      got: `${stepS} s`,
      allowed: 'an hour or a whole part of it',
      say: `stepS: ${stepS} s do not fill an hour evenly.`,
      fix: 'Take 900, 1800 or 3600 s.',
    },
  ];
}
