// A box at rest: fixed room, thermostats doing what they do on average, everything settled.
// Linear solve at the present conductances, repeated until nothing moves; the heat balance of the last solve
// closes to rounding, and the change of the last round says how settled the conductances are.
import type { SteadyAnswer } from './answer.ts';
import { mainHeater } from './grid.ts';
import { bodyOutput, bodyTemperature, surroundOf } from './heater-body.ts';
import type { BoxModel } from './model.ts';
import { addLatentSlopes, dryStart, type Moisture, moistureStep, partWay, saturatedRatio } from './moisture.ts';
import {
  type AirWays,
  type BoxState,
  copyState,
  factorNetwork,
  type Network,
  networkAt,
  startState,
} from './network.ts';
import { type HeaterNow, probeReading } from './places.ts';
import { readingValue } from './reading.ts';
import { noSources, type Sources, solveNetwork } from './solve-network.ts';
import { steadyAnswer } from './steady-answer.ts';
import { bodiesRiseW } from './stirring.ts';

export interface SteadyConditions {
  readonly roomC: number;
  readonly roomRhPct: number;
  /** Sun on the outside of the front glass [W/m2]. */
  readonly sunWPerM2: number;
  /** Day or night set points; day-only heaters are off at night. */
  readonly isDay: boolean;
  /** Fixed power of every heater instead of what the thermostats would do [W]. */
  readonly fixedW?: readonly number[];
  /** Share of their power at which all thermostats stick, for faults: 1 = stuck on, 0 = off. */
  readonly stuckDuty?: number;
  /** Hold the basking surface at this temperature instead of the main heater's probe at its set point: what a keeper
   *  does who trims the dial by a thermometer at the basking site. The probe's reading is then the dial to set [degC]. */
  readonly holdBaskingC?: number;
  /** Set point of each thermostat instead of the enclosure's own [degC]. */
  readonly setC?: readonly number[];
  /** Air that goes its ways as in another state, to tell what warmth does from what its draught does. */
  readonly heldAir?: AirWays;
  /** The floor lies wet all over, as after more spray than dries, whatever the enclosure says of spraying. */
  readonly floorWet?: boolean;
}

export interface SettledBox {
  readonly state: BoxState;
  readonly net: Network;
  readonly now: readonly HeaterNow[];
  readonly probeC: readonly number[];
  readonly moisture: Moisture;
  readonly iterations: number;
  readonly change: number;
  readonly sunW: number;
}

/** Proportional band that stands for an on/off thermostat on average: its mean reading stays within half of this of the set point [K]. */
const onOffBand = 0.2;
/** A round that changes no temperature by more than this is the last, unless the caller is content with less [K]; our choice. */
const usualSettledK = 1e-3;
const mostRounds = 100;
/** Share of the way that each round goes: the whole way at first, less where a wet or bistable box keeps swinging. */
const calmAt = (round: number): number => (round < 14 ? 1 : round < 30 ? 0.6 : round < 55 ? 0.35 : 0.2);
/** No temperature moves further than this in one round, so that hot wet boxes find their rest [K]. */
const longestLeapK = 25;

/** Solve a box at rest.
 *  @param warm a nearby solution to start from   @param settledK change of the last round that is small enough [K] */
