// One linear solve of the heat network: panels eliminated, core solved, panels filled in again.
import { airHeatCapacityJPerKgK } from './formulas/constants.ts';
import type { Factored } from './kernel/factored.ts';
import { solveInKernel } from './kernel/resident.ts';
import { type Sources, solvePlain } from './kernel/solve-plain.ts';
import type { BoxModel } from './model.ts';
import type { BoxState, Network } from './network.ts';

export { airCapacity } from './kernel/layout.ts';
export type { Sources } from './kernel/solve-plain.ts';

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
  const outsideC = withRoom ? net.outsideC : null;
  const old = before ? before.row : null;
  if (!solveInKernel(factored, sources, old, outsideC, roomC, out.row))
    solvePlain(factored, sources, old, outsideC, roomC, out.row, scratch);
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
