// A network made ready for one step length: panels, surfaces within their radiant groups and air eliminated, the groups that
// see each other factored. What is left dense is only the long-wave exchange between groups, which does not grow with the
// number of columns once these are many.
//
// A surface i of group g, with share w_i of its area, sends σ T_i^4 and gets its share of what falls on the group. With
// y_g the fourth-power mean of the group, r_i the slope of σ T^4 between T_i and y_g times all that the group exchanges with,
// and H_gh the slope between two groups' means (network.ts), its loss by long wave is
//   w_i r_i (T_i - y_g) + w_i sum over h of H_gh (y_g - y_h),    y_g = sum of m_i T_i,  m_i = w_i r_i / sum of w_i r_i,
// exact at the temperatures of the slopes. With D_i all that it loses for each kelvin of its own and t_i its link to the air,
//   D_i T_i = b_i + t_i T_air + w_i r_i y_g + w_i x_g,           x_g = sum over h of H_gh (y_h - y_g).
// Surfaces eliminated for given means: x_g = α_g y_g - c_g - sum of u_i T_air, where with Q_g = sum of m_i w_i / D_i
//   α_g = (1 - sum of m_i w_i r_i / D_i) / Q_g,  c_g = sum of m_i b_i / (D_i Q_g),  u_i = m_i t_i / (D_i Q_g),
// and the air gets p_i y_g from each surface, p_i = t_i w_i (r_i + α_g) / D_i. Groups of one: α = D - r and u = p = t, which is
// the full exchange.
import { factorInPlace } from '../dense.ts';
import { factorBandInPlace, solveBandRows } from '../dense-band.ts';
import type { BoxModel } from '../model.ts';
import type { Network } from '../network.ts';
import { type Layout, layoutOf } from './layout.ts';
import { factorInKernel } from './resident.ts';

export interface Factored {
  readonly layout: Layout;
  /** Factors of the groups' means, groups x groups, and of the air, column by column. */
  readonly lu: Float64Array;
  readonly air: Float64Array;
  /** Links between each surface's group and the air that the surface touches: what the air gets, p_i, and what the group
   *  gets, u_i [W/K]; of a group of one both the surface's own. */
  readonly toAir: Float64Array;
  readonly fromAir: Float64Array;
  /** Empty unless groups have several members. By surface: 1 / D_i, w_i / D_i [K/W], t_i / D_i [-], w_i r_i / D_i [-],
   *  w_i t_i / D_i [-], m_i / (D_i Q_g) [-]; by group: α_g [W/K]. */
  readonly alone: Float64Array;
  readonly shareAlone: Float64Array;
  readonly airAlone: Float64Array;
  readonly meanAlone: Float64Array;
  readonly shareAir: Float64Array;
  readonly toMean: Float64Array;
  readonly perGroup: Float64Array;
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
  if (!factorInKernel(model, ready)) factorPlain(ready);
  return ready;
}

/** The same with panels and surfaces eliminated, but air and groups not yet factored. */
export function eliminated(model: BoxModel, net: Network, perS: number): Factored {
  const layout = layoutOf(model);
  const { capacity, behind, groups } = layout;
  const held = new Float64Array(capacity.length);
  for (let k = 0; k < held.length; k++) held[k] = capacity[k]! * perS;
  const pivot = new Float64Array(behind);
  const gain = new Float64Array(behind);
  const own = eliminatePanels(net, layout, held, pivot, gain);
  const lu = new Float64Array(groups * groups);
  for (let k = 0; k < lu.length; k++) lu[k] = -net.radiant[k]!;
  for (let g = 0; g < groups; g++) lu[g * groups + g] = net.radiantSum[g]!;
  const air = airBand(net, layout, held);
  const { airToRoom, airToOut, outerLink } = net;
  const parts = layout.isGrouped ? joinGroups(net, layout, own, air, lu) : alone(net, layout, own, lu);
  return { layout, lu, air, ...parts, pivot, gain, held, airToRoom, airToOut, outerLink, perS };
}

type GroupParts = Pick<
  Factored,
  'toAir' | 'fromAir' | 'alone' | 'shareAlone' | 'airAlone' | 'meanAlone' | 'shareAir' | 'toMean' | 'perGroup'
>;
const none = new Float64Array(0);
const noParts = {
  ...{ alone: none, shareAlone: none, airAlone: none, meanAlone: none, shareAir: none, toMean: none, perGroup: none },
};

/** Every surface its own group. */
function alone(net: Network, { groups }: Layout, own: Float64Array, lu: Float64Array): GroupParts {
  for (let s = 0; s < groups; s++) lu[s * groups + s] = lu[s * groups + s]! + own[s]!;
  return { toAir: net.toAir, fromAir: net.toAir, ...noParts };
}

