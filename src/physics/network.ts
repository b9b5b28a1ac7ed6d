// The heat balance of one moment as a linear network: conductances worked out at the present temperatures.
// Kept by its structure: air as a band column by column, each surface with what holds to it alone, and the long wave between
// radiant groups. Nothing in here grows faster than the number of columns.
import { airHeatCapacityJPerKgK } from './formulas/constants.ts';
import {
  filmStableAlamdariHammond,
  filmUnstableAlamdariHammond,
  filmVerticalAlamdariHammond,
} from './formulas/convection-alamdari-hammond.ts';
import { type Layout, layoutOf } from './kernel/layout.ts';
import { type Mixing, mixingOf } from './mixing.ts';
import type { BoxModel } from './model.ts';
import { type Ventilation, ventilationOf } from './ventilation.ts';

const sigma = 5.670374419e-8;
/** Link of an open mesh patch to the room: so strong that it takes the room's temperature [W/m2K]. */
const openLink = 1e4;

/** The ways a surface faces, as the layout counts them. */
const isFloor = 0;
const isCeiling = 1;
const isWall = 2;

/** Temperatures of everything in the box [degC]. */
export interface BoxState {
  readonly airC: Float64Array;
  readonly surfaceC: Float64Array;
  /** Nodes behind each surface, surface excluded. */
  readonly behindC: readonly Float64Array[];
  /** The same numbers in one row: air, surfaces, nodes behind; airC, surfaceC and behindC are windows on it. */
  readonly row: Float64Array;
  readonly layout: Layout;
}

export interface Network {
  readonly airNodes: number;
  /** Conductances of the air without heat capacities [W/K]: nodes column by column, 2 halfBand + 1 numbers each, diagonal in the middle. */
  readonly air: Float64Array;
  /** Link of each surface to the air that it touches [W/K]. */
  readonly toAir: Float64Array;
  /** What each surface loses for each kelvin, to air, to other surfaces and by evaporation [W/K]. */
  readonly own: Float64Array;
  /** Long wave between radiant groups, groups x groups [W/K], and its sums by row; a surface gets its share of the group's. */
  readonly radiant: Float64Array;
  readonly radiantSum: Float64Array;
  /** What a surface sends beyond its group's mean, for each kelvin, in all and by surface [W/K]: w_i r_i, see factored.ts. */
  readonly beyondMean: Float64Array;
  /** Link of each air node to the room by fresh air [W/K]. */
  readonly airToRoom: Float64Array;
  /** Heat that leaves with the air going out of each node, for each kelvin above the room [W/K]. */
  readonly airToOut: Float64Array;
  /** Link of each patch's outermost node to the outside [W/K] and that outside's temperature [degC]. */
  readonly outerLink: Float64Array;
  readonly outsideC: Float64Array;
  /** Inside film of each patch [W/m2K]. */
  readonly film: Float64Array;
  readonly mixing: Mixing;
  readonly ventilation: Ventilation;
}

/** How much air goes which way: stirring within the box and draught through it. */
export type AirWays = Pick<Network, 'mixing' | 'ventilation'>;

export function startState(model: BoxModel, tempC: number): BoxState {
  const layout = layoutOf(model);
  return stateOn(layout, new Float64Array(layout.capacity.length).fill(tempC));
}

export const copyState = (s: BoxState): BoxState => stateOn(s.layout, s.row.slice());

/** A state whose temperatures are the given row. The windows behind the surfaces are cut only when somebody looks. */
export function stateOn(layout: Layout, row: Float64Array): BoxState {
  const { airNodes, patches } = layout;
  const at = airNodes + patches;
  let behind: readonly Float64Array[] | null = null;
  return {
    airC: row.subarray(0, airNodes),
    surfaceC: row.subarray(airNodes, at),
    get behindC() {
      behind ??= behindOn(layout, row);
      return behind;
    },
    row,
    layout,
  };
}

function behindOn({ airNodes, patches, first }: Layout, row: Float64Array): Float64Array[] {
  const at = airNodes + patches;
  return Array.from({ length: patches }, (_, s) => row.subarray(at + first[s]!, at + first[s + 1]!));
}

/** Conductances at the present temperatures.
 *  @param bodiesW what the heaters' bodies give to the air now, by how far it rises (stirring.ts) [W]
 *  @param heldAir ways of the air instead of those that these temperatures drive */
