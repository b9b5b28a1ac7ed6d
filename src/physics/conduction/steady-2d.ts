// How does heat flow through a cut across a wall with bridges, corners and plates? Steady, two-dimensional, on a grid of
// lines that pass through every material border. Leaves out time (transient-wall.ts) and the third direction.
import { solveBanded } from './banded-solve.ts';

export type EdgeCondition =
  | { readonly kind: 'adiabatic' }
  | { readonly kind: 'fixed'; readonly tempC: number }
  | { readonly kind: 'film'; readonly tempC: number; readonly resistanceM2KPerW: number };

export interface ConductionGrid {
  /** Grid lines [m], rising; materials change only on lines. */
  readonly xM: readonly number[];
  readonly yM: readonly number[];
  /** Conductivity of the cell between x[i]..x[i+1] and y[j]..y[j+1] [W/mK]. */
  readonly conductivityWPerMK: (i: number, j: number) => number;
  readonly left: EdgeCondition;
  readonly right: EdgeCondition;
  /** Edge at the first y line, and at the last. */
  readonly bottom: EdgeCondition;
  readonly top: EdgeCondition;
}

export interface ConductionField {
  /** Temperature at the crossing of lines i and j [°C]. */
  readonly at: (i: number, j: number) => number;
  /** Heat through each edge per metre of depth [W/m], positive into the body. */
  readonly inWPerM: Readonly<Record<'left' | 'right' | 'bottom' | 'top', number>>;
}

const fixedResistance = 1e-9;

/** Temperatures and edge flows of the cut; control volumes around the crossings, solved directly.
 *  A fixed edge is a film of 1e-9 m²K/W; where two fixed edges meet the corner takes the mean.
 *  @param grid  lines, conductivities, edges      Source: energy balance. Checks: P-020, P-021, P-022, heat closure. */
export function steadyConduction(grid: ConductionGrid): ConductionField {
  const nx = grid.xM.length;
  const ny = grid.yM.length;
  // Number along the shorter direction so that the band stays narrow.
  const index = nx <= ny ? (i: number, j: number) => j * nx + i : (i: number, j: number) => i * ny + j;
  const band = Math.min(nx, ny);
  const rows = Array.from({ length: nx * ny }, () => new Float64Array(band + 1));
  const right = new Float64Array(nx * ny);
  const link = (a: number, b: number, g: number) => {
    const [low, high] = a < b ? [a, b] : [b, a];
    add(rows, a, 0, g);
    add(rows, b, 0, g);
    add(rows, high, high - low, -g);
  };
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      if (i + 1 < nx) link(index(i, j), index(i + 1, j), alongX(grid, i, j));
      if (j + 1 < ny) link(index(i, j), index(i, j + 1), alongY(grid, i, j));
    }
  const films = filmsOf(grid);
  for (const film of films) {
    const row = index(film.i, film.j);
    add(rows, row, 0, film.g);
    right[row] = (right[row] as number) + film.g * film.tempC;
  }
  const temp = solveBanded(rows, right, band);
  const at = (i: number, j: number) => temp[index(i, j)] as number;
  const inWPerM = { left: 0, right: 0, bottom: 0, top: 0 };
  for (const film of films) inWPerM[film.edge] += film.g * (film.tempC - at(film.i, film.j));
  return { at, inWPerM };
}

const add = (rows: Float64Array[], row: number, offset: number, value: number) => {
  const target = rows[row] as Float64Array;
  target[offset] = (target[offset] as number) + value;
};

const span = (lines: readonly number[], i: number) =>
  i < 0 || i + 1 >= lines.length ? 0 : (lines[i + 1] as number) - (lines[i] as number);

function alongX(grid: ConductionGrid, i: number, j: number): number {
  const below = span(grid.yM, j - 1);
  const above = span(grid.yM, j);
  const k =
    (below > 0 ? grid.conductivityWPerMK(i, j - 1) * below : 0) +
    (above > 0 ? grid.conductivityWPerMK(i, j) * above : 0);
  return k / 2 / span(grid.xM, i);
}

function alongY(grid: ConductionGrid, i: number, j: number): number {
  const before = span(grid.xM, i - 1);
  const after = span(grid.xM, i);
  const k =
    (before > 0 ? grid.conductivityWPerMK(i - 1, j) * before : 0) +
    (after > 0 ? grid.conductivityWPerMK(i, j) * after : 0);
  return k / 2 / span(grid.yM, j);
}

interface Film {
  readonly edge: 'left' | 'right' | 'bottom' | 'top';
  readonly i: number;
  readonly j: number;
  readonly g: number;
  readonly tempC: number;
}

function filmsOf(grid: ConductionGrid): Film[] {
  const films: Film[] = [];
  const share = (lines: readonly number[], k: number) => (span(lines, k - 1) + span(lines, k)) / 2;
  const put = (edge: Film['edge'], i: number, j: number, widthM: number) => {
    const condition = grid[edge];
    if (condition.kind === 'adiabatic') return;
    const resistance = condition.kind === 'fixed' ? fixedResistance : condition.resistanceM2KPerW;
    films.push({ edge, i, j, g: widthM / resistance, tempC: condition.tempC });
  };
  grid.xM.forEach((_, i) => {
    put('bottom', i, 0, share(grid.xM, i));
    put('top', i, grid.yM.length - 1, share(grid.xM, i));
  });
  grid.yM.forEach((_, j) => {
    put('left', 0, j, share(grid.yM, j));
    put('right', grid.xM.length - 1, j, share(grid.yM, j));
  });
  return films;
}