/** Surfaces eliminated for given means of their groups; enters what follows into the air and the groups' matrix. */
function joinGroups(net: Network, layout: Layout, own: Float64Array, air: Float64Array, lu: Float64Array): GroupParts {
  const { patches, groups, groupOf, share, airAt, airBand: w } = layout;
  const { beyondMean, toAir: link } = net;
  const inverse = own.map((d, s) => 1 / (d + beyondMean[s]!));
  const shareAlone = inverse.map((v, s) => v * share[s]!);
  const airAlone = inverse.map((v, s) => v * link[s]!);
  const meanAlone = inverse.map((v, s) => v * beyondMean[s]!);
  const shareAir = shareAlone.map((v, s) => v * link[s]!);
  const members: number[][] = Array.from({ length: groups }, () => []);
  for (let s = 0; s < patches; s++) members[groupOf[s]!]!.push(s);
  const perGroup = new Float64Array(groups);
  const toMean = new Float64Array(patches);
  const toAir = new Float64Array(patches);
  const fromAir = new Float64Array(patches);
  const wide = 2 * w + 1;
  members.forEach((list, g) => {
    let beyond = 0;
    for (const s of list) beyond += beyondMean[s]!;
    let q = 0;
    let kept = 0;
    for (const s of list) {
      const m = beyondMean[s]! / beyond;
      q += m * shareAlone[s]!;
      kept += m * meanAlone[s]!;
    }
    const alpha = (1 - kept) / q;
    perGroup[g] = alpha;
    lu[g * groups + g] = lu[g * groups + g]! + alpha;
    for (const s of list) {
      toMean[s] = (beyondMean[s]! / beyond) * (inverse[s]! / q);
      fromAir[s] = toMean[s]! * link[s]!;
      toAir[s] = link[s]! * (meanAlone[s]! + alpha * shareAlone[s]!);
    }
    for (const s of list) {
      const row = airAt[s]! * wide + w;
      air[row] = air[row]! - link[s]! * airAlone[s]!;
      for (const other of list) {
        const at = row + airAt[other]! - airAt[s]!;
        air[at] = air[at]! + shareAir[s]! * fromAir[other]!;
      }
    }
  });
  return { toAir, fromAir, alone: inverse, shareAlone, airAlone, meanAlone, shareAir, toMean, perGroup };
}

/** @returns what each surface loses for each kelvin once its panel is eliminated [W/K] */
function eliminatePanels(
  net: Network,
  { airNodes, patches, first, conductance }: Layout,
  held: Float64Array,
  pivot: Float64Array,
  gain: Float64Array,
): Float64Array {
  const at = airNodes + patches;
  const own = new Float64Array(patches);
  for (let s = 0; s < patches; s++) {
    let beyond = net.outerLink[s]!;
    for (let k = first[s + 1]! - 1; k >= first[s]!; k--) {
      const g = conductance[k]!;
      const p = 1 / (held[at + k]! + g + beyond);
      pivot[k] = p;
      gain[k] = g * p;
      beyond = g - g * g * p;
    }
    own[s] = net.own[s]! + beyond + held[airNodes + s]!;
  }
  return own;
}

/** The air's own matrix with its heat capacity, in a band wide enough for what the groups add. */
function airBand(net: Network, { airNodes, order, halfBand, airBand: w }: Layout, held: Float64Array): Float64Array {
  const wide = 2 * w + 1;
  const narrow = 2 * halfBand + 1;
  const air = w === halfBand ? net.air.slice() : new Float64Array(airNodes * wide);
  if (w > halfBand)
    for (let row = 0; row < airNodes; row++)
      air.set(net.air.subarray(row * narrow, (row + 1) * narrow), row * wide + w - halfBand);
  for (let a = 0; a < airNodes; a++) {
    const at = order[a]! * wide + w;
    air[at] = air[at]! + held[a]!;
  }
  return air;
}

/** Factors of the air, then of the groups once what they exchange through the air is taken from them. Plain arithmetic. */
export function factorPlain({ layout, lu, air, toAir, fromAir }: Factored): void {
  const { airNodes, patches, groups, groupOf, airAt, airBand: w } = layout;
  factorBandInPlace(air, airNodes, w);
  // answer of every air node to one kelvin of each group, a row for each node
  const answers = new Float64Array(airNodes * groups);
  for (let s = 0; s < patches; s++) {
    const at = airAt[s]! * groups + groupOf[s]!;
    answers[at] = answers[at]! + toAir[s]!;
  }
  solveBandRows(air, airNodes, w, answers, groups);
  for (let s = 0; s < patches; s++) {
    const row = groupOf[s]! * groups;
    const from = airAt[s]! * groups;
    for (let j = 0; j < groups; j++) lu[row + j] = lu[row + j]! - fromAir[s]! * answers[from + j]!;
  }
  factorInPlace(lu, groups);
}
