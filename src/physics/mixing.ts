// How strongly the air of a box mixes along its length and between its layers.
// Eddy mixing scaled by the convective velocity of the heat that rises in it (stirring.ts); the two coefficients are fitted
// to the published CFD box (checks/cross), so that box is no independent evidence for them. Range in data/priors.json.
import { airHeatCapacityJPerKgK, gravityMPerS2 } from './formulas/constants.ts';
import type { Grid } from './grid.ts';
import type { Parameters } from './parameters.ts';

/** Eddy diffusivity along a layer over (convective velocity x height) [-]; fitted. */
export const mixingAlongFitted = 0.33;
/** The same between layers when the upper air is warmer; fitted. */
export const mixingUpFitted = 0.004;
/** Between layers when the lower air is warmer: it turns over; our choice, the answer hardly depends on it. */
const mixingUpUnstable = 0.3;

export interface Mixing {
  /** Conductance between column i and i+1 in layer k at [k * (columns-1) + i] [W/K]. */
  readonly along: Float64Array;
  /** Conductance between layer k and k+1 in column i at [k * columns + i] [W/K]. */
  readonly up: Float64Array;
}

/** A box is stirred as by no less than this, however little rises [W]; our choice. The square root that joins the two has no
 *  corner, so that the first watts change nothing by a jump. */
const leastRisingW = 0.5;

/** Convective velocity scale of a box (Deardorff 1970, from memory).
 *  @param risingW heat given to its air, by the part of the height that it rises [W]   @returns [m/s] */
export function convectiveVelocity(
  risingW: number,
  floorM2: number,
  heightM: number,
  airK: number,
  densityKgPerM3: number,
): number {
  const flux =
    Math.sqrt(risingW * risingW + leastRisingW * leastRisingW) / floorM2 / (densityKgPerM3 * airHeatCapacityJPerKgK);
  return Math.cbrt((gravityMPerS2 / airK) * flux * heightM);
}

/** @param airC [node], node = layer * columns + column */
export function mixingOf(
  grid: Grid,
  depthM: number,
  heightM: number,
  parameters: Parameters,
  airC: Float64Array,
  risingW: number,
): Mixing {
  const { columns, layers } = grid;
  const length = grid.edgeM[columns]!;
  const mean = airC.reduce((s, t) => s + t, 0) / airC.length;
  const airK = mean + 273.15;
  const density = 353 / airK;
  const velocity = convectiveVelocity(risingW, length * depthM, heightM, airK, density);
  const capacity = density * airHeatCapacityJPerKgK;
  const eddyAlong = mixingAlongFitted * parameters.mixingAlong * velocity * heightM;
  const eddyUp = mixingUpFitted * parameters.mixingUp * velocity * heightM;
  const eddyOver = mixingUpUnstable * velocity * heightM;
  const layerM = heightM / layers;
  const along = new Float64Array(layers * (columns - 1));
  for (let i = 0; i < columns - 1; i++) {
    const g = (capacity * eddyAlong * depthM * layerM) / (grid.columnXM[i + 1]! - grid.columnXM[i]!);
    for (let k = 0; k < layers; k++) along[k * (columns - 1) + i] = g;
  }
  const up = new Float64Array(Math.max(0, layers - 1) * columns);
  for (let k = 0; k < layers - 1; k++) {
    for (let i = 0; i < columns; i++) {
      const rise = airC[(k + 1) * columns + i]! - airC[k * columns + i]!;
      // smooth change from turning over to stable within about 0.5 K
      const stable = 1 / (1 + Math.exp(-rise / 0.15));
      const eddy = eddyUp ** stable * eddyOver ** (1 - stable);
      up[k * columns + i] = (capacity * eddy * depthM * (grid.edgeM[i + 1]! - grid.edgeM[i]!)) / layerM;
    }
  }
  return { along, up };
}
