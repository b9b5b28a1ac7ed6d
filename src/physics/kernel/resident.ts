// Which box lies in the kernel's memory, and solving it there. A box is brought in when another was there before; what is
// here is a cache and changes no answer.
import type { BoxModel, HeaterPath } from '../model.ts';
import type { Factored } from './factored.ts';
import { heaterNumbers, heaterStride } from './heater-numbers.ts';
import { type Kernel, kernelInstance } from './instance.ts';
import type { Layout } from './layout.ts';
import type { Sources } from './solve-plain.ts';

/** Lists of whole numbers and of others, in the order of the kernel's table. */
const wholes = ['first', 'order', 'airAt', 'matAt', 'outermost', 'groupOf'] as const;
const grouped = ['alone', 'shareAlone', 'airAlone', 'meanAlone', 'shareAir', 'toMean', 'perGroup'] as const;
const held = ['pivot', 'gain', 'held', 'airToRoom', 'outerLink', 'airToOut'] as const;
const factors = ['lu', 'air', 'toAir', 'fromAir', ...grouped, ...held] as const;
const others = ['sources', 'mat', 'outside', 'scratch', 'ambient', 'slope', 'means'] as const;
const rows = ['old', 'stage', 'between', 'row'] as const;
const lists = [...factors, ...others, ...rows, 'bodies', 'books', 'capacity', 'answers'] as const;
type Part = (typeof lists)[number];

export interface Place {
  readonly layout: Layout;
  readonly heaters: readonly HeaterPath[];
  readonly buffer: ArrayBuffer;
  readonly part: Readonly<Record<Part, Float64Array>>;
  readonly at: Readonly<Record<string, number>>;
  /** Which factors and which ambient heat were brought in last. */
  factors: Float64Array | null;
  ambient: object | null;
}

/** The table lies behind the kernel's own numbers (kernel.test.ts holds this), the rest after it. */
export const tableByte = 8192;
const pageBytes = 65536;
let place: Place | null = null;

/** The box in the kernel's memory, with these factors; null where there is no kernel. */
export function placeOf(kernel: Kernel, model: BoxModel, factored: Factored): Place {
  const { layout, lu } = factored;
  if (place?.factors === lu && place.heaters === model.heaters && place.buffer === kernel.memory.buffer) return place;
  const there = bring(kernel, layout, model.heaters);
  for (const name of factors) there.part[name].set(factored[name]);
  there.factors = lu;
  return there;
}

/** Solve in the kernel; false where there is none. Arguments as of solvePlain. */
export function solveInKernel(
  model: BoxModel,
  factored: Factored,
  sources: Sources,
  old: Float64Array | null,
  outsideC: Float64Array | null,
  roomC: number,
  row: Float64Array,
): boolean {
  const kernel = kernelInstance();
  if (!kernel) return false;
  const { part, at, layout } = placeOf(kernel, model, factored);
  part.sources.set(sources.airW);
  part.sources.set(sources.surfaceW, layout.airNodes);
  if (layout.hasMats) part.mat.set(sources.matW);
  if (old) part.old.set(old);
  if (outsideC) part.outside.set(outsideC);
  kernel.solveBox(tableByte, old ? at.old! : 0, at.row!, roomC, outsideC ? 1 : 0);
  row.set(part.row);
  return true;
}

/** Factor the air and then the groups in place; false where there is no kernel.
 *  @param ready with panels and surfaces eliminated   Throws on a zero pivot, which a valid box cannot give. */
export function factorInKernel(model: BoxModel, { layout, lu, air, toAir, fromAir }: Factored): boolean {
  const kernel = kernelInstance();
  if (!kernel) return false;
  const { part } = bring(kernel, layout, model.heaters);
  part.lu.set(lu);
  part.air.set(air);
  part.toAir.set(toAir);
  part.fromAir.set(fromAir);
  if (kernel.factorBox(tableByte) !== 0) throw new Error('zero pivot in a heat balance');
  lu.set(part.lu);
  air.set(part.air);
  return true;
}

/** Room for a box in the kernel's memory, its factors yet to come. */
function bring(kernel: Kernel, layout: Layout, heaters: readonly HeaterPath[]): Place {
  if (place?.layout !== layout || place.heaters !== heaters || place.buffer !== kernel.memory.buffer)
    place = placeFor(kernel, layout, heaters);
  place.factors = null;
  return place;
}

function reserve(kernel: Kernel, bytes: number): void {
  const missing = bytes - kernel.memory.buffer.byteLength;
  if (missing > 0) kernel.memory.grow(Math.ceil(missing / pageBytes));
}

function lengthsOf(layout: Layout, heaters: readonly HeaterPath[]): Record<Part, number> {
  const { airNodes, patches, behind, airBand, groups, isGrouped } = layout;
  const row = airNodes + patches + behind;
  const ends = airNodes + patches;
  const more = isGrouped ? patches : 0;
  return {
    lu: groups * groups,
    air: airNodes * (2 * airBand + 1),
    ...{ alone: more, shareAlone: more, airAlone: more, meanAlone: more, shareAir: more, toMean: more },
    ...{ perGroup: isGrouped ? groups : 0, means: isGrouped ? groups : 0 },
    ...{ toAir: patches, fromAir: patches, pivot: behind, gain: behind, held: row },
    ...{ airToRoom: airNodes, outerLink: patches, airToOut: airNodes },
    ...{ sources: ends, mat: patches, outside: patches, scratch: ends, ambient: ends, slope: patches },
    ...{ old: row, stage: row, between: row, row },
    bodies: heaters.length * heaterStride(layout),
    books: 4,
    capacity: row,
    answers: airNodes * groups,
  };
}

function placeFor(kernel: Kernel, layout: Layout, heaters: readonly HeaterPath[]): Place {
  const lengths = lengthsOf(layout, heaters);
  const at: Record<string, number> = {};
  let next = tableByte + 1024;
  const take = (name: string, bytes: number) => {
    at[name] = next;
    next += (bytes + 15) & ~15;
  };
  for (const name of wholes) take(name, layout[name].byteLength);
  for (const name of lists) take(name, lengths[name] * 8);
  reserve(kernel, next);
  const { buffer } = kernel.memory;
  const { airNodes, patches, behind, airBand, hasMats, groups, isGrouped } = layout;
  const head = [airNodes, patches, behind, airBand, heaters.length, hasMats ? 1 : 0, groups, isGrouped ? 1 : 0];
  new Int32Array(buffer, tableByte, head.length + wholes.length + lists.length).set([
    ...head,
    ...[...wholes, ...lists].map((name) => at[name]!),
  ]);
  for (const name of wholes) new Int32Array(buffer, at[name], layout[name].length).set(layout[name]);
  const part = Object.fromEntries(lists.map((name) => [name, new Float64Array(buffer, at[name], lengths[name])]));
  part.capacity!.set(layout.capacity);
  heaters.forEach((path, h) => {
    part.bodies!.set(heaterNumbers(path, layout), h * heaterStride(layout));
  });
  return { layout, heaters, buffer, part: part as Place['part'], at, factors: null, ambient: null };
}
