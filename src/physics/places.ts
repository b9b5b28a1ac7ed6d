// The named places of a box: how each is read off the air, the surfaces and the heater.
// basking-surface: mean floor within 0.1 m either side of the heater (of a mat: its whole cover); basking-spot: the
// hottest hand-sized patch. Hides are judged by a first-order balance without direct radiation (our choice, docs/theory).
import type { PlaceId, WarmEnd } from './answer.ts';
import { mainHeater } from './grid.ts';
import { heaterBodies } from './heater-kinds.ts';
import { type BoxModel, columnAt } from './model.ts';
import type { BoxState, Network } from './network.ts';
import { irradiancePerW } from './pattern.ts';
import { type Point, solidAngle } from './rectangle.ts';

/** What each heater gives at the moment [W]. */
export interface HeaterNow {
  readonly powerW: number;
  readonly bodyC: number;
  readonly convectedW: number;
  readonly radiatedW: number;
  readonly shortWaveW: number;
}

/** Height at which the air that an animal lives in is read [m]; our choice. */
export const animalAirHeightM = 0.05;
/** Half width of the basking strip [m]; our choice. */
const baskingHalfM = 0.1;

export function warmEndOf(model: BoxModel): WarmEnd {
  const main = mainHeater(model.enclosure);
  const x = main < 0 ? 0 : model.enclosure.heaters[main]!.xM;
  return x <= model.enclosure.box.lengthM / 2 ? 'left' : 'right';
}

/** Air temperature at a point, linear between nodes and carried on to the walls. */
export function airAt(model: BoxModel, state: BoxState, xM: number, zM: number): number {
  const { grid } = model;
  const column = (k: number) => interpolate(grid.columnXM, (i) => state.airC[k * grid.columns + i]!, xM, false);
  return interpolate(grid.layerZM, column, zM, true);
}

function interpolate(at: readonly number[], value: (i: number) => number, x: number, carryOn: boolean): number {
  const last = at.length - 1;
  if (last === 0) return value(0);
  let i = 0;
  while (i < last - 1 && at[i + 1]! < x) i++;
  let f = (x - at[i]!) / (at[i + 1]! - at[i]!);
  if (!carryOn) f = Math.max(0, Math.min(1, f));
  return value(i) * (1 - f) + value(i + 1) * f;
}

/** Mean floor temperature between two positions, spots and mats by their area. */
export function floorMean(
  model: BoxModel,
  state: BoxState,
  fromM: number,
  toM: number,
  only?: (role: string) => boolean,
): number {
  let sum = 0;
  let area = 0;
  model.grid.patches.forEach((p, s) => {
    if (p.facing !== 'floor' || (only && !only(p.role))) return;
    const x = Math.min(toM, p.rect.a1) - Math.max(fromM, p.rect.a0);
    if (x <= 0) return;
    const a = (p.areaM2 * x) / (p.rect.a1 - p.rect.a0);
    sum += a * state.surfaceC[s]!;
    area += a;
  });
  return area > 0 ? sum / area : Number.NaN;
}

/** Fourth-power mean of the surfaces seen from a point [degC], heaters aside. */
export function seenFrom(model: BoxModel, state: BoxState, at: Point): number {
  let sum = 0;
  let k4 = 0;
  model.grid.patches.forEach((p, s) => {
    const w = solidAngle(p.rect, at) * p.share;
    sum += w;
    k4 += w * (state.surfaceC[s]! + 273.15) ** 4;
  });
  return sum > 0 ? (k4 / sum) ** 0.25 - 273.15 : airAt(model, state, at.xM, at.zM);
}

/** Film of a small body in still air, convection and radiation together [W/m2K]; manikin values 4.0 to 5.4 plus 3.1 to 4.9 (check P-219). */
const smallBodyFilm = 10;

/** What the probe of a thermostat reads once settled: air, what it sees, the wall behind it, and direct radiation. */
export function probeReading(model: BoxModel, state: BoxState, now: readonly HeaterNow[], thermostat: number): number {
  const { probe } = model.enclosure.thermostats[thermostat]!;
  const at: Point = { xM: probe.xM, yM: probe.yM, zM: probe.zM };
  if (probe.at === 'mat') return matTemperature(model, state, thermostat);
  const r = model.parameters.probeRadiantFrac;
  const air = airAt(model, state, at.xM, at.zM);
  const inside = insidePoint(model, at);
  let free = (1 - r) * air + r * seenFrom(model, state, inside) + directGain(model, now, inside);
  if (probe.at === 'floor') free = 0.7 * floorAt(model, state, at.xM) + 0.3 * free;
  if (probe.at === 'wall') free = 0.4 * wallAt(model, state, at) + 0.6 * free;
  return free;
}

