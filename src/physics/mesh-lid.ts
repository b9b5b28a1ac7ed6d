// What does a mesh lid let through: of a plume that meets it from below, and of the air that trades places across it?
// Leaves out the wires' own warmth, and draughts of the room.
import type { Enclosure, PanelName } from './enclosure.ts';
import { gravityMPerS2 } from './formulas/constants.ts';
import { flatExchangeEpsteinM3PerS } from './formulas/opening-flow.ts';
import { entrainmentTopHat, plumeMorton } from './formulas/plume-morton.ts';
import { type Mesh, type ScreenDrag, screenSpeedMPerS } from './formulas/screen-flow.ts';

/** Fly mesh where the file says no more; data/mesh.json. */
export const usualMesh: Mesh = { openFrac: 0.6, wireM: 0.0003 };

/** The mesh of a panel. An open share of 0 would be a sheet; the least that counts as mesh is 0.02. */
export function meshOf(enclosure: Enclosure, panel: PanelName): Mesh {
  const { meshOpenFrac, meshWireM } = enclosure.box.panels[panel];
  return {
    openFrac: Math.max(0.02, meshOpenFrac ?? usualMesh.openFrac),
    wireM: meshWireM ?? usualMesh.wireM,
  };
}

/** Share of a body's watts that its plume carries, short wave aside: 36 of 98 in the flow solvers' box (LES-SST). */
const convectedFrac = 0.37;
/** Air of a warm box, for the speed of a plume: 25 degC. */
const plumeAirK = 298;
const plumeAirKgPerM3 = 1.18;

/** Mean speed of a heater's plume where it meets the lid [m/s], as from a point so far below the body that the plume is as
 *  wide as the body when it leaves it. @param gapM body to lid [m]. Source: MTT1956. */
export function plumeSpeedMPerS(bodyDiameterM: number, powerW: number, shortWaveFrac: number, gapM: number): number {
  const fromPointM = bodyDiameterM / 2 / ((6 * entrainmentTopHat) / 5);
  const convectedW = Math.max(0.1, powerW * (1 - shortWaveFrac) * convectedFrac);
  return plumeMorton(convectedW, gapM + fromPointM, plumeAirK, plumeAirKgPerM3).meanSpeedMPerS;
}

/** Share of a plume that passes a mesh, 0..1. Below the mesh its head turns into pressure, which spreads the rest:
 *  w^2/2 = (1 + K) u^2/2. Worked for the plume at full power; at a quarter of it a third less passes fly mesh.
 *  Derived: docs/theory/mesh.md. */
export const plumePassFrac = (speedMPerS: number, drag: ScreenDrag): number =>
  Math.min(1, screenSpeedMPerS(speedMPerS ** 2 / 2, 1, drag) / speedMPerS);

/** Air that trades places across a mesh lid under colder air [m3/s] each way. Without wires as through a round hole of its
 *  size (EPSTEIN1988); the head behind that is half of the lift of a column as high as the box, or as the lid is wide where
 *  that is less (our choice), and the wires take their part of it. Derived: docs/theory/mesh.md. */
export function meshLidExchangeM3PerS(
  areaM2: number,
  heightM: number,
  deltaK: number,
  airK: number,
  drag: ScreenDrag,
): number {
  const diameterM = 2 * Math.sqrt(areaM2 / Math.PI);
  const open = flatExchangeEpsteinM3PerS(diameterM, deltaK, airK);
  if (open <= 0) return 0;
  const halfLidMPerS = open / (areaM2 / 2);
  const headM2PerS2 = (gravityMPerS2 * deltaK * Math.min(heightM, diameterM)) / airK / 2;
  const without = (2 * headM2PerS2) / halfLidMPerS ** 2;
  return (open * screenSpeedMPerS(headM2PerS2, without, drag)) / halfLidMPerS;
}