export function settleBox(
  model: BoxModel,
  conditions: SteadyConditions,
  warm?: SettledBox,
  settledK = usualSettledK,
): SettledBox {
  const { roomC } = conditions;
  const room = roomRatioOf(roomC, conditions.roomRhPct);
  let state = warm ? copyState(warm.state) : startState(model, roomC + 5);
  let moisture = warm ? warm.moisture : dryStart(model, room);
  let duty = model.enclosure.thermostats.map((_, t) => (warm ? dutyFrom(model, warm, t) : 0.5));
  let bodyC = model.heaters.map((_, h) => (warm ? warm.now[h]!.bodyC : 150));
  const sunW = conditions.sunWPerM2 * model.sunAreaM2 * model.sunThroughFrac;
  const scratch = new Float64Array(state.airC.length + state.surfaceC.length);
  const sprayKgPerS = conditions.floorWet
    ? Number.POSITIVE_INFINITY
    : (model.enclosure.misting?.waterGPerDay ?? 0) / 1000 / 86400;
  let change = Number.POSITIVE_INFINITY;
  let rounds = 0;
  let settledNet: Network | null = null;
  let last: Round | null = null;
  let now: HeaterNow[] = [];
  let probes: number[] = [];
  const responses = model.heaters.map(() => startState(model, 0));
  const base = startState(model, 0);
  for (; rounds < mostRounds; rounds++) {
    const calm = calmAt(rounds);
    const bodiesW = bodiesRiseW(model, now.length > 0 ? now.map((n) => n.bodyC) : bodyC, state, roomC);
    const net = networkAt(model, state, roomC, bodiesW, conditions.heldAir);
    settledNet = net;
    if (rounds > 0 || warm) {
      const wetter = moistureStep(model, net, state, moisture, room, 0, sprayKgPerS);
      moisture = partWay(moisture, wetter, calm);
    }
    addLatentSlopes(net, moisture);
    const factored = factorNetwork(model, net, 0);
    const ratings = model.heaters.map((_, h) => ratedW(model, h, conditions));
    const splits = model.heaters.map((_, h) =>
      splitAt(
        model,
        h,
        state,
        roomC,
        bodyC[h]!,
        ratings[h]! * Math.max(leastShare, heaterDuty(model, h, duty, conditions)),
      ),
    );
    bodyC = splits.map((s) => s.bodyC);
    const still = ambientSources(model, sunW, moisture);
    for (const [h, { idleW }] of splits.entries()) addHeater(model, h, still, idleW, -idleW, 0, 0);
    solveNetwork(model, net, factored, still, null, roomC, base, scratch);
    model.heaters.forEach((_, h) => {
      const sources = noSources(model);
      addHeater(model, h, sources, splits[h]!.convected, splits[h]!.radiated, splits[h]!.shortWave, splits[h]!.sheet);
      solveNetwork(model, net, factored, sources, null, 0, responses[h]!, scratch, false);
    });
    const wanted = settleDuty(model, conditions, base, responses, ratings, splits, duty);
    duty = calm === 1 ? wanted : duty.map((d, t) => d + calm * (wanted[t]! - d));
    const next = combine(
      base,
      responses,
      ratings.map((w, h) => w * heaterDuty(model, h, duty, conditions)),
    );
    now = model.heaters.map((_, h) => {
      const w = ratings[h]! * heaterDuty(model, h, duty, conditions);
      const s = splits[h]!;
      return {
        powerW: w,
        bodyC: w >= s.atW ? s.bodyC : s.idleC + ((s.bodyC - s.idleC) * w) / s.atW,
        convectedW: s.idleW + w * s.convected,
        radiatedW: w * s.radiated - s.idleW,
        shortWaveW: w * s.shortWave,
      };
    });
    change = largestChange(state, next);
    if ((change < settledK && rounds > 1) || rounds === mostRounds - 1) {
      state = next;
      break;
    }
    const whole = calm === 1 && change <= longestLeapK;
    const guess = whole && last && change < guessBelowK ? guessFrom(last, state, next) : next;
    last = whole ? { state, next } : null;
    state = guess === next ? leap(state, next, Math.min(calm, longestLeapK / change)) : guess;
  }
  probes = model.enclosure.thermostats.map((_, t) => probeReading(model, state, now, t));
  if (!settledNet) throw new Error('a box at rest needs at least one round');
  return { state, net: settledNet, now, probeC: probes, moisture, iterations: rounds + 1, change, sunW };
}

/** The answer at rest, in named places.
 *  @param model from buildModel   @param conditions room and day or night
 *  Assumes everything settled; a real box needs hours. Checks: cross/zonal, cross/cfd. */
export function solveSteady(model: BoxModel, conditions: SteadyConditions, warm?: SettledBox): SteadyAnswer {
  return steadyAnswer(model, conditions, settleBox(model, conditions, warm));
}

export const roomRatioOf = (roomC: number, rhPct: number): number => saturatedRatio(roomC) * (rhPct / 100);

/** Power that heater h may draw in these conditions [W]. */
export function ratedW(model: BoxModel, h: number, conditions: { readonly isDay: boolean }): number {
  const heater = model.enclosure.heaters[h]!;
  if (heater.period === 'day' && !conditions.isDay) return 0;
  return heater.powerW * model.parameters.heaterPower;
}

function heaterDuty(model: BoxModel, h: number, duty: readonly number[], conditions: SteadyConditions): number {
  const heater = model.enclosure.heaters[h]!;
  if (conditions.fixedW)
    return heater.powerW > 0 ? (conditions.fixedW[h] ?? 0) / (heater.powerW * model.parameters.heaterPower) : 0;
  const t = model.enclosure.thermostats.findIndex((x) => x.id === heater.thermostatId);
  if (t < 0) return 1;
  return conditions.stuckDuty ?? duty[t]!;
}

