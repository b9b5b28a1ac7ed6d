// How does a layered wall warm and cool in time, and what heat enters and leaves its faces? One-dimensional, cells within
// every layer, Crank-Nicolson with a smoothed start. Leaves out corners and moisture.

export interface StoringLayer {
  readonly thicknessM: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly heatCapacityJPerKgK: number;
}

/** A film to air of given temperature in time, or a face that passes no heat. */
export type WallFace =
  | { readonly kind: 'adiabatic' }
  | { readonly kind: 'film'; readonly filmWPerM2K: number; readonly airC: (timeS: number) => number };

export interface WallRun {
  /** First layer touches the first face. */
  readonly layers: readonly StoringLayer[];
  readonly first: WallFace;
  readonly last: WallFace;
  readonly startC: number;
  readonly stepS: number;
  readonly durationS: number;
  readonly cellsPerLayer: number;
}

export interface WallState {
  readonly timeS: number;
  readonly firstFaceC: number;
  readonly lastFaceC: number;
  /** Into the wall at each face [W/m²]. */
  readonly firstInWPerM2: number;
  readonly lastInWPerM2: number;
}

export interface WallAnswer {
  readonly states: readonly WallState[];
  /** Heat that entered, and heat stored at the end [J/m²]: equal but for rounding. */
  readonly enteredJPerM2: number;
  readonly storedJPerM2: number;
}

/** Runs the wall from an even start. Every step of the first four is taken as two implicit halves, which damps the jump.
 *  @param run  layers, faces, steps      Source: energy balance. Checks: P-188, P-189, P-192..P-195, semi-infinite law. */
export function transientWall(run: WallRun): WallAnswer {
  const wall = cellsOf(run);
  const temp = new Float64Array(wall.capacity.length).fill(run.startC);
  const states: WallState[] = [stateAt(wall, temp, 0)];
  let entered = 0;
  let timeS = 0;
  const steps = Math.round(run.durationS / run.stepS);
  for (let n = 0; n < steps; n++) {
    const parts: readonly (readonly [number, number])[] =
      n < 4
        ? [
            [run.stepS / 2, 1],
            [run.stepS / 2, 1],
          ]
        : [[run.stepS, 0.5]];
    for (const [stepS, weight] of parts) {
      entered += advance(wall, temp, timeS, stepS, weight);
      timeS += stepS;
    }
    states.push(stateAt(wall, temp, timeS));
  }
  const stored = temp.reduce((sum, t, i) => sum + (wall.capacity[i] as number) * (t - run.startC), 0);
  return { states, enteredJPerM2: entered, storedJPerM2: stored };
}

interface Wall {
  readonly capacity: number[];
  /** Conductance to the next cell; the last one is unused. */
  readonly link: number[];
  readonly first: Face;
  readonly last: Face;
}

interface Face {
  /** From cell middle to air [W/m²K]; 0 when adiabatic. */
  readonly g: number;
  readonly film: number;
  readonly airC: (timeS: number) => number;
}

function cellsOf(run: WallRun): Wall {
  const cells = run.layers.flatMap((layer) =>
    Array.from({ length: run.cellsPerLayer }, () => {
      const thick = layer.thicknessM / run.cellsPerLayer;
      return {
        half: thick / 2 / layer.conductivityWPerMK,
        capacity: thick * layer.densityKgPerM3 * layer.heatCapacityJPerKgK,
      };
    }),
  );
  const face = (side: WallFace, half: number): Face =>
    side.kind === 'adiabatic'
      ? { g: 0, film: 0, airC: () => 0 }
      : { g: 1 / (half + 1 / side.filmWPerM2K), film: side.filmWPerM2K, airC: side.airC };
  return {
    capacity: cells.map((cell) => cell.capacity),
    link: cells.map((cell, i) => 1 / (cell.half + (cells[i + 1]?.half ?? 0))),
    first: face(run.first, cells[0]?.half ?? 0),
    last: face(run.last, cells.at(-1)?.half ?? 0),
  };
}

function stateAt(wall: Wall, temp: Float64Array, timeS: number): WallState {
  const side = (face: Face, cellC: number) => {
    const inflow = face.g * (face.airC(timeS) - cellC);
    return { inflow, faceC: face.film === 0 ? cellC : face.airC(timeS) - inflow / face.film };
  };
  const first = side(wall.first, temp[0] as number);
  const last = side(wall.last, temp[temp.length - 1] as number);
  return {
    timeS,
    firstFaceC: first.faceC,
    lastFaceC: last.faceC,
    firstInWPerM2: first.inflow,
    lastInWPerM2: last.inflow,
  };
}

/** One step of the weighted scheme; returns the heat that entered [J/m²]. */
function advance(wall: Wall, temp: Float64Array, timeS: number, stepS: number, weight: number): number {
  const n = temp.length;
  const gOf = (i: number) => (i === 0 ? wall.first.g : 0) + (i === n - 1 ? wall.last.g : 0);
  const airHeat = (i: number, t: number) =>
    (i === 0 ? wall.first.g * wall.first.airC(t) : 0) + (i === n - 1 ? wall.last.g * wall.last.airC(t) : 0);
  const old = Float64Array.from(temp);
  const upper = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const before = i > 0 ? (wall.link[i - 1] as number) : 0;
    const after = i < n - 1 ? (wall.link[i] as number) : 0;
    const c = (wall.capacity[i] as number) / stepS;
    const flowOld =
      before * ((i > 0 ? (old[i - 1] as number) : 0) - (old[i] as number)) +
      after * ((i < n - 1 ? (old[i + 1] as number) : 0) - (old[i] as number)) +
      airHeat(i, timeS) -
      gOf(i) * (old[i] as number);
    let diagonal = c + weight * (before + after + gOf(i));
    let right = c * (old[i] as number) + (1 - weight) * flowOld + weight * airHeat(i, timeS + stepS);
    if (i > 0) {
      diagonal -= weight * before * (upper[i - 1] as number);
      right += weight * before * (temp[i - 1] as number);
    }
    upper[i] = (weight * after) / diagonal;
    temp[i] = right / diagonal;
  }
  for (let i = n - 2; i >= 0; i--) temp[i] = (temp[i] as number) + (upper[i] as number) * (temp[i + 1] as number);
  const inflow = (cells: Float64Array, t: number) =>
    wall.first.g * (wall.first.airC(t) - (cells[0] as number)) +
    wall.last.g * (wall.last.airC(t) - (cells[n - 1] as number));
  return stepS * (weight * inflow(temp, timeS + stepS) + (1 - weight) * inflow(old, timeS));
}