export function networkAt(
  model: BoxModel,
  state: BoxState,
  roomC: number,
  bodiesW: number,
  heldAir?: AirWays,
): Network {
  const { grid, enclosure, parameters } = model;
  const { depthM, heightM, lengthM } = enclosure.box;
  const layout = layoutOf(model);
  const { airNodes, order, airAt, halfBand, facing, isMesh, riseFrac } = layout;
  const n = layout.patches;
  const wide = 2 * halfBand + 1;
  const air = new Float64Array(airNodes * wide);
  const toAir = new Float64Array(n);
  const own = new Float64Array(n);
  const film = new Float64Array(n);
  let risingW = bodiesW;
  const { areas } = model;
  const { airC, surfaceC } = state;
  const diameter = (2 * lengthM * depthM) / (lengthM + depthM);
  for (let s = 0; s < n; s++) {
    const a = airAt[s]!;
    const delta = surfaceC[s]! - airC[layout.airNode[s]!]!;
    const h = isMesh[s] === 1 ? 0 : insideFilm(facing[s]!, delta, diameter, heightM) * parameters.insideFilm;
    film[s] = h;
    const g = h * areas[s]!;
    if (delta > 0) risingW += riseFrac[s]! * g * delta;
    toAir[s] = g;
    own[s] = g;
    air[a * wide + halfBand] = air[a * wide + halfBand]! + g;
  }
  const { radiant, radiantSum, beyondMean } = radiation(model, surfaceC);
  const link = (a: number, b: number, g: number) => {
    const i = order[a]!;
    const j = order[b]!;
    air[i * wide + halfBand] = air[i * wide + halfBand]! + g;
    air[j * wide + halfBand] = air[j * wide + halfBand]! + g;
    air[i * wide + halfBand + j - i] = air[i * wide + halfBand + j - i]! - g;
    air[j * wide + halfBand + i - j] = air[j * wide + halfBand + i - j]! - g;
  };
  const mixing = heldAir?.mixing ?? mixingOf(grid, depthM, heightM, parameters, state.airC, risingW);
  for (let k = 0; k < grid.layers; k++)
    for (let i = 0; i < grid.columns - 1; i++)
      link(k * grid.columns + i, k * grid.columns + i + 1, mixing.along[k * (grid.columns - 1) + i]!);
  for (let k = 0; k < grid.layers - 1; k++)
    for (let i = 0; i < grid.columns; i++)
      link(k * grid.columns + i, (k + 1) * grid.columns + i, mixing.up[k * grid.columns + i]!);
  const ventilation =
    heldAir?.ventilation ?? ventilationOf(grid, model.openings, heightM, parameters, state.airC, roomC);
  const airToRoom = new Float64Array(airNodes);
  const airToOut = new Float64Array(airNodes);
  for (const { from, to, kgPerS } of ventilation.streams) {
    const w = kgPerS * airHeatCapacityJPerKgK;
    if (to < 0) {
      airToOut[from] = airToOut[from]! + w;
      continue;
    }
    const at = order[to]! * wide + halfBand;
    air[at] = air[at]! + w;
    if (from < 0) airToRoom[to] = airToRoom[to]! + w;
    else {
      const beside = at + order[from]! - order[to]!;
      air[beside] = air[beside]! - w;
    }
  }
  for (let a = 0; a < airNodes; a++) {
    const w = ventilation.exchangeKgPerS[a]! * airHeatCapacityJPerKgK;
    const at = order[a]! * wide + halfBand;
    air[at] = air[at]! + w;
    airToRoom[a] = airToRoom[a]! + w;
    airToOut[a] = airToOut[a]! + w;
  }
  const { outerLink, outsideC } = outerLinks(model, state, roomC);
  return {
    ...{ airNodes, air, toAir, own, radiant, radiantSum, beyondMean },
    ...{ airToRoom, airToOut, outerLink, outsideC, film, mixing, ventilation },
  };
}

/** The room has another temperature; conductances stay. A floor on another box keeps what is below it. */
export function followRoom(model: BoxModel, { outsideC }: Network, roomC: number): void {
  if (model.enclosure.box.base.kind !== 'stacked') {
    outsideC.fill(roomC);
    return;
  }
  const { facing } = layoutOf(model);
  for (let s = 0; s < outsideC.length; s++) if (facing[s] !== isFloor) outsideC[s] = roomC;
}

/** Grey long-wave exchange between radiant groups, linear in temperature at the present fourth-power means of each pair,
 *  and what each surface sends beyond its group's mean. Every flow is between two surfaces, so nothing is lost on the way. */