/** Least share of its power at which a heater's split is worked out; our choice. */
const leastShare = 0.02;

/** What leaves a heater: `idleW` goes from what it sees through its body into the air even without current, the rest is
 *  for each watt of current. */
interface Split {
  readonly idleW: number;
  readonly convected: number;
  readonly radiated: number;
  readonly shortWave: number;
  readonly sheet: number;
  /** The body's temperature at the power that the split was worked out for, and without current. */
  readonly bodyC: number;
  readonly atW: number;
  readonly idleC: number;
}

const sheetSplit = { idleW: 0, convected: 0, radiated: 0, shortWave: 0, sheet: 1, atW: 0 };

/** How heat leaves heater h at its present load. */
function splitAt(model: BoxModel, h: number, state: BoxState, roomC: number, guessC: number, powerW: number): Split {
  const path = model.heaters[h]!;
  if (path.body.form === 'area') return { ...sheetSplit, bodyC: guessC, idleC: guessC };
  const around = surroundOf(path, state, roomC);
  const idleC = bodyTemperature(path, 0, around, around.airC + 1);
  const idleW = bodyOutput(path, idleC, around).convectedW;
  if (powerW <= 0) return { idleW, convected: 0, radiated: 0, shortWave: 0, sheet: 0, bodyC: idleC, atW: 0, idleC };
  const left = 1 - path.shortWaveFrac;
  const bodyC = bodyTemperature(path, powerW * left, around, Math.max(guessC, around.airC + 5));
  const convected = (bodyOutput(path, bodyC, around).convectedW - idleW) / powerW;
  const shortWave = path.shortWaveFrac;
  return { idleW, convected, radiated: left - convected, shortWave, sheet: 0, bodyC, atW: powerW, idleC };
}

/** Add heat of heater h to the sources. */
export function addHeater(
  model: BoxModel,
  h: number,
  sources: Sources,
  convectedW: number,
  radiatedW: number,
  shortWaveW: number,
  sheetW: number,
): void {
  const path = model.heaters[h]!;
  const { airW, surfaceW, matW } = sources;
  for (const part of path.sheet) {
    const to = path.heater.kind === 'heat-mat' ? matW : surfaceW;
    to[part.patch] = to[part.patch]! + sheetW * part.share;
  }
  if (path.body.form === 'area') return;
  const { plumeAir, plumePatch, longWave, shortWave } = path;
  const inside = path.outside ? 0 : convectedW;
  for (let a = 0; a < plumeAir.length; a++) airW[a] = airW[a]! + inside * plumeAir[a]!;
  for (let s = 0; s < longWave.length; s++)
    surfaceW[s] = surfaceW[s]! + radiatedW * longWave[s]! + shortWaveW * shortWave[s]! + inside * plumePatch[s]!;
}

export function ambientSources(model: BoxModel, sunW: number, moisture: Moisture): Sources {
  const sources = noSources(model);
  for (let a = 0; a < sources.airW.length; a++) sources.airW[a] = moisture.airW[a]!;
  for (let s = 0; s < sources.surfaceW.length; s++)
    sources.surfaceW[s] =
      moisture.surfaceW[s]! + moisture.surfaceSlope[s]! * moisture.atSurfaceC[s]! + sunW * model.sunShares[s]!;
  return sources;
}

/** Duties at which every thermostat agrees with its own probe. Readings are linear in the watts, so each is
 *  worked out from the answer without heaters and the rise per watt of each heater. */
