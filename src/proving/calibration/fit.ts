// The fit: from settled windows to what is now believed about the box, its dial, its misfits and the instruments.
// Gauss-Newton on the posterior (priors and instrument errors as prior knowledge), slopes by finite differences of the
// simulator's resting answers, Laplace's normal approximation at the end; docs/theory/calibration.md says why.
import type { LogPlace, Quantity } from '../reading-log.ts';
import {
  type Output,
  outputIndex,
  type PeriodTable,
  type Responder,
  type ResponsePlan,
  readTable,
  responder,
} from './box-response.ts';
import { handSdK, misfitSd, windowSdK, windowSdRh } from './misfit.ts';
import { choleskyFactor, choleskySolve, inverseDiagonal } from './positive-matrix.ts';

/** One number to be explained. */
export interface Observation {
  readonly quantity: Quantity;
  readonly place: Exclude<LogPlace, 'room'>;
  readonly isDay: boolean;
  readonly value: number;
  readonly roomC: number;
  /** Group of readings that share one instrument's error. */
  readonly instrument: number;
  readonly single: boolean;
  /** Windows of the same stretch and channel, this one among them: together they count about as one. */
  readonly alike: number;
  /** Middle of the window, wall-clock seconds. */
  readonly atS: number;
}

export interface FitInput {
  readonly plan: ResponsePlan;
  readonly observations: readonly Observation[];
  /** One standard deviation of each instrument's fixed error, in its own unit. */
  readonly instrumentSd: readonly number[];
  /** One standard deviation of the room's fixed error [K]: its instrument, or a guess when it was not read. */
  readonly roomSdK: number;
}

export interface Fit {
  readonly input: FitInput;
  readonly layout: StateLayout;
  /** Most likely state: scores, then room, instruments and misfits in standard deviations. */
  readonly state: Float64Array;
  /** Lower Cholesky factor of the posterior precision. */
  readonly factor: Float64Array;
  /** Posterior standard deviation of each entry, before readings 1. */
  readonly sd: Float64Array;
  readonly residuals: readonly { readonly observation: Observation; readonly residual: number; readonly sd: number }[];
  readonly rounds: number;
}

/** Where each unknown stands in the state vector. */
export interface StateLayout {
  readonly scores: number;
  readonly room: number;
  readonly instruments: number;
  /** Keys "quantity place" and "quantity place day|night", from `misfits` on. */
  readonly misfits: number;
  readonly keys: readonly string[];
  readonly size: number;
}

export const misfitKey = (o: { quantity: Quantity; place: LogPlace }): string => `${o.quantity} ${o.place}`;
export const periodKey = (o: { quantity: Quantity; place: LogPlace; isDay: boolean }): string =>
  `${misfitKey(o)} ${o.isDay ? 'day' : 'night'}`;

export function layoutOf(input: FitInput): StateLayout {
  const keys = [...new Set(input.observations.flatMap((o) => [misfitKey(o), periodKey(o)]))];
  const scores = input.plan.unknowns.size;
  const misfits = scores + 1 + input.instrumentSd.length;
  return { scores, room: scores, instruments: scores + 1, misfits, keys, size: misfits + keys.length };
}

/** Output of the simulator that explains a reading. */
export function outputOf(o: { quantity: Quantity; place: LogPlace }): number {
  if (o.quantity === 'powerW') return outputIndex('power');
  if (o.quantity === 'rhPct')
    return outputIndex(o.place.startsWith('warm') || o.place === 'basking-surface' ? 'warm-rh' : 'cool-rh');
  return outputIndex(o.place as Output);
}

const mostRounds = 4;
/** Longest move of one score in one round. */
const longestMove = 1.5;
/** Step of the finite differences, in scores. */
const differenceStep = 0.3;

/** Fit the box to readings. @param input at least one observation */
export function fitBox(input: FitInput, respond: Responder = responder(input.plan)): Fit {
  const layout = layoutOf(input);
  let state: Float64Array = new Float64Array(layout.size);
  let rounds = 0;
  let slopes: Slopes | null = null;
  for (;;) {
    // The slopes are renewed while the box still moves far; they change little once it does not.
    if (slopes === null || rounds < 2) slopes = slopesAt(input, respond, state);
    else slopes = { byScore: slopes.byScore, table: respond.at(state), around: state.slice(0, layout.scores) };
    const system = normalEquations(input, layout, slopes, state);
    const factor = choleskyFactor(system.precision, layout.size);
    const target = choleskySolve(factor, layout.size, system.rhs);
    let most = 0;
    const next = state.slice();
    for (let i = 0; i < layout.size; i++) {
      const move = target[i]! - state[i]!;
      const kept = i < layout.scores ? Math.max(-longestMove, Math.min(longestMove, move)) : move;
      if (i < layout.scores) most = Math.max(most, Math.abs(kept));
      next[i] = state[i]! + kept;
    }
    state = next;
    rounds++;
    if (rounds >= mostRounds || (most < 0.15 && rounds > 1)) {
      return {
        input,
        layout,
        state,
        factor,
        sd: rootOf(inverseDiagonal(factor, layout.size)),
        residuals: system.residuals,
        rounds,
      };
    }
  }
}

