// Air that buoyancy drives through vents, gaps and open mesh, and the way it takes through the box.
// One pressure for the box, the mean temperature of each layer, flow by the orifice law; every opening also
// exchanges air both ways when the through-flow is weak. Leaves out wind, fans and doors being opened.
import { airHeatCapacityJPerKgK, gravityMPerS2 } from './formulas/constants.ts';
import { dischargeSharpEdged, uprightExchangeM3PerS } from './formulas/opening-flow.ts';
import { screenSpeedMPerS } from './formulas/screen-flow.ts';
import type { Grid } from './grid.ts';
import { meshLidExchangeM3PerS } from './mesh-lid.ts';
import type { Opening, Openings } from './openings.ts';
import type { Parameters } from './parameters.ts';

/** A stream of air from one node to another [kg/s]; node -1 is the room. */
export interface Stream {
  readonly from: number;
  readonly to: number;
  readonly kgPerS: number;
}

export interface Ventilation {
  readonly streams: readonly Stream[];
  /** Fresh air [kg/s] per air node that trades places with the same mass of inside air. */
  readonly exchangeKgPerS: Float64Array;
  readonly freshKgPerS: number;
}

/** Loss of a sharp edge, on the speed through its whole hole [-]. */
const edgeLoss = 1 / dischargeSharpEdged ** 2;

export function ventilationOf(
  grid: Grid,
  openings: Openings,
  heightM: number,
  parameters: Parameters,
  airC: Float64Array,
  roomC: number,
): Ventilation {
  const exchange = new Float64Array(airC.length);
  const layerC = layerMeans(grid, airC);
  const flows = openings.list.length > 0 ? throughFlows(grid, openings.list, heightM, layerC, roomC) : [];
  const streams = routed(grid, openings.list, flows);
  let fresh = 0;
  openings.list.forEach((o, at) => {
    const net = Math.abs(flows[at] ?? 0);
    if (flows[at]! > 0) fresh += net;
    const inC = airC[o.airNode]!;
    const airK = (inC + roomC) / 2 + 273.15;
    const both = bothWaysM3PerS(o, inC - roomC, airK) * (353 / airK) * parameters.leakage;
    const extra = Math.max(0, both - net / 2);
    exchange[o.airNode] = exchange[o.airNode]! + extra;
    fresh += extra;
  });
  if (openings.meshTotalM2 > 0) fresh += meshExchange(grid, openings, heightM, parameters, airC, roomC, exchange);
  return { streams, exchangeKgPerS: exchange, freshKgPerS: fresh };
}

/** Exchange both ways through one opening; wires take their part of the head that drives it. */
function bothWaysM3PerS({ heightM, drag }: Opening, deltaK: number, airK: number): number {
  const free = uprightExchangeM3PerS(heightM, heightM, deltaK, airK);
  if (!drag || free <= 0) return free;
  const half = free / (heightM ** 2 / 2);
  return (free * screenSpeedMPerS((half ** 2 * edgeLoss) / 2, edgeLoss, drag)) / half;
}

function meshExchange(
  grid: Grid,
  openings: Openings,
  heightM: number,
  parameters: Parameters,
  airC: Float64Array,
  roomC: number,
  exchange: Float64Array,
): number {
  const top = (grid.layers - 1) * grid.columns;
  let weighted = 0;
  let open = 0;
  for (let i = 0; i < grid.columns; i++) {
    weighted += openings.meshOpenM2[i]! * airC[top + i]!;
    open += openings.meshOpenM2[i]!;
  }
  const topC = weighted / open;
  const airK = (topC + roomC) / 2 + 273.15;
  // a lid that is colder below than above still breathes a little with the room's own draughts: 0.2 K, our choice
  const flow =
    meshLidExchangeM3PerS(openings.meshTotalM2, heightM, Math.max(0.2, topC - roomC), airK, openings.meshDrag) *
    (353 / airK) *
    parameters.meshExchange;
  for (let i = 0; i < grid.columns; i++)
    exchange[top + i] = exchange[top + i]! + (flow * openings.meshOpenM2[i]!) / open;
  return flow;
}

