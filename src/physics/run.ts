// A box through time: steps of heat under its thermostats, conductances renewed as the box moves, water in between.
// Error of a switching time: below a tenth of the step for a probe that moves smoothly (checks P-150, P-152).
import { copyTally, type RunTally, settleAccounts, waterAfter } from './accounts.ts';
import { probeLagS } from './control.ts';
import { controlStep } from './control-step.ts';
import type { RoomDay } from './enclosure.ts';
import {
  gamma,
  heatStep,
  type RunOptions,
  type RunState,
  type StepContext,
  type Tried,
  takeOver,
  unitRise,
  workFor,
} from './heat-step.ts';
import type { BoxModel } from './model.ts';
import { addLatentSlopes, dryStart } from './moisture.ts';
import {
  type BoxState,
  copyState,
  type Factored,
  factorNetwork,
  followRoom,
  type Network,
  networkAt,
} from './network.ts';
import { type HeaterNow, probeReading, type Shining } from './places.ts';
import { isDayAt, roomAt, sunAt } from './room-day.ts';
import { roomRatioOf, type SettledBox } from './steady.ts';
import { bodiesRiseW } from './stirring.ts';

export { type RunTally, startTally, waterMissShare } from './accounts.ts';
export type { RunOptions, RunState } from './heat-step.ts';

/** A moment of a run; its box and heaters are the run's own and hold until the next step. */
export interface Moment {
  readonly hour: number;
  readonly state: RunState;
  readonly net: Network;
  readonly now: readonly HeaterNow[];
  readonly roomC: number;
}

/** Start of a run from a settled box, or from the room's temperature with everything cold. */
export function runStateFrom(model: BoxModel, settled: SettledBox): RunState {
  return {
    box: copyState(settled.state),
    bodyC: settled.now.map((n) => n.bodyC),
    probeC: settled.probeC,
    duty: model.enclosure.thermostats.map((t, i) =>
      t.control === 'on-off'
        ? settled.now.some(
            (n, h) =>
              model.enclosure.heaters[h]!.thermostatId === t.id && n.powerW > 0.5 * model.enclosure.heaters[h]!.powerW,
          )
          ? 1
          : 0
        : dutyOf(model, settled, i),
    ),
    cutOpen: model.enclosure.thermostats.map(() => false),
    moisture: settled.moisture,
  };
}

function dutyOf(model: BoxModel, settled: SettledBox, t: number): number {
  const h = model.enclosure.heaters.findIndex((x) => x.thermostatId === model.enclosure.thermostats[t]!.id);
  return h < 0
    ? 0
    : settled.now[h]!.powerW / Math.max(1e-9, model.enclosure.heaters[h]!.powerW * model.parameters.heaterPower);
}

export function coldRunState(model: BoxModel, box: BoxState, roomC: number, rhPct: number): RunState {
  return {
    box,
    bodyC: model.heaters.map(() => roomC),
    probeC: model.enclosure.thermostats.map(() => roomC),
    duty: model.enclosure.thermostats.map(() => 1),
    cutOpen: model.enclosure.thermostats.map(() => false),
    moisture: dryStart(model, roomRatioOf(roomC, rhPct)),
  };
}

/** Run from one hour to another and call `each` after every step.
 *  @returns the last state, its water carried to the end; the tally is added to. */
export function runBox(
  model: BoxModel,
  roomDay: RoomDay,
  start: RunState,
  fromH: number,
  toH: number,
  options: RunOptions,
  tally: RunTally,
  each: (m: Moment) => void,
): RunState {
  const h = options.stepS;
  const steps = Math.round(((toH - fromH) * 3600) / h);
  const work = workFor(model, start.box);
  let state = start;
  let net: Network | null = null;
  let factored: Factored | null = null;
  let unit: readonly number[] = [];
  let renewedAt = Number.NEGATIVE_INFINITY;
  let renewedC = state.box.surfaceC;
  let dayWas: boolean | null = null;
  for (let n = 0; n < steps; n++) {
    const hour = fromH + (n * h) / 3600;
    const roomC = roomAt(roomDay, hour + h / 7200);
    const isDay = isDayAt(model.enclosure.day, hour + 1e-9);
    const moved = factored !== null && largestMove(renewedC, state.box.surfaceC) > renewAfterK;
    if (!net || !factored || moved || n * h - renewedAt >= options.renewS - 1e-6 || dayWas !== isDay) {
      const dtS = net ? n * h - renewedAt : 0;
      if (net && dtS > 0)
        state = { ...state, moisture: waterAfter(model, net, state, roomDay, roomC, hour - dtS / 3600, dtS, tally) };
      net = networkAt(model, state.box, roomC, bodiesRiseW(model, state.bodyC, state.box, roomC));
      addLatentSlopes(net, state.moisture);
      factored = factorNetwork(model, net, 1 / (gamma * h));
      unit = unitRise(model, net, factored, state, roomC, work);
      renewedAt = n * h;
      renewedC = state.box.surfaceC.slice();
      dayWas = isDay;
    } else followRoom(model, net, roomC);
    const ctx: StepContext = {
      model,
      net,
      factored,
      roomC,
      isDay,
      hour,
      options,
      sunW: sunAt(roomDay, hour + h / 7200) * model.sunAreaM2 * model.sunThroughFrac,
      work,
    };
    const before = state;
    const booked = copyTally(tally);
    const step = controlledStep(ctx, state, start.box, unit, tally);
    state = step.state;
    unit = step.unit;
    let moment: Moment = { hour: hour + h / 3600, state, net, now: step.now, roomC };
    if (h > finestStepS && largestMove(before.box.surfaceC, state.box.surfaceC) > leapK) {
      Object.assign(tally, booked);
      work.trial = state.box;
      const dtS = n * h - renewedAt;
      const fromH = hour - dtS / 3600;
      const moisture = dtS > 0 ? waterAfter(model, net, before, roomDay, roomC, fromH, dtS, tally) : before.moisture;
      moment = { ...moment, ...inSmallerSteps(model, roomDay, { ...before, moisture }, hour, options, tally) };
      state = moment.state;
      factored = null;
      renewedAt = (n + 1) * h;
    }
    each(moment);
  }
  const leftS = steps * h - renewedAt;
  if (!net || leftS <= 0) return state;
  const endC = roomAt(roomDay, toH);
  return { ...state, moisture: waterAfter(model, net, state, roomDay, endC, toH - leftS / 3600, leftS, tally) };
}

