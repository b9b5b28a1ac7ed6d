// Which factored box lies in the kernel's memory, and solving it there. A box is brought in when another was there before;
// what is here is a cache and changes no answer.
import type { Factored } from './factored.ts';
import { type Kernel, kernelInstance } from './instance.ts';
import type { Layout } from './layout.ts';
import type { Sources } from './solve-plain.ts';

const names = ['lu', 'air', 'toAir', 'pivot', 'gain', 'held', 'airToRoom', 'outerLink'] as const;
const perSolve = ['airW', 'surfaceW', 'mat', 'old', 'outside', 'row', 'scratch'] as const;
type Part = (typeof names)[number] | (typeof perSolve)[number];

interface Place {
  readonly layout: Layout;
  readonly buffer: ArrayBuffer;
  readonly part: Readonly<Record<Part, Float64Array>>;
  readonly at: Readonly<Record<Part | 'first' | 'order' | 'airAt' | 'matAt', number>>;
  factors: Float64Array | null;
}

/** The first kilobyte is left alone. */
const startByte = 1024;
const pageBytes = 65536;
let place: Place | null = null;

/** Solve in the kernel; false where there is none. Arguments as of solvePlain. */
export function solveInKernel(
  factored: Factored,
  sources: Sources,
  old: Float64Array | null,
  outsideC: Float64Array | null,
  roomC: number,
  row: Float64Array,
): boolean {
  const kernel = kernelInstance();
  if (!kernel) return false;
  const { layout } = factored;
  if (place?.layout !== layout || place.buffer !== kernel.memory.buffer) place = placeFor(kernel, layout);
  const { part, at } = place;
  if (place.factors !== factored.lu) {
    for (const name of names) part[name].set(factored[name]);
    place.factors = factored.lu;
  }
  part.airW.set(sources.airW);
  part.surfaceW.set(sources.surfaceW);
  if (layout.hasMats) part.mat.set(sources.matW);
  if (old) part.old.set(old);
  if (outsideC) part.outside.set(outsideC);
  kernel.solveBox(
    layout.airNodes,
    layout.patches,
    layout.behind,
    layout.halfBand,
    at.first,
    at.order,
    at.airAt,
    at.matAt,
    at.lu,
    at.air,
    at.toAir,
    at.pivot,
    at.gain,
    at.held,
    at.airToRoom,
    at.outerLink,
    at.airW,
    at.surfaceW,
    layout.hasMats ? at.mat : 0,
    old ? at.old : 0,
    outsideC ? at.outside : 0,
    roomC,
    at.row,
    at.scratch,
  );
  row.set(part.row);
  return true;
}

/** LU factors in place; false where there is no kernel. Throws on a zero pivot, which a valid box cannot give. */
export function factorInKernel(matrix: Float64Array, n: number): boolean {
  const kernel = kernelInstance();
  if (!kernel) return false;
  if (place?.layout.patches !== n || place.buffer !== kernel.memory.buffer) {
    place = null;
    reserve(kernel, startByte + matrix.byteLength);
  } else place.factors = null;
  const from = place?.at.lu ?? startByte;
  const there = place?.part.lu ?? new Float64Array(kernel.memory.buffer, from, n * n);
  there.set(matrix);
  if (kernel.factorDense(from, n) !== 0) throw new Error('zero pivot in a heat balance');
  matrix.set(there);
  return true;
}

function reserve(kernel: Kernel, bytes: number): void {
  const missing = bytes - kernel.memory.buffer.byteLength;
  if (missing > 0) kernel.memory.grow(Math.ceil(missing / pageBytes));
}

function placeFor(kernel: Kernel, layout: Layout): Place {
  const { airNodes, patches, behind, halfBand } = layout;
  const row = airNodes + patches + behind;
  const lengths: Record<Part, number> = {
    lu: patches * patches,
    air: airNodes * (2 * halfBand + 1),
    toAir: patches,
    pivot: behind,
    gain: behind,
    held: row,
    airToRoom: airNodes,
    outerLink: patches,
    airW: airNodes,
    surfaceW: patches,
    mat: patches,
    old: row,
    outside: patches,
    row,
    scratch: airNodes + patches,
  };
  const at: Record<string, number> = {};
  let next = startByte;
  const take = (name: string, bytes: number) => {
    at[name] = next;
    next += (bytes + 15) & ~15;
  };
  for (const name of [...names, ...perSolve]) take(name, lengths[name] * 8);
  const whole = { first: layout.first, order: layout.order, airAt: layout.airAt, matAt: layout.matAt };
  for (const [name, list] of Object.entries(whole)) take(name, list.byteLength);
  reserve(kernel, next);
  const { buffer } = kernel.memory;
  const part = Object.fromEntries(
    [...names, ...perSolve].map((name) => [name, new Float64Array(buffer, at[name], lengths[name])]),
  );
  for (const [name, list] of Object.entries(whole)) new Int32Array(buffer, at[name], list.length).set(list);
  return { layout, buffer, part: part as Place['part'], at: at as Place['at'], factors: null };
}
