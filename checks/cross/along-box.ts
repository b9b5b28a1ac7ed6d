// Reads our answer at the places where another program printed its own: eighths of the length, points at a height.
// Our columns have uneven edges, so eighths are means by overlap and points are interpolated as the program itself does.
import type { Columns } from '../../src/physics/answer.ts';
import { between } from '../../src/physics/reading.ts';

export interface Along {
  readonly columns: Columns;
  /** Edges of our columns, from the left wall [m]. */
  readonly edgeM: readonly number[];
  readonly layerZM: readonly number[];
}

/** Mean over each of n equal parts of the length. @param values one per column */
export function partMeans(along: Along, values: readonly number[], n: number): number[] {
  const { edgeM } = along;
  const length = edgeM.at(-1)!;
  return Array.from({ length: n }, (_, part) => {
    const from = (length * part) / n;
    const to = (length * (part + 1)) / n;
    let sum = 0;
    values.forEach((v, i) => {
      sum += v * Math.max(0, Math.min(to, edgeM[i + 1]!) - Math.max(from, edgeM[i]!));
    });
    return sum / (to - from);
  });
}

/** Mean over the whole length. */
export const lengthMean = (along: Along, values: readonly number[]): number => partMeans(along, values, 1)[0]!;

/** Air at a point [degC]. */
export function airAt(along: Along, xM: number, zM: number): number {
  let sum = 0;
  for (const [k, wz] of between(along.layerZM, zM, true))
    for (const [i, wx] of between(along.columns.xM, xM, false)) sum += wz * wx * along.columns.airC[k]![i]!;
  return sum;
}
