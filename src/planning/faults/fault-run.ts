// Runs one version of a home through a fault and notes what every reading does. Starts from the home at rest as it should
// be, so that the hours count from the moment the fault begins. Leaves out: what the readings mean (rehearse.ts).
import type { Enclosure, RoomDay } from '../../physics/enclosure.ts';
import { relativeHumidityFrac, vapourPressurePaFromRatio } from '../../physics/formulas/moist-air.ts';
import type { MaterialTable } from '../../physics/material.ts';
import { columnAt } from '../../physics/model.ts';
import type { Parameters } from '../../physics/parameters.ts';
import { readPlaces } from '../../physics/places.ts';
import { isDayAt, roomAt } from '../../physics/room-day.ts';
import { type Moment, type RunOptions, runBox, runStateFrom, startTally } from '../../physics/run.ts';
import { shownAt } from '../../physics/shade.ts';
import { type BoxGeometry, type BoxModel, boxGeometry, modelFrom, settleBox } from '../../physics/simulate.ts';
import type { HarmReadings } from './harm-lines.ts';

/** One row of a rehearsal. Hours since the fault began. */
export interface FaultRow extends HarmReadings {
  readonly hour: number;
  readonly roomC: number;
  readonly baskingC: number;
  readonly warmAirC: number;
  readonly coolAirC: number;
  /** What the thermostat shows. */
  readonly probeC: number;
  /** The heater itself or the mat under its cover. */
  readonly heaterC: number;
  readonly heaterW: number;
}

export interface FaultRunPlan {
  /** The home as it should be, for the start. */
  readonly normal: Enclosure;
  /** The home under the fault; the same object when only its control fails. */
  readonly faulty: Enclosure;
  readonly roomDay: RoomDay;
  readonly startH: number;
  readonly hours: number;
  readonly stepS: number;
  /** Fault in the running: made for one version, handed a reading of the air at the warm end. */
  readonly options: (model: BoxModel) => Partial<RunOptions>;
}

/** Rows are kept this often [h]. */
export const rowEveryH = 0.25;

export interface FaultGeometries {
  readonly normal: BoxGeometry;
  readonly faulty: BoxGeometry;
}

export const geometriesOf = (plan: FaultRunPlan, materials: MaterialTable): FaultGeometries => {
  const normal = boxGeometry(plan.normal, materials);
  return { normal, faulty: plan.faulty === plan.normal ? normal : boxGeometry(plan.faulty, materials) };
};

export function runFault(plan: FaultRunPlan, geometries: FaultGeometries, parameters: Parameters): FaultRow[] {
  const { roomDay, startH, hours, stepS } = plan;
  const normal = modelFrom(geometries.normal, parameters);
  const model = geometries.faulty === geometries.normal ? normal : modelFrom(geometries.faulty, parameters);
  const conditions = {
    roomC: roomAt(roomDay, startH),
    roomRhPct: roomDay.rhPct,
    sunWPerM2: 0,
    isDay: isDayAt(plan.normal.day, startH),
  };
  // A changed box has other surfaces: it starts at its own rest, with the thermostats still doing their work.
  const settled = settleBox(sameShape(normal, model) ? normal : model, conditions);
  const start = runStateFrom(model, settled);
  const rows: FaultRow[] = [];
  let next = startH;
  const note = (m: Moment) => {
    if (m.hour < next - 1e-6) return;
    next += rowEveryH;
    rows.push(rowOf(model, m, startH));
  };
  const options: RunOptions = { stepS, renewS: 600, ...plan.options(model) };
  const first = { hour: startH, state: start, now: settled.now, roomC: conditions.roomC, net: settled.net };
  rows.push(rowOf(model, first, startH));
  next += rowEveryH;
  runBox(model, roomDay, start, startH, startH + hours, options, startTally(model), note);
  return rows;
}

/** States can be handed on when surfaces and the nodes behind them agree. */
function sameShape(a: BoxModel, b: BoxModel): boolean {
  if (a === b) return true;
  if (a.grid.patches.length !== b.grid.patches.length || a.heaters.length !== b.heaters.length) return false;
  if (a.enclosure.thermostats.length !== b.enclosure.thermostats.length) return false;
  return a.chains.every((chain, i) => chain.capacity.length === b.chains[i]!.capacity.length);
}

function rowOf(model: BoxModel, m: Moment, startH: number): FaultRow {
  const places = readPlaces(model, shownAt(m), m.state.probeC[0] ?? null);
  const at = (...names: (keyof typeof places)[]) => names.map((n) => places[n]).filter((v): v is number => v !== null);
  const { lengthM } = model.enclosure.box;
  const left = model.enclosure.heaters.length === 0 || (model.enclosure.heaters[0]?.xM ?? 0) <= lengthM / 2;
  const cool = columnAt(model.grid, left ? lengthM * (15 / 16) : lengthM / 16);
  const pressure = vapourPressurePaFromRatio(m.state.moisture.ratio[cool] ?? 0);
  return {
    hour: m.hour - startH,
    roomC: m.roomC,
    coolestC: Math.min(...at('cool-air', 'cool-hide', 'cool-floor')),
    warmestC: Math.max(...at('warm-hide', 'warm-air', 'basking-surface')),
    surfaceC: places['hottest-reachable'] ?? Number.NaN,
    rhPct: Math.min(100, 100 * relativeHumidityFrac(m.state.box.airC[cool] ?? 20, pressure)),
    baskingC: places['basking-surface'] ?? Number.NaN,
    warmAirC: places['warm-air'] ?? Number.NaN,
    coolAirC: places['cool-air'] ?? Number.NaN,
    probeC: m.state.probeC[0] ?? Number.NaN,
    heaterC: places['heater-surface'] ?? Number.NaN,
    heaterW: m.now.reduce((sum, h) => sum + h.powerW, 0),
  };
}