/** A step in which a face moves further than this says little about its end, for its conductances are those of its start [K]. It is
 *  gone through again in so many smaller ones, down to steps of this length [s]; our choice. A floor of 150 degC and more whose
 *  spray has dried rang by 100 K for ten minutes without it. */
export const leapK = 20;
export const finerSteps = 5;
export const finestStepS = 10;

/** One step of a run in smaller ones, renewed at each. */
function inSmallerSteps(
  model: BoxModel,
  roomDay: RoomDay,
  from: RunState,
  hour: number,
  options: RunOptions,
  tally: RunTally,
): Pick<Moment, 'state' | 'net' | 'now'> {
  const stepS = options.stepS / finerSteps;
  const finer = { ...options, stepS, renewS: stepS };
  let last: Moment | null = null;
  const state = runBox(model, roomDay, from, hour, hour + options.stepS / 3600, finer, tally, (m) => {
    last = m;
  });
  if (!last) throw new Error('a step has smaller ones');
  const { net, now } = last as Moment;
  return { state, net, now };
}

/** Conductances are renewed early once a surface has moved this far since they were worked out [K]; our choice. */
export const renewAfterK = 4;

export function largestMove(a: Float64Array, b: Float64Array): number {
  let most = 0;
  for (let s = 0; s < a.length; s++) most = Math.max(most, Math.abs(a[s]! - b[s]!));
  return most;
}

/** One step of heat, its thermostats and its books. */
function controlledStep(
  ctx: StepContext,
  state: RunState,
  first: BoxState,
  unit: readonly number[],
  tally: RunTally,
): { state: RunState; now: readonly HeaterNow[]; unit: readonly number[] } {
  const { thermostats } = ctx.model.enclosure;
  const setC: number[] = [];
  const forced: (number | null)[] = [];
  for (let t = 0; t < thermostats.length; t++) {
    setC.push(ctx.isDay ? thermostats[t]!.setDayC : thermostats[t]!.setNightC);
    forced.push(forcedDuty(ctx, state, t));
  }
  let tried = null as Tried | null;
  const outcome = controlStep({
    thermostats,
    setC,
    probeC: state.probeC,
    duty: state.duty,
    forced,
    unitRiseK: unit,
    stepS: ctx.options.stepS,
    lagS: ctx.options.probeLagS ?? probeLagS,
    settledC: () => probesOf(ctx, state.box, tried?.before ?? []),
    tryStep: (duty) => {
      tried = heatStep(ctx, state, duty);
      return probesOf(ctx, tried.box, tried.now);
    },
  });
  const { bodyC, now } = settleAccounts(ctx, tried ?? heatStep(ctx, state, []), tally);
  tally.switches += outcome.switches;
  const { probeC, next: duty } = outcome;
  const cutOpen = cutOutsAfter(ctx, state.cutOpen, probeC);
  const box = takeOver(ctx.work, state.box, first);
  return { state: { box, bodyC, probeC, duty, cutOpen, moisture: state.moisture }, now, unit: outcome.unitRiseK };
}

function probesOf({ model, options, roomC }: StepContext, box: BoxState, now: readonly Shining[]): number[] {
  const readings: number[] = [];
  for (let t = 0; t < model.enclosure.thermostats.length; t++)
    readings.push(options.probeOverride?.(t, box, roomC) ?? probeReading(model, box, now, t));
  return readings;
}

function cutOutsAfter(ctx: StepContext, open: readonly boolean[], probeC: readonly number[]): readonly boolean[] {
  const { thermostats } = ctx.model.enclosure;
  if (thermostats.every((t) => t.cutOutC === null)) return open;
  return thermostats.map((t, i) => t.cutOutC !== null && probeC[i]! > t.cutOutC - (open[i] ? cutOutDifferentialK : 0));
}

/** A second cut-out closes again this much below its own threshold [K]; our choice. */
const cutOutDifferentialK = 2;

function forcedDuty(ctx: StepContext, state: RunState, t: number): number | null {
  if (state.cutOpen[t]) return 0;
  const s = ctx.options.stuck;
  return s && s.thermostat === t && ctx.hour >= s.fromH - 1e-9 ? s.duty : null;
}
