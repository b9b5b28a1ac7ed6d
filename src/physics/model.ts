// Everything about a box that does not change while it runs: cut, chains, exchange, patterns, openings.
// Build once per enclosure and parameter set; steady.ts and day.ts run it.

import { type BoxReadings, readingsOf } from './box-readings.ts';
import { buildChain, type Chain } from './chain.ts';
import type { Enclosure, Heater } from './enclosure.ts';
import { absorbedShares, directExchangeAreas, greyExchangeAreas, settledShares } from './exchange.ts';
import { screenDrag } from './formulas/screen-flow.ts';
import { cutBox, type Grid, type Patch } from './grid.ts';
import { beamFromShortWaveFrac, type HeaterBody, heaterBodies } from './heater-kinds.ts';
import type { MaterialTable } from './material.ts';
import { meshOf, plumePassFrac, plumeSpeedMPerS, usualMesh } from './mesh-lid.ts';
import { type Openings, openingsOf } from './openings.ts';
import { bestParameters, type Parameters } from './parameters.ts';
import { firstShares, type Pattern } from './pattern.ts';
import { coarserEdges, type RadiantGroups, radiantGroups } from './radiant-groups.ts';
import type { Point } from './rectangle.ts';
import { riseFrac } from './stirring.ts';

/** A heater ready to run: where its heat goes for each watt of each kind. */
export interface HeaterPath {
  readonly heater: Heater;
  readonly body: HeaterBody;
  /** Area of the body's surface [m2]; 0 for sheets. */
  readonly areaM2: number;
  /** Short-wave part of the electrical power, 0..1. */
  readonly shortWaveFrac: number;
  /** Patch shares of long-wave and short-wave radiation after all reflections; each may sum below 1, the rest is lost. */
  readonly longWave: Float64Array;
  readonly shortWave: Float64Array;
  /** Shares of the convected heat by air node and by ceiling patch, and what is lost straight to the room. */
  readonly plumeAir: Float64Array;
  readonly plumePatch: Float64Array;
  readonly plumeLost: number;
  /** Air that the body stands in: nodes of its layer with their weights, summing to 1. */
  readonly stands: readonly { readonly node: number; readonly weight: number }[];
  readonly pattern: Pattern;
  readonly at: Point;
  /** Outside the box (above the mesh): its convection goes to the room. */
  readonly outside: boolean;
  /** Part of the box's height through which its convected heat rises; 0 for sheets and above the mesh. */
  readonly riseFrac: number;
  /** For sheets: patches that carry it and their shares of its power. */
  readonly sheet: readonly { readonly patch: number; readonly share: number }[];
}

export interface BoxModel {
  readonly enclosure: Enclosure;
  readonly materials: MaterialTable;
  readonly parameters: Parameters;
  readonly grid: Grid;
  readonly areas: Float64Array;
  readonly radiant: RadiantGroups;
  /** emissivity_i A_i B_ij [m2] of the radiant groups, symmetric: long-wave exchange once multiplied by 4 sigma T^3. */
  readonly greyExchange: Float64Array;
  /** The same of each group with all others and itself [m2]. */
  readonly greySum: Float64Array;
  readonly chains: readonly Chain[];
  readonly heaters: readonly HeaterPath[];
  readonly openings: Openings;
  readonly readings: BoxReadings;
  /** Where sun that has passed the front is absorbed, per watt through the glass. */
  readonly sunShares: Float64Array;
  /** Clear area of the front and the share it lets through. */
  readonly sunAreaM2: number;
  readonly sunThroughFrac: number;
  readonly airVolumeM3: Float64Array;
}

/** What does not depend on the uncertain parameters; shared by all members of an ensemble. */
export interface BoxGeometry {
  readonly enclosure: Enclosure;
  readonly materials: MaterialTable;
  readonly grid: Grid;
  readonly areas: Float64Array;
  readonly radiant: RadiantGroups;
  /** From here on by radiant group. */
  readonly emissivity: readonly number[];
  readonly longShares: Float64Array;
  readonly greyExchange: Float64Array;
  readonly greySum: Float64Array;
  readonly shortAbsorb: readonly number[];
  readonly shortReflect: readonly number[];
  readonly shortShares: Float64Array;
}

