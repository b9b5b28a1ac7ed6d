// The named places of a box at one moment, from its readings; and the two extremes: coldest glass, hottest in reach.
import type { PlaceId } from './answer.ts';
import { mainHeater } from './grid.ts';
import type { BoxModel } from './model.ts';
import type { BoxState } from './network.ts';
import { type Reading, readingValue } from './reading.ts';
import { type ShownBox, shadeFallK } from './shade.ts';

/** What each heater gives at the moment [W]. */
export interface HeaterNow extends Shining {
  readonly powerW: number;
  readonly bodyC: number;
  readonly convectedW: number;
}

/** What of it shines on probes [W]. */
export interface Shining {
  readonly radiatedW: number;
  readonly shortWaveW: number;
}

/** What the probe of a thermostat reads once settled, its own error included [degC]. */
export const probeReading = (model: BoxModel, state: BoxState, now: readonly Shining[], thermostat: number): number =>
  readingValue(model.readings.probes[thermostat]!, state, now) + model.parameters.probeErrorK;

/** Mean of the floor strip under the main heater [degC]. */
export const baskingSurface = (model: BoxModel, state: BoxState): number =>
  readingValue(model.readings.basking, state, []);

/** Mean floor temperature of a column [degC]. */
export function columnFloor(model: BoxModel, state: BoxState, column: number): number {
  let sum = 0;
  let area = 0;
  model.grid.patches.forEach((p, s) => {
    if (p.facing !== 'floor' || p.column !== column) return;
    sum += p.areaM2 * state.surfaceC[s]!;
    area += p.areaM2;
  });
  return area > 0 ? sum / area : Number.NaN;
}

export function readPlaces(model: BoxModel, box: ShownBox, probeC: number | null): Record<PlaceId, number | null> {
  const { state, now } = box;
  const r = model.readings;
  const basking = baskingSurface(model, state);
  return {
    'basking-surface': basking,
    'basking-spot': hottestSpot(model, state, basking),
    'warm-air': readingValue(r.warmAir, state, now),
    'warm-hide': r.warmHide ? hideValue(model, r.warmHide, box) : null,
    'cool-hide': r.coolHide ? hideValue(model, r.coolHide, box) : null,
    'cool-air': readingValue(r.coolAir, state, now),
    'cool-floor': readingValue(r.coolFloor, state, now),
    perch: r.perch ? readingValue(r.perch, state, now) : null,
    probe: probeC,
    'front-glass': frontCold(model, state),
    'hottest-reachable': hottestReachable(model, state, now),
    'heater-surface': heaterSurface(model, state, now),
  };
}

/** Floor and air within a hide, the floor without what its roof keeps off. */
function hideValue(model: BoxModel, reading: Reading, box: ShownBox): number {
  let value = readingValue(reading, box.state, box.now);
  for (let s = 0; s < reading.surface.length; s++)
    if (reading.surface[s]! > 0) value -= reading.surface[s]! * shadeFallK(model, box, s);
  return value;
}

function hottestSpot(model: BoxModel, state: BoxState, basking: number): number {
  const main = mainHeater(model.enclosure);
  let spot = basking;
  model.grid.patches.forEach((p, s) => {
    if (p.role === 'spot' || (p.role === 'mat' && p.heater === main)) spot = Math.max(spot, state.surfaceC[s]!);
  });
  return spot;
}

/** Coldest of the front panel: where dew shows first. */
function frontCold(model: BoxModel, state: BoxState): number {
  let t = Number.POSITIVE_INFINITY;
  model.grid.patches.forEach((p, s) => {
    if (p.panel === 'front' && p.role !== 'mesh') t = Math.min(t, state.surfaceC[s]!);
  });
  return Number.isFinite(t) ? t : state.airC[0]!;
}

/** Hottest surface that a snake can touch: floor, walls, and any heater that has no guard. */
function hottestReachable(model: BoxModel, state: BoxState, now: readonly HeaterNow[]): number {
  let t = Number.NEGATIVE_INFINITY;
  model.grid.patches.forEach((p, s) => {
    if (p.role === 'mesh' || p.facing === 'ceiling') return;
    t = Math.max(t, state.surfaceC[s]!);
  });
  model.heaters.forEach((path, h) => {
    if (path.outside || path.heater.guarded) return;
    if (path.body.form === 'body') t = Math.max(t, now[h]!.bodyC);
    else if (path.heater.kind === 'radiant-panel')
      for (const part of path.sheet) t = Math.max(t, state.surfaceC[part.patch]!);
  });
  return t;
}

/** The main heater's own temperature: its body, or the sheet within the panel. */
function heaterSurface(model: BoxModel, state: BoxState, now: readonly HeaterNow[]): number | null {
  const main = mainHeater(model.enclosure);
  if (main < 0) return null;
  const path = model.heaters[main]!;
  if (path.body.form === 'body') return now[main]!.bodyC;
  let t = Number.NEGATIVE_INFINITY;
  for (const part of path.sheet) {
    const node = model.chains[part.patch]!.sourceNode;
    t = Math.max(t, node <= 0 ? state.surfaceC[part.patch]! : state.behindC[part.patch]![node - 1]!);
  }
  return Number.isFinite(t) ? t : null;
}