function radiation(
  { radiant: { count, groupOf, share, single }, greyExchange: exchange, greySum }: BoxModel,
  surfaceC: Float64Array,
): Pick<Network, 'radiant' | 'radiantSum' | 'beyondMean'> {
  const meanK = single ? surfaceC.map((t) => t + 273.15) : fourthPowerMeans(count, groupOf, share, surfaceC);
  const radiant = new Float64Array(count * count);
  const radiantSum = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const ti = meanK[i]!;
    const ti2 = ti * ti;
    const row = i * count;
    let sum = 0;
    for (let j = 0; j < i; j++) {
      const tj = meanK[j]!;
      const g = sigma * exchange[row + j]! * (ti2 + tj * tj) * (ti + tj);
      radiant[row + j] = g;
      radiant[j * count + i] = g;
      radiantSum[j] = radiantSum[j]! + g;
      sum += g;
    }
    radiantSum[i] = radiantSum[i]! + sum;
  }
  if (single) return { radiant, radiantSum, beyondMean: none };
  const beyondMean = surfaceC.map((t, s) => {
    const g = groupOf[s]!;
    const k = t + 273.15;
    return share[s]! * sigma * greySum[g]! * (k * k + meanK[g]! * meanK[g]!) * (k + meanK[g]!);
  });
  return { radiant, radiantSum, beyondMean };
}

const none = new Float64Array(0);

function fourthPowerMeans(
  count: number,
  groupOf: Int32Array,
  share: Float64Array,
  surfaceC: Float64Array,
): Float64Array {
  const mean = new Float64Array(count);
  for (let s = 0; s < surfaceC.length; s++)
    mean[groupOf[s]!] = mean[groupOf[s]!]! + share[s]! * (surfaceC[s]! + 273.15) ** 4;
  return mean.map((m) => Math.sqrt(Math.sqrt(m)));
}

/** Inside film of a face before its belief [W/m2K].
 *  @param facing as the layout counts it   @param delta face minus air [K]   @param diameter of floor and ceiling, hydraulic [m] */
export function insideFilm(facing: number, delta: number, diameter: number, heightM: number): number {
  const d = Math.max(0.1, Math.abs(delta));
  if (facing === isWall) return filmVerticalAlamdariHammond(d, heightM);
  const driven = facing === isFloor ? delta : -delta;
  const unstable = filmUnstableAlamdariHammond(d, diameter);
  const stable = filmStableAlamdariHammond(d, diameter);
  const blend = 1 / (1 + Math.exp(-driven / 0.3));
  return blend * unstable + (1 - blend) * stable;
}

function outerLinks(
  model: BoxModel,
  state: BoxState,
  roomC: number,
): { outerLink: Float64Array; outsideC: Float64Array } {
  const { grid, enclosure, parameters } = model;
  const { depthM, heightM, lengthM } = enclosure.box;
  const n = grid.patches.length;
  const outerLink = new Float64Array(n);
  const outsideC = new Float64Array(n).fill(roomC);
  const diameter = (2 * lengthM * depthM) / (lengthM + depthM);
  const { row } = state;
  const { outermost, facing, isMesh, baseResistance } = layoutOf(model);
  const { areas } = model;
  const stacked = enclosure.box.base.kind === 'stacked' ? enclosure.box.base : null;
  for (let s = 0; s < n; s++) {
    const areaM2 = areas[s]!;
    if (isMesh[s] === 1) {
      outerLink[s] = openLink * areaM2;
      continue;
    }
    const outer = row[outermost[s]!]!;
    if (stacked && facing[s] === isFloor) {
      outsideC[s] = stacked.belowC ?? roomC;
      outerLink[s] = areaM2 / (baseResistance[s]! + 0.02);
      continue;
    }
    const delta = Math.max(0.2, Math.abs(outer - roomC));
    let convection: number;
    if (facing[s] === isWall) convection = filmVerticalAlamdariHammond(delta, heightM);
    else {
      const driven = (facing[s] === isCeiling) === outer > roomC;
      convection = driven ? filmUnstableAlamdariHammond(delta, diameter) : filmStableAlamdariHammond(delta, diameter);
    }
    const mean = (outer + roomC) / 2 + 273.15;
    const h =
      parameters.heldOuterFilmWPerM2K ?? convection * parameters.outsideFilm + 0.9 * 4 * sigma * (mean * mean * mean);
    outerLink[s] = areaM2 / (baseResistance[s]! + 1 / h);
  }
  return { outerLink, outsideC };
}

export { type Factored, factorNetwork } from './kernel/factored.ts';