/** Columns for an enclosure: about 0.15 m each, 8 to 16, and two more for each lamp with a beam, whose footprint is narrow,
 *  and for each mat and panel, whose ends are edges. Doubling them moves named places by less than 0.3 K (box-laws.test.ts). */
export function columnsFor(enclosure: Enclosure): number {
  const even = Math.max(8, Math.min(16, Math.round(enclosure.box.lengthM / 0.15)));
  const narrow = enclosure.heaters.filter(
    ({ kind }) => heaterBodies[kind].form === 'area' || heaterBodies[kind].shortWaveFrac > beamFromShortWaveFrac,
  );
  return even + 2 * narrow.length;
}

/** Short-wave absorptance of opaque inside surfaces; wood and substrate 0.6 to 0.8, our choice. */
const opaqueShortAbsorb = 0.7;
/** Short-wave absorptance of clear panels; float glass about 0.1 (EN410, from memory). */
const clearShortAbsorb = 0.1;

/** Columns up to which every surface exchanges with every other by itself; a box cut finer radiates in groups of neighbours.
 *  Our choice: no fewer than the program itself ever takes, so that its own answers are those of the full exchange. */
export const radiantColumnsFor = (enclosure: Enclosure): number => Math.max(16, columnsFor(enclosure));

/** Geometry and exchange of a validated enclosure.
 *  @param columns 4..64   @param radiantColumns most columns of surfaces that exchange by themselves */
export function boxGeometry(
  enclosure: Enclosure,
  materials: MaterialTable,
  columns = columnsFor(enclosure),
  radiantColumns = radiantColumnsFor(enclosure),
): BoxGeometry {
  const grid = cutBox(enclosure, columns);
  const areas = Float64Array.from(grid.patches, (p) => p.areaM2);
  const radiant = radiantGroups(grid.patches, grid.edgeM, coarserEdges(enclosure, grid.edgeM, radiantColumns));
  const list = radiant.patches.map((p) => p.areaM2);
  const emissivity = radiant.patches.map((p) => patchEmissivity(enclosure, materials, p));
  const direct = directExchangeAreas(radiant.patches);
  const longShares = absorbedShares(
    direct,
    list,
    emissivity,
    emissivity.map((e) => 1 - e),
  );
  const greyExchange = greyExchangeAreas(radiant, longShares, emissivity);
  const short = radiant.patches.map((p) => shortWaveOf(enclosure, materials, p));
  const shortAbsorb = short.map((s) => s.absorb);
  const shortReflect = short.map((s) => 1 - s.absorb - s.through);
  const shortShares = absorbedShares(direct, list, shortAbsorb, shortReflect);
  return {
    enclosure,
    materials,
    grid,
    areas,
    radiant,
    emissivity,
    longShares,
    greyExchange,
    greySum: rowSums(greyExchange, emissivity.length),
    shortAbsorb,
    shortReflect,
    shortShares,
  };
}

/** The model of one parameter set on a given geometry. */
export function modelFrom(geometry: BoxGeometry, parameters: Parameters = bestParameters): BoxModel {
  const { enclosure, materials, grid } = geometry;
  const chains = grid.patches.map((p) => patchChain(enclosure, materials, parameters, p));
  const heaters = enclosure.heaters.map((h, i) => heaterPath(geometry, parameters, h, i));
  const front = enclosure.box.panels.front;
  const sunThroughFrac = front.layers.reduce((f, l) => f * (materials[l.materialId]?.shortWaveThroughFrac ?? 0), 1);
  const layerArea = enclosure.box.depthM * (enclosure.box.heightM / grid.layers);
  return {
    enclosure,
    materials,
    parameters,
    grid,
    areas: geometry.areas,
    radiant: geometry.radiant,
    greyExchange: geometry.greyExchange,
    greySum: geometry.greySum,
    chains,
    heaters,
    openings: openingsOf(enclosure, grid, parameters),
    readings: readingsOf({
      enclosure,
      grid,
      parameters,
      heaters,
      sourceNodes: chains.map((c) => c.sourceNode),
      areas: geometry.areas,
    }),
    sunShares: sunShares(geometry),
    sunAreaM2: enclosure.box.lengthM * enclosure.box.heightM,
    sunThroughFrac,
    airVolumeM3: Float64Array.from({ length: grid.columns * grid.layers }, (_, node) => {
      const i = node % grid.columns;
      return (grid.edgeM[i + 1]! - grid.edgeM[i]!) * layerArea;
    }),
  };
}

