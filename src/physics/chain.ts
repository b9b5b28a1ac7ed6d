// One panel behind one patch as a chain of nodes from the inner surface out to the room.
// Finite volumes with nodes on the cell faces; the inner surface node belongs to the caller.
import type { Layer } from './enclosure.ts';
import type { MaterialTable } from './material.ts';

export interface Chain {
  /** Heat capacity of the inner surface node [J/K]. */
  readonly surfaceCapacity: number;
  /** Heat capacity of nodes 1..n behind it [J/K]. */
  readonly capacity: Float64Array;
  /** Conductance from node j to node j+1 (node 0 = surface) [W/K]. */
  readonly conductance: Float64Array;
  /** Node at which a mat gives its heat; -1 = surface or none. */
  readonly sourceNode: number;
  /** Fixed resistance between the last node and the room besides the outer film [m2K/W]. */
  readonly baseResistance: number;
}

/** Thickest cell [m]: resolves a 15-minute thermostat cycle in wood, whose penetration depth is 6.3 mm (check P-190). */
export const cellThicknessM = 0.005;
const mostCells = 8;

export interface LayerScale {
  readonly conductivity: number;
}

/** Build the chain.
 *  @param layers inside to outside with their conductivity multiplier
 *  @param sourceAfter index of the layer behind which a mat sits, or -1
 *  @param areaM2 area of the patch  */
export function buildChain(
  layers: readonly (Layer & LayerScale)[],
  areaM2: number,
  materials: MaterialTable,
  sourceAfter: number,
  baseResistance: number,
): Chain {
  const capacity: number[] = [0];
  const conductance: number[] = [];
  let sourceNode = -1;
  layers.forEach((layer, at) => {
    const m = materials[layer.materialId];
    if (!m) throw new Error(`material ${layer.materialId} passed validation but is not in the table`);
    const cells = Math.min(mostCells, Math.max(1, Math.ceil(layer.thicknessM / cellThicknessM)));
    const cellM = layer.thicknessM / cells;
    const cellCapacity = m.densityKgPerM3 * m.heatCapacityJPerKgK * cellM * areaM2;
    for (let c = 0; c < cells; c++) {
      capacity[capacity.length - 1] = capacity[capacity.length - 1]! + cellCapacity / 2;
      capacity.push(cellCapacity / 2);
      conductance.push((m.conductivityWPerMK * layer.conductivity * areaM2) / cellM);
    }
    if (at === sourceAfter) sourceNode = capacity.length - 1;
  });
  return {
    surfaceCapacity: capacity[0]!,
    capacity: Float64Array.from(capacity.slice(1)),
    conductance: Float64Array.from(conductance),
    sourceNode,
    baseResistance,
  };
}
