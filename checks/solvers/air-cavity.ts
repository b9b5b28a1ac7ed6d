// Steady slow flow of air in a square box with one hot and one cold side wall, solved from the equations of motion
// (Boussinesq) without any film law. A benchmark that many solvers were compared on; used by no part of the product.
// Vorticity and stream function on a grid that is finer at the walls, alternating-direction steps until at rest.
import { factorBanded, solveFactored } from '../../src/physics/conduction/banded-solve.ts';

export interface CavityRun {
  readonly rayleigh: number;
  readonly prandtl: number;
  /** Cells along a side, even. */
  readonly cells: number;
  /** How much denser the lines are at the walls: 0.01 even, 1.6 strong. */
  readonly stretch: number;
  /** Pseudo time step [side² / thermal diffusivity]. */
  readonly step: number;
  readonly maxSteps: number;
}

export interface CavityAnswer {
  /** Mean over the hot wall, and over the cold one: equal when at rest. */
  readonly nusseltHot: number;
  readonly nusseltCold: number;
  /** Fastest flow along the upright middle line (sideways) and the level one (up), in diffusivity / side. */
  readonly sidewaysMax: number;
  readonly upMax: number;
  readonly steps: number;
}

/** Lines from 0 to 1, denser at both ends. */
function stretched(n: number, strength: number): Float64Array {
  return Float64Array.from(
    { length: n + 1 },
    (_, i) => 0.5 + (0.5 * Math.tanh(strength * ((2 * i) / n - 1))) / Math.tanh(strength),
  );
}

/** Weights of first and second derivative at each inner line: [below, at, above]. */
function weights(x: Float64Array) {
  const n = x.length - 1;
  const first = Array.from({ length: 3 }, () => new Float64Array(n + 1));
  const second = Array.from({ length: 3 }, () => new Float64Array(n + 1));
  for (let i = 1; i < n; i++) {
    const a = x[i]! - x[i - 1]!;
    const b = x[i + 1]! - x[i]!;
    first[0]![i] = -b / (a * (a + b));
    first[1]![i] = (b - a) / (a * b);
    first[2]![i] = a / (b * (a + b));
    second[0]![i] = 2 / (a * (a + b));
    second[1]![i] = -2 / (a * b);
    second[2]![i] = 2 / (b * (a + b));
  }
  // Mirror image behind the wall, for a quantity that does not flow through it.
  second[1]![0] = -2 / x[1]! ** 2;
  second[2]![0] = 2 / x[1]! ** 2;
  const last = x[n]! - x[n - 1]!;
  second[0]![n] = 2 / last ** 2;
  second[1]![n] = -2 / last ** 2;
  return { first, second };
}

export function airCavity(run: CavityRun): CavityAnswer {
  const n = run.cells;
  const m = n + 1;
  const x = stretched(n, run.stretch);
  const w = weights(x);
  const at = (i: number, j: number) => j * m + i;
  const field = () => new Float64Array(m * m);
  const [temp, vort, stream, u, v] = [field(), field(), field(), field(), field()];
  for (let j = 0; j < m; j++) for (let i = 0; i < m; i++) temp[at(i, j)] = 1 - x[i]!;
  const poisson = streamSolver(x);
  const swap = field();
  const last = field();
  const lines = [field(), field(), field(), field()] as const;
  let steps = 0;
  for (; steps < run.maxSteps; steps++) {
    advance(temp, 1, null, true);
    advance(vort, run.prandtl, buoyancy, false);
    poisson(vort, stream);
    flowAndWalls();
    if (steps % 100 === 99 && isSteady()) break;
  }
  return answer();

  /** Little change in a hundred steps. */
  function isSteady(): boolean {
    let most = 0;
    for (let k = 0; k < temp.length; k++) most = Math.max(most, Math.abs(temp[k]! - last[k]!));
    last.set(temp);
    return most < 1e-5;
  }

  function buoyancy(i: number, j: number): number {
    const k = at(i, j);
    return (
      run.rayleigh *
      run.prandtl *
      (w.first[0]![i]! * temp[k - 1]! + w.first[1]![i]! * temp[k]! + w.first[2]![i]! * temp[k + 1]!)
    );
  }

  /** One step of one quantity; heat is insulated at floor and lid, vorticity has known values there. */
  function advance(
    f: Float64Array,
    diffusion: number,
    source: ((i: number, j: number) => number) | null,
    heat: boolean,
  ) {
    const rate = 2 / run.step;
    const [from, to] = heat ? [0, n] : [1, n - 1];
    const part = (line: number, along: number, k: 0 | 1 | 2) =>
      along * w.first[k]![line]! - diffusion * w.second[k]![line]!;
    const [lower, diagonal, upper, right] = lines;
    swap.set(f);
    for (let j = from; j <= to; j++) {
      for (let i = 1; i < n; i++) {
        const k = at(i, j);
        const up =
          part(j, v[k]!, 0) * (f[k - m] ?? 0) + part(j, v[k]!, 1) * f[k]! + part(j, v[k]!, 2) * (f[k + m] ?? 0);
        lower[i] = part(i, u[k]!, 0);
        diagonal[i] = rate + part(i, u[k]!, 1);
        upper[i] = part(i, u[k]!, 2);
        right[i] = rate * f[k]! - up + (source ? source(i, j) : 0);
      }
      right[1] = right[1]! - lower[1]! * f[at(0, j)]!;
      right[n - 1] = right[n - 1]! - upper[n - 1]! * f[at(n, j)]!;
      thomas(lines, 1, n - 1);
      for (let i = 1; i < n; i++) swap[at(i, j)] = right[i]!;
    }
    for (let i = 1; i < n; i++) {
      for (let j = from; j <= to; j++) {
        const k = at(i, j);
        const side = part(i, u[k]!, 0) * swap[k - 1]! + part(i, u[k]!, 1) * swap[k]! + part(i, u[k]!, 2) * swap[k + 1]!;
        lower[j] = part(j, v[k]!, 0);
        diagonal[j] = rate + part(j, v[k]!, 1);
        upper[j] = part(j, v[k]!, 2);
        right[j] = rate * swap[k]! - side + (source ? source(i, j) : 0);
      }
      if (!heat) {
        right[1] = right[1]! - lower[1]! * f[at(i, 0)]!;
        right[n - 1] = right[n - 1]! - upper[n - 1]! * f[at(i, n)]!;
      }
      thomas(lines, from, to);
      for (let j = from; j <= to; j++) f[at(i, j)] = right[j]!;
    }
  }

  /** Speeds from the stream function, and the vorticity that walls without slip make (Thom). */
  function flowAndWalls() {
    for (let j = 1; j < n; j++)
      for (let i = 1; i < n; i++) {
        const k = at(i, j);
        u[k] = w.first[0]![j]! * stream[k - m]! + w.first[1]![j]! * stream[k]! + w.first[2]![j]! * stream[k + m]!;
        v[k] = -(w.first[0]![i]! * stream[k - 1]! + w.first[1]![i]! * stream[k]! + w.first[2]![i]! * stream[k + 1]!);
      }
    const h = x[1]!;
    const relax = 0.5;
    const wall = (k: number, inner: number) => {
      vort[k] = (1 - relax) * vort[k]! + relax * ((-2 * stream[inner]!) / (h * h));
    };
    for (let k = 1; k < n; k++) {
      wall(at(0, k), at(1, k));
      wall(at(n, k), at(n - 1, k));
      wall(at(k, 0), at(k, 1));
      wall(at(k, n), at(k, n - 1));
    }
  }

  function answer(): CavityAnswer {
    const a = x[1]!;
    const b = x[2]! - x[1]!;
    const slope = (t0: number, t1: number, t2: number) =>
      (-(2 * a + b) / (a * (a + b))) * t0 + ((a + b) / (a * b)) * t1 - (a / (b * (a + b))) * t2;
    const mean = (value: (j: number) => number) => {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += ((x[j + 1]! - x[j]!) * (value(j) + value(j + 1))) / 2;
      return sum;
    };
    const mid = n / 2;
    const line = (value: (k: number) => number) => {
      let best = 1;
      for (let k = 1; k < n; k++) if (value(k) > value(best)) best = k;
      return peak(x, value, best);
    };
    return {
      nusseltHot: mean((j) => -slope(temp[at(0, j)]!, temp[at(1, j)]!, temp[at(2, j)]!)),
      nusseltCold: mean((j) => slope(temp[at(n, j)]!, temp[at(n - 1, j)]!, temp[at(n - 2, j)]!)),
      sidewaysMax: line((j) => u[at(mid, j)]!),
      upMax: line((i) => v[at(i, mid)]!),
      steps,
    };
  }
}