const rowSums = (a: Float64Array, n: number): Float64Array =>
  Float64Array.from({ length: n }, (_, i) => a.subarray(i * n, (i + 1) * n).reduce((sum, v) => sum + v, 0));

/** Model with best-estimate parameters, straight from an enclosure. */
export function buildModel(
  enclosure: Enclosure,
  materials: MaterialTable,
  parameters: Parameters = bestParameters,
  columns = columnsFor(enclosure),
): BoxModel {
  return modelFrom(boxGeometry(enclosure, materials, columns), parameters);
}

function patchEmissivity(enclosure: Enclosure, materials: MaterialTable, p: Patch): number {
  if (p.role === 'mesh')
    return Math.max(0.05, Math.min(0.98, enclosure.box.panels[p.panel].meshOpenFrac ?? usualMesh.openFrac));
  if (p.role === 'panel') return 0.9;
  const inner = innerMaterial(enclosure, p);
  return materials[inner]?.emissivity ?? 0.9;
}

function innerMaterial(enclosure: Enclosure, p: Patch): string {
  if (p.facing === 'floor' && enclosure.substrate) return enclosure.substrate.materialId;
  return enclosure.box.panels[p.panel].layers[0]!.materialId;
}

function shortWaveOf(enclosure: Enclosure, materials: MaterialTable, p: Patch): { absorb: number; through: number } {
  if (p.role === 'mesh')
    return { absorb: 0.1, through: 0.9 * (enclosure.box.panels[p.panel].meshOpenFrac ?? usualMesh.openFrac) };
  if (p.role === 'panel') return { absorb: 0.5, through: 0 };
  const inner = innerMaterial(enclosure, p);
  const through = materials[inner]?.shortWaveThroughFrac ?? 0;
  return through > 0 ? { absorb: clearShortAbsorb, through } : { absorb: opaqueShortAbsorb, through: 0 };
}

/** Still air and feet between a box and the furniture it stands on [m2K/W]; stands-on-a-shelf value after the CFD box (our choice). */
const shelfResistance = 0.14;

function patchChain(enclosure: Enclosure, materials: MaterialTable, parameters: Parameters, p: Patch): Chain {
  const none = new Float64Array(0);
  if (p.role === 'mesh')
    return { surfaceCapacity: 0, capacity: none, conductance: none, sourceNode: -1, baseResistance: 0 };
  const panel = enclosure.box.panels[p.panel].layers.map((l) => ({ ...l, conductivity: parameters.panelConductivity }));
  const sheet = p.heater >= 0 ? enclosure.heaters[p.heater]! : null;
  if (p.facing === 'ceiling' && sheet) {
    // A radiant panel: its face is the surface node, behind it 10 mm of light insulation, then the ceiling.
    const backing = materials.eps ? [{ materialId: 'eps', thicknessM: 0.01, conductivity: 1 }] : [];
    const chain = buildChain([...backing, ...panel], p.areaM2, materials, -1, 0);
    return withSheet(chain, heaterBodies[sheet.kind].heatCapacity * p.areaM2);
  }
  if (p.facing !== 'floor') return buildChain(panel, p.areaM2, materials, -1, 0);
  const substrate =
    enclosure.substrate && enclosure.substrate.depthM > 0
      ? [
          {
            materialId: enclosure.substrate.materialId,
            thicknessM: enclosure.substrate.depthM,
            conductivity: parameters.substrateConductivity,
          },
        ]
      : [];
  const layers = [...substrate, ...panel];
  const base = enclosure.box.base.kind === 'legs' ? 0 : enclosure.box.base.kind === 'stacked' ? 0.05 : shelfResistance;
  let sourceAfter = -1;
  if (sheet) sourceAfter = sheet.mount === 'under-floor' ? layers.length - 1 : substrate.length - 1;
  const chain = buildChain(layers, p.areaM2, materials, sourceAfter, base);
  return sheet ? withSheet(chain, heaterBodies[sheet.kind].heatCapacity * p.areaM2) : chain;
}

