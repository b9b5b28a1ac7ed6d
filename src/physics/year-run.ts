// A box through many days in long steps: the same two-stage step of heat as run.ts, thermostats by their mean power, which
// is sought so that the reading at the step's end asks for just that power. Leaves out switching, the lag of the probe
// (a minute) and cut-outs.
import { copyTally, type RunTally, settleAccounts, waterAfter } from './accounts.ts';
import { gamma, heatStep, type RunState, type StepContext, type Tried, takeOver, workFor } from './heat-step.ts';
import type { BoxModel } from './model.ts';
import { addLatentSlopes } from './moisture.ts';
import { type Factored, factorNetwork, followRoom, type Network, networkAt } from './network.ts';
import { type HeaterNow, probeReading } from './places.ts';
import { isDayAt } from './room-day.ts';
import { finerSteps, finestStepS, largestMove, leapK, renewAfterK } from './run.ts';
import { bodiesRiseW } from './stirring.ts';

export interface SlowRoom {
  /** Temperature at 0:00, 1:00 ... [degC]; straight between two hours, and held after the last. */
  readonly hourlyC: ArrayLike<number>;
  readonly rhPct: number;
}

export interface SlowOptions {
  readonly stepS: number;
  /** Longest time between renewals of conductances and water [s]. */
  readonly renewS: number;
}

export interface SlowMoment {
  readonly state: RunState;
  readonly now: readonly HeaterNow[];
}

/** Run through all hours and call `each` after every step.
 *  @param tally the books, added to   @returns the last state, its water carried to the end
 *  Source: as run.ts. Checks: books of every run close. */
export function runSlowly(
  model: BoxModel,
  room: SlowRoom,
  start: RunState,
  options: SlowOptions,
  tally: RunTally,
  each: (moment: SlowMoment) => void,
): RunState {
  return runStretch({ model, room, tally }, start, 0, room.hourlyC.length * 3600, options, each);
}

interface SlowRun {
  readonly model: BoxModel;
  readonly room: SlowRoom;
  readonly tally: RunTally;
}

/** From one second of the run to another in equal steps; a step in which a face leaps is gone through again in smaller ones. */
function runStretch(
  run: SlowRun,
  start: RunState,
  fromS: number,
  toS: number,
  options: SlowOptions,
  each: (moment: SlowMoment) => void,
): RunState {
  const { model, room, tally } = run;
  const { stepS, renewS } = options;
  const work = workFor(model, start.box);
  const control = startControl(model, start);
  let state = start;
  let held: { net: Network; factored: Factored; atS: number; isDay: boolean; surfaceC: Float64Array } | null = null;
  // after a leap the air's water still changes fast: renewed at the next step, then after two, four ...
  let renewNowS = renewS;
  const steps = Math.round((toS - fromS) / stepS);
  for (let n = 0; n < steps; n++) {
    const atS = fromS + n * stepS;
    const roomC = roomBetween(room.hourlyC, (atS + stepS / 2) / 3600);
    const isDay = isDayAt(model.enclosure.day, atS / 3600 + 1e-9);
    const moved = held !== null && largestMove(held.surfaceC, state.box.surfaceC) > renewAfterK;
    if (held === null || moved || atS - held.atS >= renewNowS - 1e-6 || held.isDay !== isDay) {
      if (held) {
        state = { ...state, moisture: waterSince(model, room, held, state, atS, tally) };
        renewNowS = Math.min(renewS, 2 * renewNowS);
      }
      const net = networkAt(model, state.box, roomC, bodiesRiseW(model, state.bodyC, state.box, roomC));
      addLatentSlopes(net, state.moisture);
      const surfaceC = state.box.surfaceC.slice();
      held = { net, factored: factorNetwork(model, net, 1 / (gamma * stepS)), atS, isDay, surfaceC };
    } else followRoom(model, held.net, roomC);
    const ctx: StepContext = {
      model,
      net: held.net,
      factored: held.factored,
      roomC,
      isDay,
      hour: atS / 3600,
      options: { stepS, renewS },
      sunW: 0,
      work,
    };
    const before = state;
    const booked = stepS > finestStepS ? copyTally(tally) : null;
    const tried = agreedStep(ctx, state, control);
    settleAccounts(ctx, tried, tally);
    const box = takeOver(work, state.box, start.box);
    if (booked && largestMove(before.box.surfaceC, box.surfaceC) > leapK) {
      Object.assign(tally, booked);
      work.trial = box;
      const due = atS > held.atS;
      const moisture = due ? waterSince(model, room, held, before, atS, tally) : before.moisture;
      const finer = inSmallerSteps(run, { ...before, moisture }, atS, stepS);
      state = finer.state;
      control.duty.splice(0, control.duty.length, ...state.duty);
      control.probeC = state.probeC.slice();
      held = null;
      renewNowS = stepS;
      each(finer);
      continue;
    }
    state = { ...state, box, bodyC: tried.bodyC, probeC: control.probeC, duty: control.duty.slice() };
    each({ state, now: tried.now });
  }
  return held ? { ...state, moisture: waterSince(model, room, held, state, toS, tally) } : state;
}