function layerMeans(grid: Grid, airC: Float64Array): number[] {
  const length = grid.edgeM[grid.columns]!;
  return Array.from({ length: grid.layers }, (_, k) => {
    let sum = 0;
    for (let i = 0; i < grid.columns; i++) sum += airC[k * grid.columns + i]! * (grid.edgeM[i + 1]! - grid.edgeM[i]!);
    return sum / length;
  });
}

/** Mass flow through each opening [kg/s], inward positive, summing to zero: the box's reference pressure is found by bisection. */
function throughFlows(
  grid: Grid,
  list: readonly Opening[],
  heightM: number,
  layerC: readonly number[],
  roomC: number,
): number[] {
  const roomDensity = 353 / (roomC + 273.15);
  const lift = list.map((o) => buoyancyPa(grid, o.zM, heightM, layerC, roomDensity));
  const flow = (pa: number, i: number): number => {
    const drop = pa - lift[i]!;
    const { effectiveM2, drag } = list[i]!;
    if (!drag) return Math.sign(drop) * effectiveM2 * Math.sqrt(2 * roomDensity * Math.abs(drop));
    const speed = screenSpeedMPerS(Math.abs(drop) / roomDensity, edgeLoss, drag);
    return (Math.sign(drop) * effectiveM2 * roomDensity * speed) / dischargeSharpEdged;
  };
  let low = Math.min(...lift);
  let high = Math.max(...lift);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    let net = 0;
    for (let k = 0; k < list.length; k++) net += flow(middle, k);
    if (net > 0) high = middle;
    else low = middle;
  }
  return list.map((_, k) => flow((low + high) / 2, k));
}

/** Pressure that warm air gains on the room up to a height [Pa]. */
function buoyancyPa(grid: Grid, zM: number, heightM: number, layerC: readonly number[], roomDensity: number): number {
  const layerM = heightM / grid.layers;
  let pa = 0;
  for (let k = 0; k < grid.layers; k++) {
    const part = Math.max(0, Math.min(layerM, zM - k * layerM));
    pa += gravityMPerS2 * (roomDensity - 353 / (layerC[k]! + 273.15)) * part;
  }
  return pa;
}

/** Send what comes in at each opening to each outlet in proportion, along the layer first and then up or down. */
function routed(grid: Grid, list: readonly Opening[], flows: readonly number[]): Stream[] {
  const total = flows.reduce((s, f) => s + Math.max(0, f), 0);
  if (total <= 1e-12) return [];
  const streams: Stream[] = [];
  list.forEach((inlet, i) => {
    if (flows[i]! <= 0) return;
    list.forEach((outlet, j) => {
      if (flows[j]! >= 0) return;
      const kgPerS = (flows[i]! * -flows[j]!) / total;
      if (kgPerS <= 0) return;
      let node = inlet.airNode;
      streams.push({ from: -1, to: node, kgPerS });
      for (const next of pathBetween(grid, inlet.airNode, outlet.airNode)) {
        streams.push({ from: node, to: next, kgPerS });
        node = next;
      }
      streams.push({ from: node, to: -1, kgPerS });
    });
  });
  return streams;
}

function pathBetween(grid: Grid, from: number, to: number): number[] {
  const path: number[] = [];
  let column = from % grid.columns;
  let layer = Math.floor(from / grid.columns);
  const toColumn = to % grid.columns;
  const toLayer = Math.floor(to / grid.columns);
  while (column !== toColumn) {
    column += Math.sign(toColumn - column);
    path.push(layer * grid.columns + column);
  }
  while (layer !== toLayer) {
    layer += Math.sign(toLayer - layer);
    path.push(layer * grid.columns + column);
  }
  return path;
}

/** Heat capacity of dry air that a mass flow carries [W/K]. */
export const streamWPerK = (kgPerS: number): number => kgPerS * airHeatCapacityJPerKgK;
