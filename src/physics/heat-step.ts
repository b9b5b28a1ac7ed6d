// One step of heat in a box: two implicit stages (L-stable, second order), each heater's body stepped on its own
// with the surroundings of the stage's start, and the heat that left counted with the same weights.

import { probeLagS } from './control.ts';
import { bodyOutput, bodyRadiatedW, bodyTemperature, keptW, surroundOf } from './heater-body.ts';
import { stepInKernel } from './kernel/step.ts';
import type { BoxModel } from './model.ts';
import { latentW, type Moisture } from './moisture.ts';
import { type BoxState, copyState, type Factored, type Network } from './network.ts';
import { type HeaterNow, probeReading, type Shining } from './places.ts';
import { heatOutW, noSources, type Sources, solveNetwork, storedBetweenJ } from './solve-network.ts';
import { addHeater, ambientSources, ratedW } from './steady.ts';

export interface RunOptions {
  readonly stepS: number;
  /** Longest time between renewals of the conductances [s]. */
  readonly renewS: number;
  /** Override of one thermostat: stuck duty from an hour on, for the faults. */
  readonly stuck?: { readonly thermostat: number; readonly duty: number; readonly fromH: number };
  /** All power off between two hours. */
  readonly powerCut?: { readonly fromH: number; readonly toH: number };
  /** This heater dead from an hour on. */
  readonly dead?: { readonly heater: number; readonly fromH: number };
  /** Time constant of the probes [s]; default control.ts. */
  readonly probeLagS?: number;
  /** What the thermostat's probe reads instead of its place, e.g. the room (fallen out). */
  readonly probeOverride?: (thermostat: number, state: BoxState, roomC: number) => number | null;
}

export interface RunState {
  readonly box: BoxState;
  readonly bodyC: readonly number[];
  readonly probeC: readonly number[];
  readonly duty: readonly number[];
  readonly cutOpen: readonly boolean[];
  readonly moisture: Moisture;
}

/** Weight of the implicit stages: 1 - 1/sqrt 2. */
export const gamma = 1 - Math.SQRT1_2;

export interface Workspace {
  readonly stage: BoxState;
  readonly from: BoxState;
  /** Gets the step's end; runs swap it with the box they come from, so that no step makes room for itself. */
  trial: BoxState;
  readonly mid: BoxState;
  readonly scratch: Float64Array;
  /** Heat given to the box besides its heaters, and the water and sun it was worked out for. */
  ambient: { readonly moisture: Moisture; readonly sunW: number; readonly sources: Sources } | null;
  /** Which thermostat drives each heater; -1 for none. */
  readonly thermostatOf: readonly number[];
}

/** The box after a step; the one before makes room for the next, unless it is where the run began. */
export function takeOver(work: Workspace, before: BoxState, start: BoxState): BoxState {
  const after = work.trial;
  work.trial = before === start ? copyState(before) : before;
  return after;
}

export const workFor = (model: BoxModel, box: BoxState): Workspace => ({
  stage: copyState(box),
  from: copyState(box),
  trial: copyState(box),
  mid: copyState(box),
  scratch: new Float64Array(box.airC.length + box.surfaceC.length),
  ambient: null,
  thermostatOf: model.heaters.map(({ heater }) =>
    model.enclosure.thermostats.findIndex((t) => t.id === heater.thermostatId),
  ),
});

export interface StepContext {
  readonly model: BoxModel;
  readonly net: Network;
  readonly factored: Factored;
  readonly roomC: number;
  readonly isDay: boolean;
  readonly hour: number;
  readonly options: RunOptions;
  readonly sunW: number;
  readonly work: Workspace;
}

export interface Tried {
  readonly box: BoxState;
  readonly bodyC: number[];
  readonly now: HeaterNow[];
  /** What the heaters sent to the probes at the step's start. */
  readonly before: readonly Shining[];
  readonly powerW: readonly number[];
  readonly outJ: number;
  readonly latentJ: number;
  readonly keptJ: number;
  /** Heat that the heaters' bodies took up, and air and panels [J]. */
  readonly bodyJ: number;
  readonly storedJ: number;
}