/** The chain with the heat capacity of the sheet at the node that it warms [J/K]. */
function withSheet(chain: Chain, capacityJPerK: number): Chain {
  if (chain.sourceNode <= 0) return { ...chain, surfaceCapacity: chain.surfaceCapacity + capacityJPerK };
  return { ...chain, capacity: chain.capacity.map((c, k) => (k === chain.sourceNode - 1 ? c + capacityJPerK : c)) };
}

function heaterPath(geometry: BoxGeometry, parameters: Parameters, heater: Heater, index: number): HeaterPath {
  const { grid, enclosure } = geometry;
  const body = heaterBodies[heater.kind];
  const n = grid.patches.length;
  const nodes = grid.columns * grid.layers;
  const outside = heater.mount === 'above-mesh';
  const H = enclosure.box.heightM;
  const at: Point = {
    xM: heater.xM,
    yM: heater.yM,
    zM: outside ? H + 0.05 : heater.mount === 'ceiling' ? H - 0.06 : Math.min(heater.zM, H - 0.02),
  };
  const layer = Math.min(grid.layers - 1, Math.floor((at.zM / H) * grid.layers));
  const pattern: Pattern = {
    isotropicFrac: body.shortWaveFrac > beamFromShortWaveFrac ? 0.1 : 1 - parameters.downwardFrac,
    beamDeg: heater.beamDeg ?? body.beamDeg,
  };
  const plumeAir = new Float64Array(nodes);
  const plumePatch = new Float64Array(n);
  const empty = {
    heater,
    body,
    areaM2: 0,
    shortWaveFrac: 0,
    longWave: new Float64Array(n),
    shortWave: new Float64Array(n),
    plumeAir,
    plumePatch,
    plumeLost: 0,
    stands: columnShares(grid, heater.xM).map(({ column, weight }) => ({
      node: layer * grid.columns + column,
      weight,
    })),
    pattern,
    at,
    outside,
    riseFrac: 0,
  };
  if (body.form === 'area') {
    const parts = grid.patches
      .map((p, patch) => ({ patch, share: p.heater === index ? p.areaM2 : 0 }))
      .filter((s) => s.share > 0);
    const total = parts.reduce((sum, s) => sum + s.share, 0);
    return { ...empty, sheet: parts.map((s) => ({ patch: s.patch, share: s.share / total })) };
  }
  const open = outside ? meshOpenAbove(enclosure) : 1;
  const inside: Point = outside ? { ...at, zM: H - 0.005 } : at;
  const longFirst = firstShares(grid.patches, inside, {
    isotropicFrac: outside ? 0 : pattern.isotropicFrac,
    beamDeg: pattern.beamDeg,
  });
  const shortFirst = firstShares(grid.patches, inside, { isotropicFrac: outside ? 0 : 0.05, beamDeg: pattern.beamDeg });
  const longReflect = geometry.emissivity.map((e) => 1 - e);
  // A bare body above the mesh sends half its own radiation up and away.
  const longKept = outside ? 0.5 * open : 1;
  const shortKept = outside ? open : 1;
  const longWave = settledShares(
    longFirst,
    geometry.radiant,
    geometry.longShares,
    geometry.emissivity,
    longReflect,
  ).map((v) => v * longKept);
  const shortWave = settledShares(
    shortFirst,
    geometry.radiant,
    geometry.shortShares,
    geometry.shortAbsorb,
    geometry.shortReflect,
  ).map((v) => v * shortKept);
  const plumeLost = outside ? 1 : sharePlume(geometry, parameters, heater, at, plumeAir, plumePatch);
  return {
    ...empty,
    areaM2: Math.PI * body.diameterM ** 2,
    shortWaveFrac: body.shortWaveFrac,
    longWave,
    shortWave,
    plumeLost,
    riseFrac: outside ? 0 : riseFrac(at.zM, H),
    sheet: [],
  };
}

const meshOpenAbove = (enclosure: Enclosure): number =>
  (enclosure.box.panels.top.meshShareFrac ?? 0) > 0 ? (enclosure.box.panels.top.meshOpenFrac ?? usualMesh.openFrac) : 0;

/** Where the plume of a heater ends: a heater just below the ceiling gives most of it to the ceiling, spreading
 *  along it; the rest goes to the air of its column above it. Fitted to the shares by eighths of the CFD box
 *  (checks/cross: 16, 30, 19, 11, 8, 7, 5, 4 %), whose heater hung 0.12 m below; less for a lower heater is our choice.
 *  Under open mesh only what passes the wires is lost; the rest spreads below the lid in the air of the top layer.
 *  @returns share lost straight to the room through open mesh above */