/** Rise of a small body in the direct radiation of the heaters [K]: irradiance x 0.9 x (cross-section / surface = 1/4) / film. */
function directGain(model: BoxModel, now: readonly HeaterNow[], at: Point): number {
  let k = 0;
  model.heaters.forEach((path, h) => {
    if (path.body.form !== 'body') return;
    const open = path.outside ? (model.enclosure.box.panels.top.meshOpenFrac ?? 0.6) : 1;
    const w = now[h]!.radiatedW * (path.outside ? 0.5 : 1) + now[h]!.shortWaveW;
    k += (0.9 * open * Math.max(0, w) * irradiancePerW(path.at, at, path.pattern)) / 4 / smallBodyFilm;
  });
  return k;
}

function insidePoint(model: BoxModel, p: Point): Point {
  const { lengthM, depthM, heightM } = model.enclosure.box;
  const keep = (v: number, top: number) => Math.max(0.005, Math.min(top - 0.005, v));
  return { xM: keep(p.xM, lengthM), yM: keep(p.yM, depthM), zM: keep(p.zM, heightM) };
}

function floorAt(model: BoxModel, state: BoxState, xM: number): number {
  return floorMean(model, state, Math.max(0, xM - 0.03), Math.min(model.enclosure.box.lengthM, xM + 0.03));
}

/** Temperature of the wall nearest to a point at its column and layer. */
function wallAt(model: BoxModel, state: BoxState, at: Point): number {
  const { lengthM, depthM } = model.enclosure.box;
  const gaps = { left: at.xM, right: lengthM - at.xM, front: at.yM, back: depthM - at.yM };
  const panel = (Object.keys(gaps) as (keyof typeof gaps)[]).reduce((a, b) => (gaps[b] < gaps[a] ? b : a));
  const { grid } = model;
  const column = columnAt(grid, at.xM);
  const layer = Math.min(grid.layers - 1, Math.floor((at.zM / model.enclosure.box.heightM) * grid.layers));
  let sum = 0;
  let n = 0;
  grid.patches.forEach((p, s) => {
    if (p.panel !== panel || p.layer !== layer || (panel !== 'left' && panel !== 'right' && p.column !== column))
      return;
    sum += state.surfaceC[s]!;
    n++;
  });
  return n > 0 ? sum / n : airAt(model, state, at.xM, at.zM);
}

/** Temperature at the mat that this thermostat drives, or at the floor when it drives none. */
function matTemperature(model: BoxModel, state: BoxState, thermostat: number): number {
  const id = model.enclosure.thermostats[thermostat]!.id;
  let sum = 0;
  let n = 0;
  model.grid.patches.forEach((p, s) => {
    if (p.role !== 'mat' || model.enclosure.heaters[p.heater]!.thermostatId !== id) return;
    const node = model.chains[s]!.sourceNode;
    sum += p.areaM2 * (node <= 0 ? state.surfaceC[s]! : state.behindC[s]![node - 1]!);
    n += p.areaM2;
  });
  return n > 0 ? sum / n : floorAt(model, state, model.enclosure.thermostats[thermostat]!.probe.xM);
}

export function readPlaces(
  model: BoxModel,
  net: Network,
  state: BoxState,
  now: readonly HeaterNow[],
  probeC: number | null,
): Record<PlaceId, number | null> {
  const { box } = model.enclosure;
  const L = box.lengthM;
  const end = warmEndOf(model);
  const span = L / 8;
  const warmX = end === 'left' ? span / 2 : L - span / 2;
  const coolX = L - warmX;
  const main = mainHeater(model.enclosure);
  const basking = baskingOf(model, state, main);
  const z = Math.min(animalAirHeightM, box.heightM / 4);
  const coolFloor = floorMean(model, state, Math.max(0, coolX - span / 2), Math.min(L, coolX + span / 2));
  const perch = model.enclosure.perch;
  return {
    'basking-surface': basking.surface,
    'basking-spot': basking.spot,
    'warm-air': airAt(model, state, warmX, z),
    'warm-hide': hideAt(model, net, state, now, true, end),
    'cool-hide': hideAt(model, net, state, now, false, end),
    'cool-air': airAt(model, state, coolX, z),
    'cool-floor': coolFloor,
    perch: perch ? perchReading(model, state, now, perch) : null,
    probe: probeC,
    'front-glass': frontCold(model, state),
    'hottest-reachable': hottestReachable(model, state, now),
    'heater-surface': heaterSurface(model, state, now, main),
  };
}