/** Electrical power of each heater during the step [W]. */
function stepPower(ctx: StepContext, duty: readonly number[]): number[] {
  const { model, options, hour, work } = ctx;
  const { powerCut, dead } = options;
  const isCut = powerCut !== undefined && hour >= powerCut.fromH - 1e-9 && hour < powerCut.toH - 1e-9;
  const watts: number[] = [];
  for (let h = 0; h < model.heaters.length; h++) {
    const isDead = isCut || (dead !== undefined && dead.heater === h && hour >= dead.fromH - 1e-9);
    const t = work.thermostatOf[h]!;
    watts.push(isDead ? 0 : ratedW(model, h, ctx) * (t < 0 ? 1 : duty[t]!));
  }
  return watts;
}

/** The two implicit stages: in the kernel, or in plain arithmetic where there is none. */
export function heatStep(ctx: StepContext, state: RunState, duty: readonly number[]): Tried {
  const { model, net, factored, roomC, work } = ctx;
  const { moisture } = state;
  const powerW = stepPower(ctx, duty);
  const ambient = ambientNow(ctx, moisture);
  const fast = stepInKernel(
    { model, net, factored, roomC, ambient, moisture, powerW },
    state.box.row,
    state.bodyC,
    gamma,
    work.trial.row,
  );
  if (!fast) return plainStep(ctx, state, powerW);
  const h = ctx.options.stepS;
  return {
    box: work.trial,
    bodyC: fast.bodyC,
    now: fast.now,
    before: fast.before,
    powerW,
    outJ: h * fast.outW,
    latentJ: h * fast.latentW,
    keptJ: h * fast.keptW,
    bodyJ: bodiesJ(model, state.bodyC, fast.bodyC),
    storedJ: fast.storedJ,
  };
}

/** Heat given to the box besides its heaters; the same object until water or sun change. */
function ambientNow({ model, sunW, work }: StepContext, moisture: Moisture): Sources {
  if (work.ambient?.moisture !== moisture || work.ambient.sunW !== sunW)
    work.ambient = { moisture, sunW, sources: ambientSources(model, sunW, moisture) };
  return work.ambient.sources;
}

function bodiesJ(model: BoxModel, fromC: readonly number[], toC: readonly number[]): number {
  let joules = 0;
  for (let h = 0; h < toC.length; h++) {
    const { body } = model.heaters[h]!;
    if (body.form === 'body') joules += body.heatCapacity * (toC[h]! - fromC[h]!);
  }
  return joules;
}

/** The same in plain arithmetic. Each heater's body is stepped on its own with the surroundings of the stage's start. */
export function plainStep(ctx: StepContext, state: RunState, powerW: readonly number[]): Tried {
  const { model, net, factored, roomC, work } = ctx;
  const h = ctx.options.stepS;
  const sunlit = ambientNow(ctx, state.moisture);
  const one = heaterStage(ctx, state.box, state.bodyC, state.bodyC, powerW, 1 / (gamma * h), sunlit);
  solveNetwork(model, net, factored, one.sources, state.box, roomC, work.stage, work.scratch);
  // second stage starts from T_n + h (1 - gamma) f(stage one) = T_n + ((1 - gamma)/gamma)(stage one - T_n)
  const lift = (1 - gamma) / gamma;
  blend(state.box, work.stage, lift, work.from);
  const bodyFrom = state.bodyC.map((t, i) => t + lift * (one.bodyC[i]! - t));
  const two = heaterStage(ctx, work.stage, one.bodyC, bodyFrom, powerW, 1 / (gamma * h), sunlit);
  solveNetwork(model, net, factored, two.sources, work.from, roomC, work.trial, work.scratch);
  const outJ = h * ((1 - gamma) * heatOutW(net, work.stage, roomC) + gamma * heatOutW(net, work.trial, roomC));
  const latentJ = h * ((1 - gamma) * latentW(state.moisture, work.stage) + gamma * latentW(state.moisture, work.trial));
  const kept = (now: readonly HeaterNow[]) => now.reduce((s, v, i) => s + keptW(model, i, v), 0);
  return {
    box: work.trial,
    bodyC: two.bodyC,
    now: two.now,
    before: one.before,
    powerW,
    outJ,
    latentJ,
    keptJ: h * ((1 - gamma) * kept(one.now) + gamma * kept(two.now)),
    bodyJ: bodiesJ(model, state.bodyC, two.bodyC),
    storedJ: storedBetweenJ(model, state.box, work.trial),
  };
}

