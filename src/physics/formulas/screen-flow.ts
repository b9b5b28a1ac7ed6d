// How fast does air pass a mesh under a given head? The loss law of woven screens written as a line plus a square of the
// speed, so that the speed under a head has a closed form. Leaves out dirt, and air that comes at a slant.

import type { FormulaRange } from './range.ts';
import { screenLossBailey } from './screen-loss.ts';

/** A woven mesh. */
export interface Mesh {
  /** Open share of the mesh, 0..1. */
  readonly openFrac: number;
  /** Diameter of its wires [m]. */
  readonly wireM: number;
}

/** Loss over density: linearMPerS * speed + quadratic * speed^2 / 2, speed on the whole face. */
export interface ScreenDrag {
  readonly linearMPerS: number;
  readonly quadratic: number;
}

export const screenFlowRange: FormulaRange = {
  formula: 'Air through a woven mesh',
  source: 'BAILEY2003',
  inputs: { openFrac: { low: 0.25, high: 0.9, unit: '' }, wireMm: { low: 0.15, high: 1, unit: 'mm' } },
};

/** Kinematic viscosity of air at 27 degC [m2/s]. Source: INCROPERA (memory). */
export const screenAirViscosityM2PerS = 1.57e-5;

/** 18/Re + 0.75/log(Re + 1.25) + 0.055 log Re lies within 8 % of this line for Re 0.3 to 10 (screen-flow.test.ts). */
const perReynolds = 19.4;
const settled = 0.75;

/** Loss coefficient on face speed, by the speed in the pores. With the face speed in its Reynolds number the law gives 1.6 to
 *  3.9 times the losses measured on three screens, with the pore speed 0.65 to 1.7 times (checks SCREEN-1 to SCREEN-3).
 *  @param mesh openFrac 0.25..0.9, wireM 0.00015..0.001 @param speedMPerS on the whole face [m/s] @returns [-].
 *  Source: BAILEY2003. Checks: SCREEN-1, SCREEN-2, SCREEN-3. */
export const screenLossByPores = (mesh: Mesh, speedMPerS: number): number =>
  screenLossBailey(mesh.openFrac, mesh.wireM, speedMPerS / mesh.openFrac, screenAirViscosityM2PerS);

/** The same law as line plus square. @param mesh openFrac above 0, wireM [m] @returns drag [m/s, -].
 *  Source: BAILEY2003, fitted here for Re 0.3 to 10. Checks: screen-flow.test.ts. */
export function screenDrag({ openFrac, wireM }: Mesh): ScreenDrag {
  const solid = (1 - openFrac ** 2) / openFrac ** 2;
  return {
    linearMPerS: (solid * perReynolds * openFrac * screenAirViscosityM2PerS) / wireM / 2,
    quadratic: solid * settled,
  };
}

/** Speed at which a head is used up by a screen and by what the flow loses without it.
 *  @param headM2PerS2  pressure over density [m2/s2], 0 or more
 *  @param without      loss coefficient of the same way without the screen [-], above 0
 *  @returns face speed [m/s]. Derived: losses in series. Checks: screen-flow.test.ts. */
export function screenSpeedMPerS(headM2PerS2: number, without: number, { linearMPerS, quadratic }: ScreenDrag): number {
  const square = without + quadratic;
  return (Math.sqrt(linearMPerS ** 2 + 2 * square * headM2PerS2) - linearMPerS) / square;
}
