// The heat balance of one moment as a linear network: conductances worked out at the present temperatures.
// Unknowns of the core: air nodes first, then the inner surface of every patch.
import { airHeatCapacityJPerKgK } from './formulas/constants.ts';
import {
  filmStableAlamdariHammond,
  filmUnstableAlamdariHammond,
  filmVerticalAlamdariHammond,
} from './formulas/convection-alamdari-hammond.ts';
import { type Layout, layoutOf } from './kernel/layout.ts';
import { mixingOf } from './mixing.ts';
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
  readonly size: number;
  readonly airNodes: number;
  /** Core conductances without panels and heat capacities, row-major [W/K]. */
  readonly core: Float64Array;
  /** Link of each air node to the room by fresh air [W/K]. */
  readonly airToRoom: Float64Array;
  /** Heat that leaves with the air going out of each node, for each kelvin above the room [W/K]. */
  readonly airToOut: Float64Array;
  /** Link of each patch's outermost node to the outside [W/K] and that outside's temperature [degC]. */
  readonly outerLink: Float64Array;
  readonly outsideC: Float64Array;
  /** Inside film of each patch [W/m2K]. */
  readonly film: Float64Array;
  readonly ventilation: Ventilation;
}

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
 *  @param convectedW heat that heaters give to the air now, for the mixing strength [W] */
export function networkAt(model: BoxModel, state: BoxState, roomC: number, convectedW: number): Network {
  const { grid, enclosure, parameters } = model;
  const { depthM, heightM, lengthM } = enclosure.box;
  const airNodes = state.airC.length;
  const n = grid.patches.length;
  const size = airNodes + n;
  const core = new Float64Array(size * size);
  const film = new Float64Array(n);
  let drivenW = convectedW;
  const { facing, isMesh, airNode } = layoutOf(model);
  const { areas } = model;
  const { airC, surfaceC } = state;
  const diameter = (2 * lengthM * depthM) / (lengthM + depthM);
  for (let s = 0; s < n; s++) {
    const a = airNode[s]!;
    const delta = surfaceC[s]! - airC[a]!;
    const h = isMesh[s] === 1 ? 0 : insideFilm(facing[s]!, delta, diameter, heightM) * parameters.insideFilm;
    film[s] = h;
    const g = h * areas[s]!;
    if (delta > 0) drivenW += g * delta;
    link(core, size, a, airNodes + s, g);
  }
  radiation(core, size, airNodes, model.greyExchange, state.surfaceC);
  const mixing = mixingOf(grid, depthM, heightM, parameters, state.airC, drivenW);
  for (let k = 0; k < grid.layers; k++)
    for (let i = 0; i < grid.columns - 1; i++)
      link(core, size, k * grid.columns + i, k * grid.columns + i + 1, mixing.along[k * (grid.columns - 1) + i]!);
  for (let k = 0; k < grid.layers - 1; k++)
    for (let i = 0; i < grid.columns; i++)
      link(core, size, k * grid.columns + i, (k + 1) * grid.columns + i, mixing.up[k * grid.columns + i]!);
  const ventilation = ventilationOf(grid, model.openings, heightM, parameters, state.airC, roomC);
  const airToRoom = new Float64Array(airNodes);
  const airToOut = new Float64Array(airNodes);
  for (const { from, to, kgPerS } of ventilation.streams) {
    const w = kgPerS * airHeatCapacityJPerKgK;
    if (to < 0) {
      airToOut[from] = airToOut[from]! + w;
      continue;
    }
    core[to * size + to] = core[to * size + to]! + w;
    if (from < 0) airToRoom[to] = airToRoom[to]! + w;
    else core[to * size + from] = core[to * size + from]! - w;
  }
  for (let a = 0; a < airNodes; a++) {
    const w = ventilation.exchangeKgPerS[a]! * airHeatCapacityJPerKgK;
    core[a * size + a] = core[a * size + a]! + w;
    airToRoom[a] = airToRoom[a]! + w;
    airToOut[a] = airToOut[a]! + w;
  }
  const { outerLink, outsideC } = outerLinks(model, state, roomC);
  return { size, airNodes, core, airToRoom, airToOut, outerLink, outsideC, film, ventilation };
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

function link(core: Float64Array, size: number, i: number, j: number, g: number): void {
  core[i * size + i] = core[i * size + i]! + g;
  core[j * size + j] = core[j * size + j]! + g;
  core[i * size + j] = core[i * size + j]! - g;
  core[j * size + i] = core[j * size + i]! - g;
}

/** Grey long-wave exchange, linear in temperature at the present mean of each pair. */
function radiation(
  core: Float64Array,
  size: number,
  first: number,
  exchange: Float64Array,
  surfaceC: Float64Array,
): void {
  const n = surfaceC.length;
  const given = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const ti = surfaceC[i]! + 273.15;
    const ti2 = ti * ti;
    const row = (first + i) * size + first;
    let sum = 0;
    for (let j = 0; j < i; j++) {
      const tj = surfaceC[j]! + 273.15;
      const g = sigma * exchange[i * n + j]! * (ti2 + tj * tj) * (ti + tj);
      core[row + j] = -g;
      core[(first + j) * size + first + i] = -g;
      given[j] = given[j]! + g;
      sum += g;
    }
    given[i] = given[i]! + sum;
  }
  for (let i = 0; i < n; i++) {
    const at = (first + i) * (size + 1);
    core[at] = core[at]! + given[i]!;
  }
}

function insideFilm(facing: number, delta: number, diameter: number, heightM: number): number {
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