function heaterStage(
  ctx: StepContext,
  around: BoxState,
  guess: readonly number[],
  from: readonly number[],
  powerW: readonly number[],
  perS: number,
  sunlit: Sources,
): { sources: Sources; bodyC: number[]; now: HeaterNow[]; before: Shining[] } {
  const { model, roomC } = ctx;
  const sources: Sources = { airW: sunlit.airW.slice(), surfaceW: sunlit.surfaceW.slice(), matW: sunlit.matW.slice() };
  const bodyC: number[] = [];
  const before: Shining[] = [];
  const now = model.heaters.map((path, h) => {
    const w = powerW[h]!;
    if (path.body.form === 'area') {
      addHeater(model, h, sources, 0, 0, 0, w);
      bodyC.push(guess[h]!);
      before.push({ radiatedW: 0, shortWaveW: 0 });
      return { powerW: w, bodyC: guess[h]!, convectedW: 0, radiatedW: 0, shortWaveW: 0 };
    }
    const seen = surroundOf(path, around, roomC);
    before.push({ radiatedW: bodyRadiatedW(path, from[h]!, seen.seenK4), shortWaveW: 0 });
    const t = bodyTemperature(
      path,
      w * (1 - path.shortWaveFrac),
      seen,
      guess[h]!,
      path.body.heatCapacity * perS,
      from[h]!,
    );
    const o = bodyOutput(path, t, seen);
    const short = w * path.shortWaveFrac;
    addHeater(model, h, sources, o.convectedW, o.radiatedW, short, 0);
    bodyC.push(t);
    return { powerW: w, bodyC: t, convectedW: o.convectedW, radiatedW: o.radiatedW, shortWaveW: short };
  });
  return { sources, bodyC, now, before };
}

function blend(a: BoxState, b: BoxState, f: number, out: BoxState): void {
  for (let k = 0; k < out.row.length; k++) out.row[k] = a.row[k]! + f * (b.row[k]! - a.row[k]!);
}

/** Rise of each thermostat's reading by the step's end if its heaters go from off to full [K], for the proportional kinds. */
export function unitRise(
  model: BoxModel,
  net: Network,
  factored: Factored,
  state: RunState,
  roomC: number,
  work: Workspace,
): number[] {
  return model.enclosure.thermostats.map((t) => {
    if (t.control === 'on-off') return 0;
    const sources = noSources(model);
    model.heaters.forEach((path, h) => {
      if (path.heater.thermostatId !== t.id) return;
      const w = path.heater.powerW * model.parameters.heaterPower;
      if (path.body.form === 'area') addHeater(model, h, sources, 0, 0, 0, w);
      else {
        const o = bodyOutput(path, Math.max(state.bodyC[h]!, 60), surroundOf(path, state.box, roomC));
        const total = o.convectedW + o.radiatedW;
        const left = w * (1 - path.shortWaveFrac);
        addHeater(
          model,
          h,
          sources,
          (left * o.convectedW) / total,
          (left * o.radiatedW) / total,
          w * path.shortWaveFrac,
          0,
        );
      }
    });
    const zero = work.mid;
    solveNetwork(model, net, { ...factored, perS: factored.perS }, sources, null, 0, zero, work.scratch, false);
    const none = model.heaters.map(() => ({ powerW: 0, bodyC: 0, convectedW: 0, radiatedW: 0, shortWaveW: 0 }));
    const index = model.enclosure.thermostats.indexOf(t);
    const here = probeReading(model, zero, none, index);
    // what a lagging probe shows of a rise that comes in evenly over the step
    const ratio = 1 / (gamma * factored.perS) / probeLagS;
    return Math.max(0, here) * (1 - (1 - Math.exp(-ratio)) / ratio);
  });
}