/** One step of a run in smaller ones, renewed at each; the watts of its heaters are their mean over them. */
function inSmallerSteps(run: SlowRun, from: RunState, atS: number, ofS: number): SlowMoment {
  const stepS = ofS / finerSteps;
  const wattSums = run.model.heaters.map(() => 0);
  let now: readonly HeaterNow[] = [];
  const state = runStretch(run, from, atS, atS + ofS, { stepS, renewS: stepS }, (m) => {
    now = m.now;
    for (const [i, { powerW }] of m.now.entries()) wattSums[i] = wattSums[i]! + powerW;
  });
  return { state, now: now.map((one, i) => ({ ...one, powerW: wattSums[i]! / finerSteps })) };
}

function roomBetween(hourlyC: ArrayLike<number>, hour: number): number {
  const last = hourlyC.length - 1;
  const i = Math.min(last, Math.floor(hour));
  return hourlyC[i]! + (hour - i) * (hourlyC[Math.min(last, i + 1)]! - hourlyC[i]!);
}

function waterSince(
  model: BoxModel,
  room: SlowRoom,
  held: { net: Network; atS: number },
  state: RunState,
  atS: number,
  tally: RunTally,
) {
  const meanC = meanOfDay(room.hourlyC, Math.floor(held.atS / 86400));
  const day = { lowC: meanC, highC: meanC, rhPct: room.rhPct, sunPeakWPerM2: 0 };
  return waterAfter(model, held.net, state, day, meanC, held.atS / 3600, atS - held.atS, tally);
}

/** The water in a room's air follows its mean of the day. */
function meanOfDay(hourlyC: ArrayLike<number>, day: number): number {
  const from = day * 24;
  const to = Math.min(hourlyC.length, from + 24);
  let sum = 0;
  for (let h = from; h < to; h++) sum += hourlyC[h]!;
  return sum / (to - from);
}

/** Where each thermostat stood: its duty, its reading, and by how much full power raises the reading within a step [K]. */
interface Control {
  readonly duty: number[];
  probeC: number[];
  readonly riseK: number[];
}

const startControl = (model: BoxModel, start: RunState): Control => ({
  duty: start.duty.slice(),
  probeC: start.probeC.slice(),
  riseK: model.enclosure.thermostats.map(() => 0),
});

/** Duty and reading agree to this part of full power; our choice: 0.15 W of 150 W. */
const agreedDuty = 1e-3;
const mostTries = 8;
/** A rise is known only from tries whose duties differ by this much. */
const leastChange = 1e-4;

/** The step at which every thermostat's duty is what its reading at the end asks for. */
function agreedStep(ctx: StepContext, state: RunState, control: Control): Tried {
  const { thermostats } = ctx.model.enclosure;
  const { duty, riseK } = control;
  const attempt = (): Tried => {
    const tried = heatStep(ctx, state, duty);
    control.probeC = thermostats.map((_, t) => probeReading(ctx.model, tried.box, tried.now, t));
    return tried;
  };
  let tried = attempt();
  for (let sweep = 0; sweep < (thermostats.length > 1 ? 3 : 1); sweep++)
    thermostats.forEach((thermostat, t) => {
      const setC = ctx.isDay ? thermostat.setDayC : thermostat.setNightC;
      const band = Math.max(thermostat.bandK, 0.05);
      const limited = (d: number) => Math.max(0, Math.min(1, d));
      for (let i = 0; i < mostTries; i++) {
        const before = duty[t]!;
        const beforeC = control.probeC[t]!;
        const asked = limited(0.5 + (setC - beforeC) / band);
        if (Math.abs(asked - before) < agreedDuty) break;
        const rise = riseK[t]!;
        const freeC = beforeC - before * rise;
        let next = limited((0.5 + (setC - freeC) / band) / (1 + rise / band));
        // nothing known yet, or what is known leads nowhere: feel the way by a tenth
        if (rise === 0 || Math.abs(next - before) < leastChange) next = before + (asked > before ? 0.1 : -0.1);
        duty[t] = limited(next);
        if (duty[t] === before) break;
        tried = attempt();
        const change = control.probeC[t]! - beforeC;
        if (Math.abs(change) < 1e-9) {
          // its heaters do nothing at this hour
          duty[t] = asked;
          break;
        }
        riseK[t] = Math.max(0, change / (duty[t]! - before));
      }
    });
  return tried;
}
