// Vents, gaps and mesh of a box as openings at a place and height, ready for the buoyancy balance.
import type { Enclosure } from './enclosure.ts';
import { dischargeSharpEdged } from './formulas/opening-flow.ts';
import { type ScreenDrag, screenDrag } from './formulas/screen-flow.ts';
import type { Grid } from './grid.ts';
import { meshOf } from './mesh-lid.ts';
import type { Parameters } from './parameters.ts';

export interface Opening {
  readonly zM: number;
  /** Discharge coefficient times open area [m2]. */
  readonly effectiveM2: number;
  /** Open height for flow both ways [m]. */
  readonly heightM: number;
  readonly airNode: number;
  /** Wires across it, whose drag comes on top of its edge; null for a hole. */
  readonly drag: ScreenDrag | null;
}

export interface Openings {
  readonly list: readonly Opening[];
  /** Open mesh by column of the ceiling [m2] (times its open share). */
  readonly meshOpenM2: Float64Array;
  readonly meshTotalM2: number;
  /** Drag of the lid's wires. */
  readonly meshDrag: ScreenDrag;
}

/** Gaps are taken as half near the floor and half near the lid, at a quarter and three quarters of the length; our choice. */
export function openingsOf(enclosure: Enclosure, grid: Grid, parameters: Parameters): Openings {
  const { box } = enclosure;
  const list: Opening[] = [];
  const node = (xM: number, zM: number) => {
    let c = 0;
    while (c < grid.columns - 1 && grid.edgeM[c + 1]! <= xM) c++;
    return Math.min(grid.layers - 1, Math.floor((zM / box.heightM) * grid.layers)) * grid.columns + c;
  };
  const add = (xM: number, zM: number, areaM2: number, drag: ScreenDrag | null = null) => {
    if (areaM2 <= 0) return;
    list.push({
      zM,
      effectiveM2: dischargeSharpEdged * areaM2 * parameters.leakage,
      heightM: Math.sqrt(areaM2),
      airNode: node(xM, zM),
      drag,
    });
  };
  for (const v of box.vents) {
    const x = v.panel === 'left' ? 0 : v.panel === 'right' ? box.lengthM : v.alongM;
    const z = v.panel === 'top' ? box.heightM : v.panel === 'bottom' ? 0 : v.heightM;
    add(x, z, v.areaM2 * v.openFrac);
  }
  for (const along of [0.25, 0.75]) {
    add(box.lengthM * along, box.heightM * 0.04, box.gapAreaM2 / 4);
    add(box.lengthM * along, box.heightM * 0.96, box.gapAreaM2 / 4);
  }
  for (const panel of ['front', 'back', 'left', 'right'] as const) {
    const p = box.panels[panel];
    const meshed = (p.meshShareFrac ?? 0) * (1 - (p.meshCoveredFrac ?? 0));
    if (meshed <= 0) continue;
    const drag = screenDrag(meshOf(enclosure, panel));
    const wide = panel === 'front' || panel === 'back' ? box.lengthM : box.depthM;
    const at = panel === 'left' ? [0] : panel === 'right' ? [box.lengthM] : [box.lengthM / 4, (box.lengthM * 3) / 4];
    // Upright mesh: many low and high openings behave like two at a quarter and three quarters of its height.
    for (const x of at) {
      add(x, box.heightM * 0.25, (meshed * wide * box.heightM) / 2 / at.length, drag);
      add(x, box.heightM * 0.75, (meshed * wide * box.heightM) / 2 / at.length, drag);
    }
  }
  const lid = meshOf(enclosure, 'top');
  const meshOpenM2 = new Float64Array(grid.columns);
  let meshTotalM2 = 0;
  for (const p of grid.patches) {
    if (p.role !== 'mesh' || p.facing !== 'ceiling') continue;
    const open = p.areaM2 * lid.openFrac;
    meshOpenM2[p.column] = meshOpenM2[p.column]! + open;
    meshTotalM2 += p.areaM2;
  }
  return { list, meshOpenM2, meshTotalM2, meshDrag: screenDrag(lid) };
}
