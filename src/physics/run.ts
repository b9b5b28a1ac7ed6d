// A box through time: two-stage implicit steps (L-stable, second order), conductances renewed as the box moves,
// thermostat switching placed inside the step where the probe crosses its threshold, heat and water accounted as they flow.
// Error of a switching time: below a tenth of the step for a probe that moves smoothly (measured in run.test.ts).

import { crossing, laggedReading, offAbove, onBelow, probeLagS, proportionalDuty } from './control.ts';
import type { RoomDay } from './enclosure.ts';
import { bodyOutput, bodyTemperature, keptW, surroundOf } from './heater-body.ts';
import type { BoxModel } from './model.ts';
import { dryStart, type Moisture, moistureStep } from './moisture.ts';
import { type BoxState, copyState, type Factored, factorNetwork, type Network, networkAt } from './network.ts';
import { type HeaterNow, probeReading } from './places.ts';
import { isDayAt, roomAt, sunAt } from './room-day.ts';
import { heatOutW, noSources, type Sources, solveNetwork, storedJ } from './solve-network.ts';
import { addHeater, ambientSources, ratedW, roomRatioOf, type SettledBox } from './steady.ts';

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

export interface RunTally {
  heatInJ: number;
  heatOutJ: number;
  latentJ: number;
  directJ: number;
  heaterJ: number[];
  switches: number;
  waterInKg: number;
  waterOutKg: number;
  condensedKg: number;
  waterMissKg: number;
  /** Change of heat stored in panels, air and heater bodies [J]. */
  storedJ: number;
  /** Sum of what each step's own balance misses, all of one sign [J]. */
  heatMissJ: number;
}

export interface Moment {
  readonly hour: number;
  readonly state: RunState;
  readonly net: Network;
  readonly now: readonly HeaterNow[];
  readonly roomC: number;
}

const gamma = 1 - Math.SQRT1_2;

export const startTally = (model: BoxModel): RunTally => ({
  heatInJ: 0,
  heatOutJ: 0,
  latentJ: 0,
  directJ: 0,
  heaterJ: model.heaters.map(() => 0),
  switches: 0,
  waterInKg: 0,
  waterOutKg: 0,
  condensedKg: 0,
  waterMissKg: 0,
  storedJ: 0,
  heatMissJ: 0,
});

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
 *  @returns the last state; the tally is added to. */
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
  const size = start.box.airC.length + start.box.surfaceC.length;
  const work: Workspace = {
    stage: copyState(start.box),
    from: copyState(start.box),
    trial: copyState(start.box),
    mid: copyState(start.box),
    scratch: new Float64Array(size),
  };
  let state = start;
  let net: Network | null = null;
  let factored: Factored | null = null;
  let unit: readonly number[] = [];
  let renewedAt = Number.NEGATIVE_INFINITY;
  let dayWas: boolean | null = null;
  for (let n = 0; n < steps; n++) {
    const hour = fromH + (n * h) / 3600;
    const roomC = roomAt(roomDay, hour + h / 7200);
    const isDay = isDayAt(model.enclosure.day, hour + 1e-9);
    if (!net || !factored || n * h - renewedAt >= options.renewS - 1e-6 || dayWas !== isDay) {
      const dtS = net ? n * h - renewedAt : 0;
      const convected = model.heaters.reduce(
        (s, p, i) =>
          s +
          (p.body.form === 'body' && !p.outside
            ? Math.max(0, bodyOutput(p, state.bodyC[i]!, surroundOf(p, state.box, roomC)).convectedW)
            : 0),
        0,
      );
      if (net && dtS > 0)
        state = { ...state, moisture: waterAfter(model, net, state, roomDay, roomC, hour - dtS / 3600, dtS, tally) };
      net = networkAt(model, state.box, roomC, convected);
      factored = factorNetwork(model, net, 1 / (gamma * h));
      unit = unitRise(model, net, factored, state, roomC, work);
      renewedAt = n * h;
      dayWas = isDay;
    } else
      for (let s = 0; s < net.outsideC.length; s++)
        if (!(model.enclosure.box.base.kind === 'stacked' && model.grid.patches[s]!.facing === 'floor'))
          net.outsideC[s] = roomC;
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
    const step = controlledStep(ctx, state, unit, tally);
    state = step.state;
    each({ hour: hour + h / 3600, state, net, now: step.now, roomC });
  }
  return state;
}

