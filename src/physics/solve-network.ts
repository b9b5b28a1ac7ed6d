// One linear solve of the heat network: panels eliminated, core solved, panels filled in again.
import type { Factored } from './kernel/factored.ts';
import { layoutOf } from './kernel/layout.ts';
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
  model: BoxModel,
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
  if (!solveInKernel(model, factored, sources, old, outsideC, roomC, out.row))
    solvePlain(factored, sources, old, outsideC, roomC, out.row, scratch);
}

/** Heat leaving the box in this state, to the room, its base and with the air that goes out [W]. */
export function heatOutW(net: Network, state: BoxState, roomC: number): number {
  const { airToOut, outerLink, outsideC } = net;
  const { outermost } = state.layout;
  const { row } = state;
  let sum = 0;
  for (let a = 0; a < airToOut.length; a++) sum += airToOut[a]! * (row[a]! - roomC);
  for (let s = 0; s < outerLink.length; s++) sum += outerLink[s]! * (row[outermost[s]!]! - outsideC[s]!);
  return sum;
}

export const patchLossW = (net: Network, state: BoxState, s: number): number =>
  net.outerLink[s]! * (state.row[state.layout.outermost[s]!]! - net.outsideC[s]!);

/** Heat stored above 0 degC [J]. */
export const storedJ = (model: BoxModel, state: BoxState): number => storedBetweenJ(model, null, state);

/** Heat that a box has taken up from one state to another [J]; the first null for a box at 0 degC. */
export function storedBetweenJ(model: BoxModel, from: BoxState | null, to: BoxState): number {
  const { capacity } = layoutOf(model);
  const { row } = to;
  let sum = 0;
  if (from) {
    const old = from.row;
    for (let k = 0; k < capacity.length; k++) sum += capacity[k]! * (row[k]! - old[k]!);
  } else for (let k = 0; k < capacity.length; k++) sum += capacity[k]! * row[k]!;
  return sum;
}
