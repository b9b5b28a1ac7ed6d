// One linear solve of the heat network: panels eliminated, core solved, panels filled in again.
import { solveInPlace } from './dense.ts';
import { solveBandInPlace } from './dense-band.ts';
import { airHeatCapacityJPerKgK } from './formulas/constants.ts';
import type { Factored } from './kernel/factored.ts';
import type { BoxModel } from './model.ts';
import type { BoxState, Network } from './network.ts';

export { airCapacity } from './kernel/layout.ts';

/** Heat put in [W]: to air nodes, to inner surfaces, and within panels at their mat node. */
export interface Sources {
  readonly airW: Float64Array;
  readonly surfaceW: Float64Array;
  readonly matW: Float64Array;
}

export const noSources = (model: BoxModel): Sources => ({
  airW: new Float64Array(model.airVolumeM3.length),
  surfaceW: new Float64Array(model.areas.length),
  matW: new Float64Array(model.areas.length),
});

/** Solve (C perS + G) T = C perS T_before + G_room T_room + sources into `out`.
 *  @param before temperatures at the step's start; null for steady or for a response to sources alone
 *  @param roomC  room temperature; 0 together with withRoom = false gives the response to the sources alone */
export function solveNetwork(
  _model: BoxModel,
  net: Network,
  factored: Factored,
  sources: Sources,
  before: BoxState | null,
  roomC: number,
  out: BoxState,
  scratch: Float64Array,
  withRoom = true,
): void {
  const { layout, lu, air, toAir } = factored;
  const { airNodes, patches, order, airAt, halfBand } = layout;
  const row = out.row;
  rightSide(net, factored, sources, before, roomC, row, scratch, withRoom);
  solveBandInPlace(air, airNodes, halfBand, scratch);
  for (let s = 0; s < patches; s++) scratch[airNodes + s] = scratch[airNodes + s]! + toAir[s]! * scratch[airAt[s]!]!;
  solveInPlace(lu, patches, scratch, airNodes);
  for (let a = 0; a < airNodes; a++) scratch[order[a]!] = row[a]!;
  for (let s = 0; s < patches; s++) {
    const t = scratch[airNodes + s]!;
    row[airNodes + s] = t;
    scratch[airAt[s]!] = scratch[airAt[s]!]! + toAir[s]! * t;
  }
  solveBandInPlace(air, airNodes, halfBand, scratch);
  for (let a = 0; a < airNodes; a++) row[a] = scratch[order[a]!]!;
  fillPanels(factored, row);
}

/** What drives each unknown [W]: air (in `scratch` column by column, and in `row`), surfaces with what their panels pass on. */
function rightSide(
  net: Network,
  { layout, gain, held }: Factored,
  sources: Sources,
  before: BoxState | null,
  roomC: number,
  row: Float64Array,
  scratch: Float64Array,
  withRoom: boolean,
): void {
  const { airNodes, patches, behind, first, order, matAt } = layout;
  const at = airNodes + patches;
  const total = at + behind;
  if (before) {
    const old = before.row;
    for (let k = 0; k < total; k++) row[k] = held[k]! * old[k]!;
  } else row.fill(0);
  for (let a = 0; a < airNodes; a++) {
    const v = row[a]! + sources.airW[a]! + (withRoom ? net.airToRoom[a]! * roomC : 0);
    row[a] = v;
    scratch[order[a]!] = v;
  }
  for (let s = 0; s < patches; s++) {
    const mat = sources.matW[s]!;
    if (mat !== 0) row[matAt[s]!] = row[matAt[s]!]! + mat;
    let carry = withRoom ? net.outerLink[s]! * net.outsideC[s]! : 0;
    for (let k = first[s + 1]! - 1; k >= first[s]!; k--) {
      const b = row[at + k]! + carry;
      row[at + k] = b;
      carry = b * gain[k]!;
    }
    scratch[airNodes + s] = row[airNodes + s]! + sources.surfaceW[s]! + carry;
  }
}

/** Temperatures behind the surfaces from those of the surfaces. */
function fillPanels({ layout, gain, pivot }: Factored, row: Float64Array): void {
  const { airNodes, patches, first } = layout;
  const at = airNodes + patches;
  for (let s = 0; s < patches; s++) {
    let inner = row[airNodes + s]!;
    for (let k = first[s]!; k < first[s + 1]!; k++) {
      inner = row[at + k]! * pivot[k]! + gain[k]! * inner;
      row[at + k] = inner;
    }
  }
}

/** Heat leaving the box in this state, to the room, its base and with the air that goes out [W]. */
export function heatOutW(net: Network, state: BoxState, roomC: number): number {
  const cp = airHeatCapacityJPerKgK;
  const { exchangeKgPerS, streams } = net.ventilation;
  let sum = 0;
  for (let a = 0; a < net.airNodes; a++) sum += exchangeKgPerS[a]! * cp * (state.airC[a]! - roomC);
  for (const s of streams) if (s.to < 0) sum += s.kgPerS * cp * (state.airC[s.from]! - roomC);
  for (let s = 0; s < net.outerLink.length; s++) sum += patchLossW(net, state, s);
  return sum;
}

export function patchLossW(net: Network, state: BoxState, s: number): number {
  const { airNodes, patches, first } = state.layout;
  const last = first[s + 1]!;
  const outer = last > first[s]! ? state.row[airNodes + patches + last - 1]! : state.row[airNodes + s]!;
  return net.outerLink[s]! * (outer - net.outsideC[s]!);
}

/** Heat stored above 0 degC [J]. */
export function storedJ(_model: BoxModel, state: BoxState): number {
  const { capacity } = state.layout;
  const { row } = state;
  let sum = 0;
  for (let k = 0; k < capacity.length; k++) sum += capacity[k]! * row[k]!;
  return sum;
}