interface Workspace {
  readonly stage: BoxState;
  readonly from: BoxState;
  readonly trial: BoxState;
  readonly mid: BoxState;
  readonly scratch: Float64Array;
}

interface StepContext {
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

/** One step with its thermostats: tried as it stands, and again with the right share of power when a probe crosses. */
function controlledStep(
  ctx: StepContext,
  state: RunState,
  unit: readonly number[],
  tally: RunTally,
): { state: RunState; now: HeaterNow[] } {
  const { model } = ctx;
  const thermostats = model.enclosure.thermostats;
  const before = thermostats.map((_, t) => reading(ctx, state.box, heaterNows(ctx, state), t));
  let duty = thermostats.map((t, i) =>
    dutyAtStart(
      ctx,
      t.control === 'on-off' ? state.duty[i]! : proportionalDuty(t, setOf(ctx, i), state.probeC[i]!),
      i,
      state,
    ),
  );
  let tried = heatStep(ctx, state, duty);
  let after = thermostats.map((_, t) =>
    laggedReading(state.probeC[t]!, before[t]!, reading(ctx, tried.box, tried.now, t), ctx.options.stepS, probeLagS),
  );
  const nextDuty = [...duty];
  let again = false;
  thermostats.forEach((t, i) => {
    if (stuckDuty(ctx, i) !== null) return;
    const setC = setOf(ctx, i);
    if (t.control === 'on-off') {
      const on = state.duty[i]! > 0.5;
      const at = crossing(state.probeC[i]!, after[i]!, on ? offAbove(t, setC) : onBelow(t, setC), on);
      const must = on ? state.probeC[i]! >= offAbove(t, setC) : state.probeC[i]! <= onBelow(t, setC);
      if (at === null && !must) return;
      const share = at ?? 0;
      duty = duty.map((d, k) => (k === i ? (on ? share : 1 - share) : d));
      nextDuty[i] = on ? 0 : 1;
      tally.switches++;
      again = true;
    } else {
      // power at which duty and the reading it leads to agree at the step's end
      const rise = unit[i]!;
      const slope = rise / Math.max(t.bandK, 0.05);
      const free = after[i]! - duty[i]! * rise;
      const d = Math.max(0, Math.min(1, (0.5 + (setC - free) / Math.max(t.bandK, 0.05)) / (1 + slope)));
      if (Math.abs(d - duty[i]!) > 1e-4) {
        duty = duty.map((x, k) => (k === i ? d : x));
        again = true;
      }
      nextDuty[i] = d;
    }
  });
  if (again) {
    tried = heatStep(ctx, state, duty);
    after = thermostats.map((_, t) =>
      laggedReading(state.probeC[t]!, before[t]!, reading(ctx, tried.box, tried.now, t), ctx.options.stepS, probeLagS),
    );
  }
  const cutOpen = thermostats.map(
    (t, i) => t.cutOutC !== null && (state.cutOpen[i]! ? after[i]! > t.cutOutC - 2 : after[i]! > t.cutOutC),
  );
  settleAccounts(ctx, state, tried, tally);
  return {
    state: {
      box: copyState(tried.box),
      bodyC: tried.bodyC,
      probeC: after,
      duty: nextDuty,
      cutOpen,
      moisture: state.moisture,
    },
    now: tried.now,
  };
}

const setOf = (ctx: StepContext, t: number): number =>
  ctx.isDay ? ctx.model.enclosure.thermostats[t]!.setDayC : ctx.model.enclosure.thermostats[t]!.setNightC;

function stuckDuty(ctx: StepContext, t: number): number | null {
  const s = ctx.options.stuck;
  return s && s.thermostat === t && ctx.hour >= s.fromH - 1e-9 ? s.duty : null;
}

function dutyAtStart(ctx: StepContext, duty: number, t: number, state: RunState): number {
  if (state.cutOpen[t]) return 0;
  return stuckDuty(ctx, t) ?? duty;
}

function reading(ctx: StepContext, box: BoxState, now: readonly HeaterNow[], t: number): number {
  return ctx.options.probeOverride?.(t, box, ctx.roomC) ?? probeReading(ctx.model, box, now, t);
}

function heaterNows(ctx: StepContext, state: RunState): HeaterNow[] {
  return ctx.model.heaters.map((path, h) => {
    if (path.body.form === 'area')
      return { powerW: 0, bodyC: state.bodyC[h]!, convectedW: 0, radiatedW: 0, shortWaveW: 0 };
    const o = bodyOutput(path, state.bodyC[h]!, surroundOf(path, state.box, ctx.roomC));
    return { powerW: 0, bodyC: state.bodyC[h]!, convectedW: o.convectedW, radiatedW: o.radiatedW, shortWaveW: 0 };
  });
}

interface Tried {
  readonly box: BoxState;
  readonly bodyC: number[];
  readonly now: HeaterNow[];
  readonly powerW: number[];
  readonly outJ: number;
  readonly keptJ: number;
  readonly bodyJ: number;
}

/** Electrical power of each heater during the step [W]. */
function stepPower(ctx: StepContext, duty: readonly number[]): number[] {
  const { model, options, hour } = ctx;
  return model.heaters.map((path, h) => {
    if (options.powerCut && hour >= options.powerCut.fromH - 1e-9 && hour < options.powerCut.toH - 1e-9) return 0;
    if (options.dead && options.dead.heater === h && hour >= options.dead.fromH - 1e-9) return 0;
    const t = model.enclosure.thermostats.findIndex((x) => x.id === path.heater.thermostatId);
    return ratedW(model, h, ctx) * (t < 0 ? 1 : duty[t]!);
  });
}

/** The two implicit stages. Each heater's body is stepped on its own with the surroundings of the stage's start. */
function heatStep(ctx: StepContext, state: RunState, duty: readonly number[]): Tried {
  const { model, net, factored, roomC, work } = ctx;
  const h = ctx.options.stepS;
  const powerW = stepPower(ctx, duty);
  const sunlit = ambientSources(model, ctx.sunW, state.moisture);
  const one = heaterStage(ctx, state.box, state.bodyC, state.bodyC, powerW, 1 / (gamma * h), sunlit);
  solveNetwork(model, net, factored, one.sources, state.box, roomC, work.stage, work.scratch);
  // second stage starts from T_n + h (1 - gamma) f(stage one) = T_n + ((1 - gamma)/gamma)(stage one - T_n)
  const lift = (1 - gamma) / gamma;
  blend(state.box, work.stage, lift, work.from);
  const bodyFrom = state.bodyC.map((t, i) => t + lift * (one.bodyC[i]! - t));
  const two = heaterStage(ctx, work.stage, one.bodyC, bodyFrom, powerW, 1 / (gamma * h), sunlit);
  solveNetwork(model, net, factored, two.sources, work.from, roomC, work.trial, work.scratch);
  const outJ = h * ((1 - gamma) * heatOutW(net, work.stage, roomC) + gamma * heatOutW(net, work.trial, roomC));
  const kept = (now: readonly HeaterNow[]) => now.reduce((s, v, i) => s + keptW(model, i, v), 0);
  let bodyJ = 0;
  model.heaters.forEach((p, i) => {
    if (p.body.form === 'body') bodyJ += p.body.heatCapacity * (two.bodyC[i]! - state.bodyC[i]!);
  });
  return {
    box: work.trial,
    bodyC: two.bodyC,
    now: two.now,
    powerW,
    outJ,
    keptJ: h * ((1 - gamma) * kept(one.now) + gamma * kept(two.now)),
    bodyJ,
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
): { sources: Sources; bodyC: number[]; now: HeaterNow[] } {
  const { model, roomC } = ctx;
  const sources: Sources = { airW: sunlit.airW.slice(), surfaceW: sunlit.surfaceW.slice(), matW: sunlit.matW.slice() };
  const bodyC: number[] = [];
  const now = model.heaters.map((path, h) => {
    const w = powerW[h]!;
    if (path.body.form === 'area') {
      addHeater(model, h, sources, 0, 0, 0, w);
      bodyC.push(guess[h]!);
      return { powerW: w, bodyC: guess[h]!, convectedW: 0, radiatedW: 0, shortWaveW: 0 };
    }
    const seen = surroundOf(path, around, roomC);
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
  return { sources, bodyC, now };
}

function blend(a: BoxState, b: BoxState, f: number, out: BoxState): void {
  for (let i = 0; i < a.airC.length; i++) out.airC[i] = a.airC[i]! + f * (b.airC[i]! - a.airC[i]!);
  for (let s = 0; s < a.surfaceC.length; s++) {
    out.surfaceC[s] = a.surfaceC[s]! + f * (b.surfaceC[s]! - a.surfaceC[s]!);
    const x = a.behindC[s]!;
    const y = b.behindC[s]!;
    const z = out.behindC[s]!;
    for (let j = 0; j < x.length; j++) z[j] = x[j]! + f * (y[j]! - x[j]!);
  }
}

/** Rise of each thermostat's reading by the step's end if its heaters go from off to full [K], for the proportional kinds. */
function unitRise(
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
    // probe lag: the reading follows only this share within one step
    const share = 1 - Math.exp(-1 / (gamma * factored.perS * probeLagS * gamma));
    return Math.max(0, here) * Math.max(0.05, Math.min(1, share));
  });
}

function settleAccounts(ctx: StepContext, state: RunState, tried: Tried, tally: RunTally): void {
  const { model } = ctx;
  const h = ctx.options.stepS;
  const sunJ = ctx.sunW * h;
  const sunKeptJ = model.sunShares.reduce((s, v) => s + v, 0) * sunJ;
  const power = tried.powerW.reduce((s, w) => s + w, 0) * h;
  const latentJ =
    h * (state.moisture.airW.reduce((s, v) => s + v, 0) + state.moisture.surfaceW.reduce((s, v) => s + v, 0));
  const storedChange = storedJ(model, tried.box) - storedJ(model, state.box);
  tally.heatInJ += power + sunJ;
  tally.heatOutJ += tried.outJ;
  tally.latentJ += latentJ;
  tally.directJ += power - tried.bodyJ - tried.keptJ + (sunJ - sunKeptJ);
  tried.powerW.forEach((w, i) => {
    tally.heaterJ[i] = tally.heaterJ[i]! + w * h;
  });
  const miss = tried.keptJ + sunKeptJ + latentJ - tried.outJ - storedChange;
  tally.heatMissJ += Math.abs(miss);
  tally.storedJ += storedChange + tried.bodyJ;
}

function waterAfter(
  model: BoxModel,
  net: Network,
  state: RunState,
  roomDay: RoomDay,
  roomC: number,
  fromH: number,
  dtS: number,
  tally: RunTally,
): Moisture {
  const spray = sprayIn(model, fromH, fromH + dtS / 3600);
  const room = roomRatioOf((roomDay.lowC + roomDay.highC) / 2, roomDay.rhPct);
  void roomC;
  const m = moistureStep(model, net, state.box, state.moisture, room, dtS, spray);
  const source = m.bowlKgPerS + m.substrateKgPerS + m.sprayKgPerS;
  tally.waterInKg += source * dtS;
  tally.waterOutKg += m.outKgPerS * dtS;
  tally.condensedKg += m.condensedKgPerS * dtS;
  tally.waterMissKg += m.balanceRelative * Math.max(1e-9, Math.abs(source) + Math.abs(m.outKgPerS)) * dtS;
  return m;
}

/** Water sprayed between two hours [kg]. */
function sprayIn(model: BoxModel, fromH: number, toH: number): number {
  const misting = model.enclosure.misting;
  if (!misting || misting.atHours.length === 0) return 0;
  const each = misting.waterGPerDay / 1000 / misting.atHours.length;
  let kg = 0;
  for (let day = Math.floor(fromH / 24); day <= Math.floor(toH / 24); day++)
    for (const at of misting.atHours) if (day * 24 + at >= fromH - 1e-9 && day * 24 + at < toH - 1e-9) kg += each;
  return kg;
}
