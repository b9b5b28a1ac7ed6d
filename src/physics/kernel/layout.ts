// Where everything of a box lies in one row of numbers: air nodes, inner surfaces, then the nodes behind each surface,
// patch after patch. Depends on the grid and the chains only. Leaves out every temperature and conductance of a moment.
import { airHeatCapacityJPerKgK } from '../formulas/constants.ts';
import type { Grid, Patch } from '../grid.ts';
import type { BoxModel } from '../model.ts';
import { riseFrac } from '../stirring.ts';

export interface Layout {
  readonly airNodes: number;
  readonly patches: number;
  /** Nodes behind all surfaces together. */
  readonly behind: number;
  /** First node behind patch s, counted from the first of all nodes behind; one more entry than patches. */
  readonly first: Int32Array;
  /** Heat capacity of every number of the row [J/K]. */
  readonly capacity: Float64Array;
  /** Conductance from the node before to each node behind [W/K]. */
  readonly conductance: Float64Array;
  /** Where a mat's heat enters, as a place in the row. */
  readonly matAt: Int32Array;
  readonly hasMats: boolean;
  /** The outermost node of each panel, as a place in the row. */
  readonly outermost: Int32Array;
  /** Which way each surface faces (0 floor, 1 ceiling, 2 wall), whether it is open mesh, and the air node it touches. */
  readonly facing: Uint8Array;
  readonly isMesh: Uint8Array;
  readonly airNode: Int32Array;
  /** Part of the box's height through which heat from each surface rises. */
  readonly riseFrac: Float64Array;
  /** Resistance beyond each panel besides the outer film [m2K/W]. */
  readonly baseResistance: Float64Array;
  /** Place of each air node when counted column by column, half the width of the band that this gives,
   *  and the place of the air that each patch touches. */
  readonly order: Int32Array;
  readonly airAt: Int32Array;
  readonly halfBand: number;
  /** Radiant groups: how many, the group of each surface, and its share of the group's area. */
  readonly groups: number;
  readonly groupOf: Int32Array;
  readonly share: Float64Array;
  /** Whether any group has more than one surface, and half the width of the band of the air once surfaces are eliminated:
   *  members of a group link the air along them. */
  readonly isGrouped: boolean;
  readonly airBand: number;
}

/** Density at which the heat capacity of the air is held [kg/m3]. Our choice: air at 23 degC. */
const heldAirDensity = 1.19;

/** Air mass in a node times its heat capacity [J/K]. Source: definition. Checks: books of every run close. */
export const airCapacity = (model: BoxModel, node: number): number =>
  model.airVolumeM3[node]! * heldAirDensity * airHeatCapacityJPerKgK;

const facings = ['floor', 'ceiling', 'wall'];

const known = new WeakMap<BoxModel['chains'], Layout>();

/** Layout of a model; worked out once for each set of chains. */
export function layoutOf(model: BoxModel): Layout {
  const found = known.get(model.chains);
  if (found) return found;
  const made = layoutFrom(model);
  known.set(model.chains, made);
  return made;
}

function layoutFrom(model: BoxModel): Layout {
  const { grid, chains } = model;
  const airNodes = model.airVolumeM3.length;
  const patches = chains.length;
  const first = new Int32Array(patches + 1);
  chains.forEach((c, s) => {
    first[s + 1] = first[s]! + c.capacity.length;
  });
  const behind = first[patches]!;
  const capacity = new Float64Array(airNodes + patches + behind);
  const conductance = new Float64Array(behind);
  const matAt = new Int32Array(patches);
  for (let a = 0; a < airNodes; a++) capacity[a] = airCapacity(model, a);
  chains.forEach((c, s) => {
    capacity[airNodes + s] = c.surfaceCapacity;
    capacity.set(c.capacity, airNodes + patches + first[s]!);
    conductance.set(c.conductance, first[s]!);
    matAt[s] = c.sourceNode > 0 ? airNodes + patches + first[s]! + c.sourceNode - 1 : airNodes + s;
  });
  return {
    airNodes,
    patches,
    behind,
    first,
    capacity,
    conductance,
    matAt,
    hasMats: grid.patches.some((p) => p.role === 'mat'),
    facing: Uint8Array.from(grid.patches, (p) => facings.indexOf(p.facing)),
    isMesh: Uint8Array.from(grid.patches, (p) => (p.role === 'mesh' ? 1 : 0)),
    airNode: Int32Array.from(grid.patches, (p) => p.layer * grid.columns + p.column),
    riseFrac: Float64Array.from(grid.patches, (p) => riseFrac(heightOf(grid, p), grid.layerEdgeM[grid.layers]!)),
    baseResistance: Float64Array.from(chains, (c) => c.baseResistance),
    outermost: Int32Array.from(chains, (c, s) =>
      c.capacity.length > 0 ? airNodes + patches + first[s + 1]! - 1 : airNodes + s,
    ),
    airAt: Int32Array.from(grid.patches, (p) => p.column * grid.layers + p.layer),
    order: Int32Array.from(
      { length: airNodes },
      (_, a) => (a % grid.columns) * grid.layers + Math.floor(a / grid.columns),
    ),
    halfBand: grid.layers,
    groups: model.radiant.count,
    groupOf: model.radiant.groupOf,
    share: model.radiant.share,
    isGrouped: !model.radiant.single,
    airBand: Math.max(grid.layers, widestGroup(model)),
  };
}

/** Height at which a surface meets the air, a wall's at the middle of its layer [m]. */
function heightOf({ layers, layerEdgeM, layerZM }: Grid, { facing, layer }: Patch): number {
  if (facing === 'wall') return layerZM[layer]!;
  return facing === 'floor' ? 0 : layerEdgeM[layers]!;
}

/** Furthest apart that the air along one group lies, counted column by column. */
function widestGroup({ grid, radiant }: BoxModel): number {
  const from = new Int32Array(radiant.count).fill(grid.columns);
  const to = new Int32Array(radiant.count);
  grid.patches.forEach(({ column }, s) => {
    const g = radiant.groupOf[s]!;
    from[g] = Math.min(from[g]!, column);
    to[g] = Math.max(to[g]!, column);
  });
  return to.reduce((most, last, g) => Math.max(most, (last - from[g]!) * grid.layers), 0);
}