function perchReading(model: BoxModel, state: BoxState, now: readonly HeaterNow[], perch: Point): number {
  const at = insidePoint(model, perch);
  return 0.5 * airAt(model, state, at.xM, at.zM) + 0.5 * seenFrom(model, state, at) + directGain(model, now, at);
}

/** Mean of the floor strip under the main heater [degC]. */
export const baskingSurface = (model: BoxModel, state: BoxState): number =>
  baskingOf(model, state, mainHeater(model.enclosure)).surface;

function baskingOf(model: BoxModel, state: BoxState, main: number): { surface: number; spot: number } {
  const L = model.enclosure.box.lengthM;
  if (main < 0) {
    const t = floorMean(model, state, 0, L / 4);
    return { surface: t, spot: t };
  }
  const h = model.enclosure.heaters[main]!;
  if (h.kind === 'heat-mat') {
    let hot = Number.NEGATIVE_INFINITY;
    let sum = 0;
    let area = 0;
    model.grid.patches.forEach((p, s) => {
      if (p.heater !== main) return;
      hot = Math.max(hot, state.surfaceC[s]!);
      sum += p.areaM2 * state.surfaceC[s]!;
      area += p.areaM2;
    });
    return area > 0
      ? { surface: sum / area, spot: hot }
      : { surface: floorMean(model, state, 0, L), spot: floorMean(model, state, 0, L) };
  }
  const half = heaterBodies[h.kind].form === 'area' ? Math.max(baskingHalfM, (h.lengthM ?? 0.3) / 4) : baskingHalfM;
  const width = Math.min(half, L / 6);
  const middle = Math.max(width, Math.min(L - width, h.xM));
  const surface = smoothFloor(model, state, middle - width, middle + width);
  let spot = surface;
  model.grid.patches.forEach((p, s) => {
    if (p.role === 'spot') spot = Math.max(spot, state.surfaceC[s]!);
  });
  return { surface, spot };
}

/** Mean floor over a strip from a line through the column means, so that the answer does not hang on where a column ends. */
function smoothFloor(model: BoxModel, state: BoxState, fromM: number, toM: number): number {
  const { grid } = model;
  const mean = Array.from({ length: grid.columns }, (_, i) =>
    floorMean(model, state, grid.edgeM[i]!, grid.edgeM[i + 1]!),
  );
  const steps = 16;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const x = fromM + ((k + 0.5) / steps) * (toM - fromM);
    sum += interpolate(grid.columnXM, (i) => mean[i]!, x, false);
  }
  return sum / steps;
}

/** Inside a hide: half floor without the direct radiation that its roof keeps off, half the air beside it. */
function hideAt(
  model: BoxModel,
  net: Network,
  state: BoxState,
  now: readonly HeaterNow[],
  warm: boolean,
  end: WarmEnd,
): number | null {
  const L = model.enclosure.box.lengthM;
  const hides = model.enclosure.hides.filter((h) => (h.xM <= L / 2 === (end === 'left')) === warm);
  if (hides.length === 0) return null;
  const hide = hides.reduce((a, b) => (Math.abs(a.xM - L / 2) > Math.abs(b.xM - L / 2) ? a : b));
  const from = Math.max(0, hide.xM - hide.lengthM / 2);
  const to = Math.min(L, hide.xM + hide.lengthM / 2);
  let floor = 0;
  let area = 0;
  model.grid.patches.forEach((p, s) => {
    if (p.facing !== 'floor' || p.role === 'spot') return;
    const x = Math.min(to, p.rect.a1) - Math.max(from, p.rect.a0);
    if (x <= 0) return;
    const a = (p.areaM2 * x) / (p.rect.a1 - p.rect.a0);
    let direct = 0;
    model.heaters.forEach((path, h) => {
      if (path.body.form === 'body')
        direct += path.longWave[s]! * now[h]!.radiatedW + path.shortWave[s]! * now[h]!.shortWaveW;
    });
    const slack = net.film[s]! + 6 + 1;
    floor += a * (state.surfaceC[s]! - direct / p.areaM2 / slack);
    area += a;
  });
  return (
    0.5 * (floor / area) +
    0.5 * airAt(model, state, hide.xM, Math.min(animalAirHeightM, model.enclosure.box.heightM / 4))
  );
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

function heaterSurface(model: BoxModel, state: BoxState, now: readonly HeaterNow[], main: number): number | null {
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