function settleDuty(
  model: BoxModel,
  conditions: SteadyConditions,
  base: BoxState,
  responses: readonly BoxState[],
  ratings: readonly number[],
  splits: readonly Split[],
  duty: readonly number[],
): number[] {
  const thermostats = model.enclosure.thermostats;
  const next = [...duty];
  if (thermostats.length === 0 || conditions.fixedW || conditions.stuckDuty !== undefined) return next;
  const trimmed = conditions.holdBaskingC === undefined ? -1 : mainThermostat(model);
  const lines = thermostats.map((_, t) => {
    const reading = t === trimmed ? model.readings.basking : model.readings.probes[t]!;
    const none = splits.map(() => ({ radiatedW: 0, shortWaveW: 0 }));
    const perW = splits.map((s, h) =>
      readingValue(
        reading,
        responses[h]!,
        none.map((n, k) => (k === h ? { radiatedW: s.radiated, shortWaveW: s.shortWave } : n)),
      ),
    );
    const idle = splits.map((s) => ({ radiatedW: -s.idleW, shortWaveW: 0 }));
    return { still: readingValue(reading, base, idle) + (t === trimmed ? 0 : model.parameters.probeErrorK), perW };
  });
  const passes = thermostats.length > 1 ? 12 : 1;
  for (let pass = 0; pass < passes; pass++) {
    thermostats.forEach((thermostat, t) => {
      const held = t === trimmed;
      const set = held
        ? conditions.holdBaskingC!
        : (conditions.setC?.[t] ?? (conditions.isDay ? thermostat.setDayC : thermostat.setNightC));
      const band = held || thermostat.control === 'on-off' ? onOffBand : Math.max(onOffBand, thermostat.bandK);
      const line = lines[t]!;
      const at = (d: number) =>
        ratings.reduce(
          (v, w, h) =>
            v +
            w *
              heaterDuty(
                model,
                h,
                next.map((x, i) => (i === t ? d : x)),
                conditions,
              ) *
              line.perW[h]!,
          line.still,
        );
      const off = at(0);
      const on = at(1);
      // duty = 1/2 + (set - probe)/band and probe = off + duty (on - off), clipped
      next[t] = Math.max(0, Math.min(1, (0.5 + (set - off) / band) / (1 + (on - off) / band)));
    });
  }
  return next;
}

/** Thermostat that drives the heater of the basking site; -1 for none. */
export function mainThermostat(model: BoxModel): number {
  const main = mainHeater(model.enclosure);
  return main < 0
    ? -1
    : model.enclosure.thermostats.findIndex((t) => t.id === model.enclosure.heaters[main]!.thermostatId);
}

function dutyFrom(model: BoxModel, warm: SettledBox, t: number): number {
  const h = model.enclosure.heaters.findIndex((x) => x.thermostatId === model.enclosure.thermostats[t]!.id);
  const rating = h < 0 ? 0 : model.enclosure.heaters[h]!.powerW * model.parameters.heaterPower;
  return rating > 0 ? warm.now[h]!.powerW / rating : 0.5;
}

function combine(base: BoxState, responses: readonly BoxState[], watts: readonly number[]): BoxState {
  const out = copyState(base);
  responses.forEach((r, h) => {
    const w = watts[h]!;
    if (w === 0) return;
    for (let k = 0; k < out.row.length; k++) out.row[k] = out.row[k]! + w * r.row[k]!;
  });
  return out;
}

/** Where a round started and what it came to. */
interface Round {
  readonly state: BoxState;
  readonly next: BoxState;
}

/** Rounds whose changes are larger than this say little about where the box will rest [K]; our choice. */
const guessBelowK = 3;
/** Largest part of the way back, and of the way on, that a guess may take; our choice. */
const furthestBack = 0.8;
const furthestOn = 1;

/** Where two rounds in a row point to: the mixture of what they came to whose change, if rounds were linear, is least.
 *  Rest is where it was; swinging and creeping boxes get there in fewer rounds. Source: Anderson's mixing of 1965, of depth one (memory). */
function guessFrom(before: Round, state: BoxState, next: BoxState): BoxState {
  let along = 0;
  let square = 0;
  for (let k = 0; k < state.row.length; k++) {
    const f = next.row[k]! - state.row[k]!;
    const d = f - (before.next.row[k]! - before.state.row[k]!);
    along += f * d;
    square += d * d;
  }
  if (square === 0) return next;
  const back = Math.max(-furthestOn, Math.min(furthestBack, along / square));
  const out = copyState(next);
  for (let k = 0; k < out.row.length; k++) out.row[k] = out.row[k]! + back * (before.next.row[k]! - out.row[k]!);
  return out;
}

function leap(a: BoxState, b: BoxState, part: number): BoxState {
  const out = copyState(a);
  for (let k = 0; k < out.row.length; k++) out.row[k] = out.row[k]! + part * (b.row[k]! - out.row[k]!);
  return out;
}

function largestChange(a: BoxState, b: BoxState): number {
  let most = 0;
  for (let i = 0; i < a.airC.length; i++) most = Math.max(most, Math.abs(a.airC[i]! - b.airC[i]!));
  for (let i = 0; i < a.surfaceC.length; i++) most = Math.max(most, Math.abs(a.surfaceC[i]! - b.surfaceC[i]!));
  return most;
}
