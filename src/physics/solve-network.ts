// One linear solve of the heat network: panels eliminated, core solved, panels filled in again.
import { solveInPlace } from './dense.ts';
import { airHeatCapacityJPerKgK } from './formulas/constants.ts';
import type { BoxModel } from './model.ts';
import type { BoxState, Factored, Network } from './network.ts';

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

/** Air mass in a node times its heat capacity [J/K]; density held at 1.19 kg/m3. */
export const airCapacity = (model: BoxModel, node: number): number =>
  model.airVolumeM3[node]! * 1.19 * airHeatCapacityJPerKgK;

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
  const { airNodes, size } = net;
  const perS = before ? factored.perS : 0;
  const rhs = scratch;
  for (let a = 0; a < airNodes; a++) {
    let v = sources.airW[a]! + (withRoom ? net.airToRoom[a]! * roomC : 0);
    if (before) v += airCapacity(model, a) * perS * before.airC[a]!;
    rhs[a] = v;
  }
  const n = size - airNodes;
  for (let s = 0; s < n; s++) {
    const chain = model.chains[s]!;
    const m = chain.capacity.length;
    const outside = withRoom ? net.outerLink[s]! * net.outsideC[s]! : 0;
    let v = sources.surfaceW[s]!;
    if (before) v += chain.surfaceCapacity * perS * before.surfaceC[s]!;
    const mat = sources.matW[s]!;
    if (m === 0) {
      rhs[airNodes + s] = v + outside + mat;
      continue;
    }
    const pivot = factored.pivot[s]!;
    const work = out.behindC[s]!;
    const old = before ? before.behindC[s]! : null;
    let carry = outside;
    for (let j = m - 1; j >= 0; j--) {
      let b = carry;
      if (old) b += chain.capacity[j]! * perS * old[j]!;
      if (mat !== 0 && chain.sourceNode === j + 1) b += mat;
      work[j] = b;
      carry = chain.conductance[j]! * b * pivot[j]!;
    }
    if (mat !== 0 && chain.sourceNode <= 0) v += mat;
    rhs[airNodes + s] = v + carry;
  }
  solveInPlace(factored.lu, size, rhs);
  for (let a = 0; a < airNodes; a++) out.airC[a] = rhs[a]!;
  for (let s = 0; s < n; s++) {
    let inner = rhs[airNodes + s]!;
    out.surfaceC[s] = inner;
    const chain = model.chains[s]!;
    const pivot = factored.pivot[s]!;
    const work = out.behindC[s]!;
    for (let j = 0; j < work.length; j++) {
      inner = (work[j]! + chain.conductance[j]! * inner) * pivot[j]!;
      work[j] = inner;
    }
  }
}

/** Heat leaving the box to the room and its base in this state [W]. */
export function heatOutW(net: Network, state: BoxState, roomC: number): number {
  let sum = 0;
  for (let a = 0; a < net.airNodes; a++) sum += airLossW(net, state, a, roomC);
  for (let s = 0; s < net.outerLink.length; s++) sum += patchLossW(net, state, s);
  return sum;
}

export function patchLossW(net: Network, state: BoxState, s: number): number {
  const behind = state.behindC[s]!;
  const outer = behind.length > 0 ? behind[behind.length - 1]! : state.surfaceC[s]!;
  return net.outerLink[s]! * (outer - net.outsideC[s]!);
}

/** Enthalpy carried off with the air that leaves a node, by exchange and by streams out [W]. */
function airLossW(net: Network, state: BoxState, a: number, roomC: number): number {
  let w = net.ventilation.exchangeKgPerS[a]! * airHeatCapacityJPerKgK * (state.airC[a]! - roomC);
  for (const s of net.ventilation.streams)
    if (s.to < 0 && s.from === a) w += s.kgPerS * airHeatCapacityJPerKgK * (state.airC[a]! - roomC);
  return w;
}

/** Heat stored above 0 degC [J]. */
export function storedJ(model: BoxModel, state: BoxState): number {
  let sum = 0;
  for (let a = 0; a < state.airC.length; a++) sum += airCapacity(model, a) * state.airC[a]!;
  model.chains.forEach((chain, s) => {
    sum += chain.surfaceCapacity * state.surfaceC[s]!;
    for (let j = 0; j < chain.capacity.length; j++) sum += chain.capacity[j]! * state.behindC[s]![j]!;
  });
  return sum;
}
