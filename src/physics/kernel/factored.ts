// A network made ready for one step length: panels and air eliminated, the surfaces that see each other factored.
// What is left dense is only the long-wave exchange, which links every surface with every other.
import { factorInPlace } from '../dense.ts';
import { factorBandInPlace, solveBandInPlace } from '../dense-band.ts';
import type { BoxModel } from '../model.ts';
import type { Network } from '../network.ts';
import { type Layout, layoutOf } from './layout.ts';
import { factorInKernel } from './resident.ts';

export interface Factored {
  readonly layout: Layout;
  /** Factors of the surfaces, patches x patches, and of the air, column by column. */
  readonly lu: Float64Array;
  readonly air: Float64Array;
  /** Link of each surface to the air it touches [W/K]. */
  readonly toAir: Float64Array;
  /** Per node behind a surface: 1 / pivot after elimination from the outside in [K/W], and that times its conductance inward. */
  readonly pivot: Float64Array;
  readonly gain: Float64Array;
  /** Heat capacity over step weight of everything in the row [W/K]. */
  readonly held: Float64Array;
  /** Links of the air nodes to the room and of the panels to what is beyond them [W/K]. */
  readonly airToRoom: Float64Array;
  readonly outerLink: Float64Array;
  readonly airToOut: Float64Array;
  readonly perS: number;
}

/** Eliminate and factor.
 *  @param net conductances, with the slopes of wet faces   @param perS 1 / (step weight) [1/s]; 0 for steady
 *  Source: Gaussian elimination, no pivoting (every row loses at least what it gains). Checks: books of every run close. */
export function factorNetwork(model: BoxModel, net: Network, perS: number): Factored {
  const ready = eliminated(model, net, perS);
  const { layout, lu, air, toAir } = ready;
  if (!factorInKernel(model, layout, lu, air, toAir)) factorPlain(ready);
  return ready;
}

/** The same with panels eliminated, but air and surfaces not yet factored. */
export function eliminated(model: BoxModel, net: Network, perS: number): Factored {
  const layout = layoutOf(model);
  const { capacity, patches, behind } = layout;
  const held = new Float64Array(capacity.length);
  for (let k = 0; k < held.length; k++) held[k] = capacity[k]! * perS;
  const pivot = new Float64Array(behind);
  const gain = new Float64Array(behind);
  const lu = surfaceCore(net, layout);
  eliminatePanels(net, layout, held, pivot, gain, lu);
  const toAir = new Float64Array(patches);
  const air = airBand(net, layout, held, toAir);
  const { airToRoom, airToOut, outerLink } = net;
  return { layout, lu, air, toAir, pivot, gain, held, airToRoom, airToOut, outerLink, perS };
}

function surfaceCore(net: Network, { airNodes, patches }: Layout): Float64Array {
  const lu = new Float64Array(patches * patches);
  const { core, size } = net;
  for (let s = 0; s < patches; s++) {
    const from = (airNodes + s) * size + airNodes;
    for (let j = 0; j < patches; j++) lu[s * patches + j] = core[from + j]!;
  }
  return lu;
}

function eliminatePanels(
  net: Network,
  { airNodes, patches, first, conductance }: Layout,
  held: Float64Array,
  pivot: Float64Array,
  gain: Float64Array,
  lu: Float64Array,
): void {
  const at = airNodes + patches;
  for (let s = 0; s < patches; s++) {
    let beyond = net.outerLink[s]!;
    for (let k = first[s + 1]! - 1; k >= first[s]!; k--) {
      const g = conductance[k]!;
      const p = 1 / (held[at + k]! + g + beyond);
      pivot[k] = p;
      gain[k] = g * p;
      beyond = g - g * g * p;
    }
    lu[s * patches + s] = lu[s * patches + s]! + beyond + held[airNodes + s]!;
  }
}

/** The air's own matrix, column by column; also says how each surface is linked to it. */
function airBand(
  net: Network,
  { airNodes, patches, order, airAt, halfBand }: Layout,
  held: Float64Array,
  toAir: Float64Array,
): Float64Array {
  const wide = 2 * halfBand + 1;
  const air = new Float64Array(airNodes * wide);
  const node = new Int32Array(airNodes);
  for (let a = 0; a < airNodes; a++) node[order[a]!] = a;
  for (let row = 0; row < airNodes; row++) {
    const from = node[row]! * net.size;
    const last = Math.min(airNodes - 1, row + halfBand);
    for (let to = Math.max(0, row - halfBand); to <= last; to++)
      air[row * wide + halfBand + to - row] = net.core[from + node[to]!]!;
    air[row * wide + halfBand] = air[row * wide + halfBand]! + held[node[row]!]!;
  }
  for (let s = 0; s < patches; s++) toAir[s] = -net.core[node[airAt[s]!]! * net.size + airNodes + s]!;
  return air;
}

/** Factors of the air, then of the surfaces once what they exchange through the air is taken from them. Plain arithmetic. */
export function factorPlain({ layout, lu, air, toAir }: Factored): void {
  const { airNodes, patches, airAt, halfBand } = layout;
  factorBandInPlace(air, airNodes, halfBand);
  // answer of every air node to one watt at each, a row for each place where the watt enters
  const answers = new Float64Array(airNodes * airNodes);
  for (let from = 0; from < airNodes; from++) {
    answers[from * airNodes + from] = 1;
    solveBandInPlace(air, airNodes, halfBand, answers, from * airNodes, from);
  }
  const through = new Float64Array(patches);
  for (let to = 0; to < airNodes; to++) {
    for (let j = 0; j < patches; j++) through[j] = toAir[j]! * answers[airAt[j]! * airNodes + to]!;
    for (let i = 0; i < patches; i++) {
      if (airAt[i] !== to) continue;
      for (let j = 0; j < patches; j++) lu[i * patches + j] = lu[i * patches + j]! - toAir[i]! * through[j]!;
    }
  }
  factorInPlace(lu, patches);
}
