// The simulator's own times: a box at rest, cost against the number of columns, a year by the hour.
import { runBox, runStateFrom, startTally } from '../src/physics/run.ts';
import { boxGeometry, buildModel, modelFrom, settleBox, solveSteady } from '../src/physics/simulate.ts';
import { simulateYear, type YearAnswer } from '../src/physics/year.ts';
import { exampleBox, materials, roomYear, switched, winterDay } from './boxes.ts';
import { cpuTimeOf, type Took, timeOf, tookOf } from './clock.ts';

export interface SteadyTimes {
  readonly box: string;
  readonly cold: Took;
  readonly warm: Took;
  readonly rounds: number;
}

/** At rest with ideal thermostats, from nothing and from the answer of a room 1 K colder. */
export function steadyTimes(box: string): SteadyTimes {
  const e = exampleBox(box);
  const model = buildModel(e, materials);
  const at = winterDay(e);
  const near = settleBox(model, { ...at, roomC: at.roomC - 1 });
  return {
    box,
    cold: timeOf(() => void solveSteady(model, at), 15, 20),
    warm: timeOf(() => void solveSteady(model, at, near), 15, 20),
    rounds: solveSteady(model, at).iterations,
  };
}

export interface ColumnTimes {
  readonly columns: number;
  readonly surfaces: number;
  readonly build: Took;
  readonly steady: Took;
  /** Two hours of steps of 10 s. */
  readonly twoHours: Took;
}

export function columnTimes(columns: number): ColumnTimes {
  // several calls a sample, or the collecting of garbage falls into some samples and not into others
  const many = Math.ceil(256 / columns);
  const e = switched(exampleBox('wood-1200'));
  const at = winterDay(e);
  const build = timeOf(() => void modelFrom(boxGeometry(e, materials, columns)), 15, many);
  const model = modelFrom(boxGeometry(e, materials, columns));
  const start = runStateFrom(model, settleBox(model, at));
  const run = () =>
    void runBox(model, e.room.winter, start, 0, 2, { stepS: 10, renewS: 300 }, startTally(model), () => {});
  return {
    columns,
    surfaces: model.chains.length,
    build,
    steady: timeOf(() => void solveSteady(model, at), 15, many),
    twoHours: timeOf(run, 9),
  };
}

export interface YearTimes {
  readonly took: Took;
  readonly kWh: number;
  /** Against steps of five minutes over the first four weeks: energy, relative, and mean basking surface [K]. */
  readonly energyOff: number;
  readonly baskingOffK: number;
  readonly heatMiss: number;
  readonly waterMiss: number;
}

export function yearTimes(): YearTimes {
  const e = exampleBox('wood-1200');
  const model = buildModel(e, materials);
  const hours = roomYear(e);
  const year = (count: number, stepS: number, renewS: number): YearAnswer => {
    const r = simulateYear(model, hours.subarray(0, count), { stepS, renewS });
    if (!r.ok) throw new Error(r.faults[0]!.say);
    return r.value;
  };
  year(24 * 28, 1800, 7200);
  const times = Array.from({ length: 5 }, () => cpuTimeOf(() => void year(8760, 1800, 7200)));
  const whole = year(8760, 1800, 7200);
  const long = year(24 * 28, 1800, 7200);
  const short = year(24 * 28, 300, 900);
  const mean = (x: Float64Array) => x.reduce((s, v) => s + v, 0) / x.length;
  return {
    took: tookOf(times),
    kWh: whole.kWh,
    energyOff: long.kWh / short.kWh - 1,
    baskingOffK: mean(long.baskingC) - mean(short.baskingC),
    heatMiss: whole.balance.relative,
    waterMiss: whole.balance.waterRelative,
  };
}