interface Slopes {
  readonly around: Float64Array;
  readonly table: ReturnType<Responder['at']>;
  /** Change of each table entry by each score. */
  readonly byScore: readonly ReturnType<Responder['at']>[];
}

function slopesAt(input: FitInput, respond: Responder, state: Float64Array): Slopes {
  const n = input.plan.unknowns.size;
  const around = state.slice(0, n);
  const table = respond.at(around);
  const byScore = Array.from({ length: n }, (_, i) => {
    const moved = around.slice();
    const step = moved[i]! > 0 ? -differenceStep : differenceStep;
    moved[i] = moved[i]! + step;
    const there = respond.at(moved);
    const slope = (a: PeriodTable | null, b: PeriodTable | null): PeriodTable | null =>
      a && b && a.map((row, r) => row.map((v, o) => (b[r]![o]! - v) / step));
    return { day: slope(table.day, there.day), night: slope(table.night, there.night) };
  });
  return { around, table, byScore };
}

function normalEquations(input: FitInput, layout: StateLayout, slopes: Slopes, state: Float64Array) {
  const n = layout.size;
  const precision = new Float64Array(n * n);
  const rhs = new Float64Array(n);
  for (let i = 0; i < n; i++) precision[i * n + i] = 1;
  const residuals: { observation: Observation; residual: number; sd: number }[] = [];
  for (const o of input.observations) {
    const line = linearised(input, layout, slopes, state, o);
    if (!Number.isFinite(line.value)) continue;
    const sd = scatterOf(o);
    const miss = o.value - line.value;
    // far-off readings count less (Huber's weight beyond two and a half standard deviations)
    const weight = Math.min(1, (2.5 * sd) / Math.max(1e-9, Math.abs(miss))) / (sd * sd);
    residuals.push({ observation: o, residual: miss, sd });
    let aim = miss;
    for (const [i, g] of line.gradient) aim += g * state[i]!;
    for (const [i, gi] of line.gradient) {
      rhs[i] = rhs[i]! + weight * gi * aim;
      for (const [j, gj] of line.gradient) precision[i * n + j] = precision[i * n + j]! + weight * gi * gj;
    }
  }
  return { precision, rhs, residuals };
}

/** What the present state says a reading should be, and how that changes with each unknown. */
function linearised(input: FitInput, layout: StateLayout, slopes: Slopes, state: Float64Array, o: Observation) {
  const roomsC = o.isDay ? input.plan.dayRoomsC : input.plan.nightRoomsC;
  const pick = (t: { day: PeriodTable | null; night: PeriodTable | null }): PeriodTable => (o.isDay ? t.day : t.night)!;
  const out = outputOf(o);
  const roomError = state[layout.room]! * input.roomSdK;
  const roomC = o.roomC - roomError;
  const model = readTable(pick(slopes.table), roomsC, out, roomC);
  const rise = o.quantity === 'tempC' ? model.value - roomC : model.value;
  const misfit = misfitSd(o.quantity, o.place, rise);
  const gradient: [number, number][] = [];
  for (const [i, s] of slopes.byScore.entries()) gradient.push([i, readTable(pick(s), roomsC, out, roomC).value]);
  gradient.push([layout.room, -model.slope * input.roomSdK]);
  const at = layout.instruments + o.instrument;
  gradient.push([at, input.instrumentSd[o.instrument]!]);
  const placeAt = layout.misfits + layout.keys.indexOf(misfitKey(o));
  const periodAt = layout.misfits + layout.keys.indexOf(periodKey(o));
  gradient.push([placeAt, misfit.place], [periodAt, misfit.period]);
  const value =
    model.value +
    state[at]! * input.instrumentSd[o.instrument]! +
    state[placeAt]! * misfit.place +
    state[periodAt]! * misfit.period;
  return { value, gradient };
}

/** Scatter of a window about its box at rest, in the reading's unit. */
function scatterOf(o: Observation): number {
  const many = Math.sqrt(Math.max(1, o.alike));
  if (o.quantity === 'rhPct') return many * (o.single ? windowSdRh * 1.5 : windowSdRh);
  if (o.quantity === 'powerW') return many * Math.max(1, 0.05 * Math.abs(o.value));
  return many * (o.single ? handSdK : windowSdK);
}

const rootOf = (v: Float64Array): Float64Array => v.map((x) => Math.sqrt(x));