/** Solves three-banded lines [below, at, above, right] from one index to another; the answer replaces the last. */
function thomas([lower, diagonal, upper, right]: readonly Float64Array[], from: number, to: number): void {
  for (let k = from + 1; k <= to; k++) {
    const factor = lower![k]! / diagonal![k - 1]!;
    diagonal![k] = diagonal![k]! - factor * upper![k - 1]!;
    right![k] = right![k]! - factor * right![k - 1]!;
  }
  right![to] = right![to]! / diagonal![to]!;
  for (let k = to - 1; k >= from; k--) right![k] = (right![k]! - upper![k]! * right![k + 1]!) / diagonal![k]!;
}

/** Top of the parabola through the greatest value and its neighbours. */
function peak(x: Float64Array, value: (k: number) => number, k: number): number {
  const [x0, x1, x2] = [x[k - 1]!, x[k]!, x[k + 1]!];
  const [y0, y1, y2] = [value(k - 1), value(k), value(k + 1)];
  const d1 = (y1 - y0) / (x1 - x0);
  const d2 = (y2 - y1) / (x2 - x1);
  const curve = (d2 - d1) / (x2 - x0);
  if (curve >= 0) return y1;
  const top = (x0 + x1) / 2 - d1 / (2 * curve);
  return y0 + d1 * (top - x0) + curve * (top - x0) * (top - x1);
}

/** Stream function from vorticity, walls at zero; factors are made once. */
function streamSolver(x: Float64Array) {
  const n = x.length - 1;
  const inner = n - 1;
  const index = (i: number, j: number) => (j - 1) * inner + (i - 1);
  const rows = Array.from({ length: inner * inner }, () => new Float64Array(inner + 1));
  const half = (i: number) => (x[i + 1]! - x[i - 1]!) / 2;
  for (let j = 1; j < n; j++)
    for (let i = 1; i < n; i++) {
      const row = rows[index(i, j)]!;
      const west = half(j) / (x[i]! - x[i - 1]!);
      const south = half(i) / (x[j]! - x[j - 1]!);
      row[0] = west + south + half(j) / (x[i + 1]! - x[i]!) + half(i) / (x[j + 1]! - x[j]!);
      if (i > 1) row[1] = -west;
      if (j > 1) row[inner] = -south;
    }
  factorBanded(rows, inner);
  const right = new Float64Array(inner * inner);
  return (vort: Float64Array, stream: Float64Array) => {
    for (let j = 1; j < n; j++)
      for (let i = 1; i < n; i++) right[index(i, j)] = vort[j * (n + 1) + i]! * half(i) * half(j);
    solveFactored(rows, right, inner);
    for (let j = 1; j < n; j++) for (let i = 1; i < n; i++) stream[j * (n + 1) + i] = right[index(i, j)]!;
  };
}