function sharePlume(
  geometry: BoxGeometry,
  parameters: Parameters,
  heater: Heater,
  at: Point,
  air: Float64Array,
  patch: Float64Array,
): number {
  const { grid, enclosure } = geometry;
  const gapM = Math.max(0, enclosure.box.heightM - at.zM);
  const passes = throughMesh(enclosure, parameters, heater, gapM);
  const top = (grid.layers - 1) * grid.columns;
  const toCeiling = parameters.plumeToCeilingFrac * Math.exp(-Math.max(0, gapM - 0.12) / 0.35);
  let lost = 0;
  let sum = 0;
  const weight = grid.patches.map((p) => {
    if (p.facing !== 'ceiling') return 0;
    const w = p.areaM2 * (1 + Math.abs(grid.columnXM[p.column]! - at.xM) / 0.2) ** -1.1;
    sum += w;
    return w;
  });
  grid.patches.forEach((p, i) => {
    if (weight[i] === 0) return;
    const share = (toCeiling * weight[i]!) / sum;
    if (p.role === 'mesh') {
      lost += share * passes;
      air[top + p.column] = air[top + p.column]! + share * (1 - passes);
    } else patch[i] = share;
  });
  const from = Math.min(grid.layers - 1, Math.floor((at.zM / enclosure.box.heightM) * grid.layers));
  const above = grid.layers - from;
  for (let k = from; k < grid.layers; k++)
    for (const { column, weight } of columnShares(grid, at.xM))
      air[k * grid.columns + column] = air[k * grid.columns + column]! + ((1 - toCeiling) * weight) / above;
  return lost;
}

/** Share of what a plume brings to a mesh lid that passes it. */
function throughMesh(enclosure: Enclosure, parameters: Parameters, heater: Heater, gapM: number): number {
  const { diameterM, shortWaveFrac } = heaterBodies[heater.kind];
  const speed = plumeSpeedMPerS(diameterM, heater.powerW, shortWaveFrac, gapM);
  return Math.min(1, plumePassFrac(speed, screenDrag(meshOf(enclosure, 'top'))) * parameters.meshExchange);
}

/** Where sun through the front lands: mostly the floor, then the back; our choice for a window at the side. */
function sunShares(geometry: BoxGeometry): Float64Array {
  const first = new Float64Array(geometry.grid.patches.length);
  const total = { floor: 0, back: 0, ends: 0 };
  const kind = (p: Patch) =>
    p.facing === 'floor'
      ? 'floor'
      : p.panel === 'back'
        ? 'back'
        : p.panel === 'left' || p.panel === 'right'
          ? 'ends'
          : null;
  for (const p of geometry.grid.patches) {
    const k = kind(p);
    if (k) total[k] += p.areaM2;
  }
  const share = { floor: 0.6, back: 0.3, ends: 0.1 };
  geometry.grid.patches.forEach((p, i) => {
    const k = kind(p);
    if (k) first[i] = (share[k] * p.areaM2) / total[k];
  });
  return settledShares(first, geometry.radiant, geometry.shortShares, geometry.shortAbsorb, geometry.shortReflect);
}

/** Half width of a plume where it is given to the columns of air [m]; our choice. */
const plumeHalfM = 0.1;

/** Columns that a plume at x feeds, by their overlap with its width. */
function columnShares(grid: Grid, xM: number): { column: number; weight: number }[] {
  const last = grid.edgeM[grid.columns]!;
  const from = Math.max(0, xM - plumeHalfM);
  const to = Math.min(last, xM + plumeHalfM);
  const shares: { column: number; weight: number }[] = [];
  for (let column = 0; column < grid.columns; column++) {
    const x = Math.min(to, grid.edgeM[column + 1]!) - Math.max(from, grid.edgeM[column]!);
    if (x > 1e-9) shares.push({ column, weight: x / (to - from) });
  }
  return shares;
}

export function columnAt(grid: Grid, xM: number): number {
  let c = 0;
  while (c < grid.columns - 1 && grid.edgeM[c + 1]! <= xM) c++;
  return c;
}
