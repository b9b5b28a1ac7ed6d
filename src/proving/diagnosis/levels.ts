// How warm does each place stand by day and by night, and what would it be under each mistake? The simulator is run at
// rest for likely versions of the box, healthy and with the mistake made, and compared with the levels that were read.
import type { Enclosure } from '../../physics/enclosure.ts';
import { warmEndOf } from '../../physics/grid.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import type { MaterialTable } from '../../physics/material.ts';
import { normalQuantile, type Priors, priorValueAt } from '../../physics/priors.ts';
import { bestParameters, boxGeometry, modelFrom, type Parameters, settleBox } from '../../physics/simulate.ts';
import { steadyAnswer } from '../../physics/steady-answer.ts';
import { seededUniform } from '../../shared/seeded.ts';
import type { InsidePlace } from '../calibration/forecast.ts';
import { misfitSd } from '../calibration/misfit.ts';
import { choleskyFactor, choleskySolve } from '../calibration/positive-matrix.ts';
import type { Cause } from './cause.ts';

/** One level: the settled mean of a place by day or by night [degC]. */
export interface Level {
  readonly place: InsidePlace;
  readonly isDay: boolean;
  readonly valueC: number;
  readonly roomC: number;
  /** Change by the room, K for each K, and its error; null when the room hardly moved. */
  readonly bySlope: { readonly slope: number; readonly sd: number } | null;
}

export type State =
  | 'healthy'
  | Extract<Cause, 'no-thermostat' | 'stuck-off' | 'probe-cool-end' | 'dial-set-to-basking' | 'deep-substrate'>;

const likelyBoxes = 10;
/** Shortest box whose two ends differ enough for a probe at the wrong one to show [m]; our choice. */
const leastLengthM = 0.8;
/** Error of an unchecked sensor and scatter of a level, one standard deviation [K]. */
const sensorSdK = 0.5;
const levelSdK = 0.3;
/** Of a place's misfit that a forecast allows for, this share is allowed for here: a forecast must never be sure too
 *  early, a suspicion may be; set on practice homes. */
const levelMisfitShare = 0.65;

/** Step of the room for its slope [K]. */
const slopeStepK = 1.5;
/** How far the simulator's slope by the room may be off for a real box, one standard deviation; our choice. */
const slopeMisfit = 0.25;

export interface LevelInput {
  readonly enclosure: Enclosure;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  readonly levels: readonly Level[];
  /** What a keeper would dial who takes the basking temperature for the set point [degC]. */
  readonly baskingAimC: number;
}

/** Log-likelihood of the levels under each state that this box can be in. */
export function stateWeights(input: LevelInput): ReadonlyMap<State, number> {
  const sets = likelyParameters(input.priors);
  const out = new Map<State, number>();
  for (const state of statesOf(input)) {
    const made = withMistake(input, state);
    const geometry = boxGeometry(made.enclosure, input.materials);
    const rows = sets.map((parameters) => {
      const model = modelFrom(geometry, parameters);
      const at = (isDay: boolean, moreK: number) => {
        const some = input.levels.filter((l) => l.isDay === isDay);
        if (some.length === 0) return null;
        const conditions = { roomC: some[0]!.roomC + moreK, roomRhPct: 50, sunWPerM2: 0, isDay, ...made.conditions };
        return steadyAnswer(model, conditions, settleBox(model, conditions));
      };
      const here = { day: at(true, 0), night: at(false, 0) };
      const warmer = { day: at(true, slopeStepK), night: at(false, slopeStepK) };
      const pick = (from: typeof here, l: Level) => (l.isDay ? from.day : from.night)!.places[l.place] ?? Number.NaN;
      return input.levels.map((l) => ({ level: pick(here, l), slope: (pick(warmer, l) - pick(here, l)) / slopeStepK }));
    });
    const levelRows = rows.map((r) => r.map((x) => x.level));
    const slopeRows = rows.map((r) => r.map((x) => x.slope));
    out.set(state, logLikelihood(input.levels, levelRows) + slopeLikelihood(input.levels, slopeRows));
  }
  return out;
}

function statesOf({ enclosure, baskingAimC }: LevelInput): State[] {
  const states: State[] = ['healthy', 'no-thermostat', 'stuck-off'];
  // a dial that stands near the basking temperature anyway is no mistake to be found
  if (enclosure.thermostats.some((t) => Math.abs(t.setDayC - baskingAimC) >= 2.5)) states.push('dial-set-to-basking');
  // in a short box the wrong end is hardly another place
  if (enclosure.box.lengthM >= leastLengthM && enclosure.thermostats.some((t) => t.probe.at !== 'mat'))
    states.push('probe-cool-end');
  if (enclosure.heaters.some((h) => heaterBodies[h.kind].form === 'area' && h.kind === 'heat-mat'))
    states.push('deep-substrate');
  return states;
}

