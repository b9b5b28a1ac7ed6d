// The conduction cases of two standards, set up for our two solvers.
import { type ConductionGrid, steadyConduction } from '../../src/physics/conduction/steady-2d.ts';
import { transientWall } from '../../src/physics/conduction/transient-wall.ts';
import { grid, num } from '../inputs.ts';
import type { Inputs } from '../table.ts';

/** n + 1 even lines from a to b. */
const lines = (a: number, b: number, n: number): number[] =>
  Array.from({ length: n + 1 }, (_, i) => a + ((b - a) * i) / n);
const joined = (...parts: number[][]): number[] => parts.flatMap((part, i) => (i === 0 ? part : part.slice(1)));

/** Square column, hot top; half of it. Keys "r1c1".."r7c4": row below the hot face, column towards the axis. */
export function heatedColumn(cells: number): Record<string, number> {
  const field = steadyConduction({
    xM: lines(0, 0.5, cells / 2),
    yM: lines(0, 1, cells),
    conductivityWPerMK: () => 1,
    left: { kind: 'fixed', tempC: 0 },
    right: { kind: 'adiabatic' },
    bottom: { kind: 'fixed', tempC: 0 },
    top: { kind: 'fixed', tempC: 20 },
  });
  const out: Record<string, number> = {};
  for (let row = 1; row <= 7; row++)
    for (let column = 1; column <= 4; column++)
      out[`r${row}c${column}`] = field.at((column * cells) / 8, cells - (row * cells) / 8);
  return out;
}

/** Wall with an aluminium bridge; millimetres from the cold side and from the left. */
export function bridgedWall(): Record<string, number> {
  const x = joined(lines(0, 1.5, 3), lines(1.5, 15, 18), lines(15, 40, 20), lines(40, 120, 20), lines(120, 500, 19));
  const y = joined(lines(0, 6, 6), lines(6, 11, 5), lines(11, 12.5, 3), lines(12.5, 46, 34), lines(46, 47.5, 3));
  const middle = (of: readonly number[], k: number) => ((of[k] ?? 0) + (of[k + 1] ?? 0)) / 2;
  const wall: ConductionGrid = {
    xM: x.map((mm) => mm / 1000),
    yM: y.map((mm) => mm / 1000),
    conductivityWPerMK: (i, j) => bridgeConductivity(middle(x, i), middle(y, j)),
    left: { kind: 'adiabatic' },
    right: { kind: 'adiabatic' },
    bottom: { kind: 'film', tempC: 0, resistanceM2KPerW: 0.06 },
    top: { kind: 'film', tempC: 20, resistanceM2KPerW: 0.11 },
  };
  const field = steadyConduction(wall);
  const near = (of: readonly number[], mm: number) => of.findIndex((line) => Math.abs(line - mm) < 1e-9);
  const at = (xMm: number, yMm: number) => field.at(near(x, xMm), near(y, yMm));
  return {
    flow: field.inWPerM.top,
    A: at(0, 0),
    B: at(500, 0),
    C: at(0, 6),
    D: at(15, 6),
    E: at(500, 6),
    F: at(0, 11),
    G: at(15, 11),
    H: at(0, 47.5),
    I: at(500, 46),
  };
}

function bridgeConductivity(xMm: number, yMm: number): number {
  if (yMm < 6) return 1.15;
  if (yMm < 11 && xMm < 15) return 0.12;
  const aluminium = yMm > 46 || (xMm < 15 && yMm > 11 && yMm < 12.5) || (xMm < 1.5 && yMm > 11);
  return aluminium ? 230 : 0.029;
}

/** 18 mm MDF, film 8 on both faces, air on one side steps from 20 to 30 °C; state after ten minutes. */
export function mdfWallStep(cells: number, stepS: number): Record<string, number> {
  const answer = transientWall({
    layers: [{ thicknessM: 0.018, conductivityWPerMK: 0.14, densityKgPerM3: 600, heatCapacityJPerKgK: 1700 }],
    first: { kind: 'film', filmWPerM2K: 8, airC: () => 30 },
    last: { kind: 'film', filmWPerM2K: 8, airC: () => 20 },
    startC: 20,
    stepS,
    durationS: 600,
    cellsPerLayer: cells,
  });
  const end = answer.states.at(-1);
  return {
    inWPerM2: end?.firstInWPerM2 ?? Number.NaN,
    outWPerM2: -(end?.lastInWPerM2 ?? Number.NaN),
    balanceJPerM2: answer.enteredJPerM2 - answer.storedJPerM2,
  };
}

/** Cube of six equal faces; outside air rises from 20 to 30 °C in an hour; massless air follows the inner face. */
export function cubeInsideC(i: Inputs): Record<string, number> {
  const layers = grid(i, 'layers').map(
    ([thicknessM = 0, conductivityWPerMK = 0, densityKgPerM3 = 0, heatCapacityJPerKgK = 0]) => ({
      thicknessM,
      conductivityWPerMK,
      densityKgPerM3,
      heatCapacityJPerKgK,
    }),
  );
  const { states } = transientWall({
    layers,
    first: { kind: 'film', filmWPerM2K: num(i, 'outsideFilmWPerM2K'), airC: (t) => 20 + 10 * Math.min(1, t / 3600) },
    last: { kind: 'adiabatic' },
    startC: 20,
    stepS: 60,
    durationS: 120 * 3600,
    cellsPerLayer: 40,
  });
  return Object.fromEntries(
    [2, 6, 12, 24, 120].map((hour) => [`h${hour}`, states[hour * 60]?.lastFaceC ?? Number.NaN]),
  );
}