/** How much too deep a floor is laid over a mat [m]; our choice of a typical mistake. */
const tooDeepM = 0.04;

interface Made {
  readonly enclosure: Enclosure;
  readonly conditions: { readonly stuckDuty?: number };
}

function withMistake({ enclosure, baskingAimC }: LevelInput, state: State): Made {
  const plain = { enclosure, conditions: {} };
  if (state === 'no-thermostat') return { enclosure, conditions: { stuckDuty: 1 } };
  if (state === 'stuck-off') return { enclosure, conditions: { stuckDuty: 0 } };
  if (state === 'dial-set-to-basking') {
    const thermostats = enclosure.thermostats.map((t) => ({ ...t, setDayC: baskingAimC }));
    return { enclosure: { ...enclosure, thermostats }, conditions: {} };
  }
  if (state === 'probe-cool-end') {
    const { lengthM, heightM, depthM } = enclosure.box;
    const xM = warmEndOf(enclosure) === 'left' ? lengthM * 0.9 : lengthM * 0.1;
    const probe = { xM, yM: depthM / 2, zM: Math.min(0.1, heightM / 3), at: 'air' as const };
    return {
      enclosure: { ...enclosure, thermostats: enclosure.thermostats.map((t) => ({ ...t, probe })) },
      conditions: {},
    };
  }
  if (state === 'deep-substrate') {
    const now = enclosure.substrate ?? { materialId: 'bark-chips', depthM: 0, wetFrac: 0 };
    return {
      enclosure: {
        ...enclosure,
        substrate: {
          ...now,
          materialId: now.depthM < 0.01 ? 'bark-chips' : now.materialId,
          depthM: now.depthM + tooDeepM,
        },
      },
      conditions: {},
    };
  }
  return plain;
}

function likelyParameters(priors: Priors): Parameters[] {
  const uniform = seededUniform(17);
  return Array.from({ length: likelyBoxes }, () => {
    const set: Record<string, number> = { ...bestParameters };
    for (const p of priors) set[p.name] = priorValueAt(p, normalQuantile(uniform()));
    return set as unknown as Parameters;
  });
}

/** Normal likelihood: spread of the likely boxes, misfit of each place (shared by day and night, and apart), sensors. */
function logLikelihood(levels: readonly Level[], rows: readonly (readonly number[])[]): number {
  const use = levels.map((_, i) => i).filter((i) => rows.every((r) => Number.isFinite(r[i]!)));
  const n = use.length;
  if (n === 0) return 0;
  const mean = use.map((i) => rows.reduce((s, r) => s + r[i]!, 0) / rows.length);
  const cov = new Float64Array(n * n);
  use.forEach((i, a) => {
    use.forEach((j, b) => {
      let c = rows.reduce((s, r) => s + (r[i]! - mean[a]!) * (r[j]! - mean[b]!), 0) / (rows.length - 1);
      if (levels[i]!.place === levels[j]!.place) {
        const mi = misfitSd('tempC', levels[i]!.place, mean[a]! - levels[i]!.roomC);
        const mj = misfitSd('tempC', levels[j]!.place, mean[b]! - levels[j]!.roomC);
        c += levelMisfitShare ** 2 * mi.place * mj.place + sensorSdK ** 2;
        if (a === b) c += mi.period ** 2 + levelSdK ** 2;
      }
      cov[a * n + b] = c;
    });
  });
  const factor = choleskyFactor(cov, n);
  const off = Float64Array.from(use, (i, a) => levels[i]!.valueC - mean[a]!);
  const solved = choleskySolve(factor, n, off);
  let logDet = 0;
  for (let a = 0; a < n; a++) logDet += 2 * Math.log(factor[a * n + a]!);
  return -0.5 * (off.reduce((s, v, a) => s + v * solved[a]!, 0) + logDet);
}

/** Normal likelihood of the slopes, each on its own: spread of the likely boxes, misfit, and the error of the reading. */
function slopeLikelihood(levels: readonly Level[], rows: readonly (readonly number[])[]): number {
  let sum = 0;
  levels.forEach((l, i) => {
    if (l.bySlope === null || rows.some((r) => !Number.isFinite(r[i]!))) return;
    const mean = rows.reduce((s, r) => s + r[i]!, 0) / rows.length;
    const spread = rows.reduce((s, r) => s + (r[i]! - mean) ** 2, 0) / (rows.length - 1);
    const variance = spread + slopeMisfit ** 2 + l.bySlope.sd ** 2;
    // slopes of one box go together: each counts for half
    sum += 0.5 * ((-0.5 * (l.bySlope.slope - mean) ** 2) / variance - 0.5 * Math.log(variance));
  });
  return sum;
}
