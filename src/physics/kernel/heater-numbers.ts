// A heater as the kernel reads it: some numbers, then its shares by patch and by air node, in the order of kernel.as.

import type { HeaterPath } from '../model.ts';
import { keptShares } from './body-law.ts';
import type { Layout } from './layout.ts';

const sigma = 5.670374419e-8;

/** Places of what changes from step to step. */
export const heaterSlot = { powerW: 11, bodyC: 12, convectedW: 15, radiatedW: 16, radiatedAtStartW: 17 } as const;
const headLength = 18;

export const heaterStride = ({ airNodes, patches }: Layout): number => headLength + 5 * patches + 2 * airNodes;

export function heaterNumbers(path: HeaterPath, layout: Layout): Float64Array {
  const { airNodes, patches } = layout;
  const { body } = path;
  const numbers = new Float64Array(heaterStride(layout));
  const kept = keptShares(path);
  numbers.set([
    ...[body.form === 'body' ? 1 : 0, path.outside ? 1 : 0, body.diameterM, path.areaM2],
    ...[body.emissivity * sigma * path.areaM2, body.heatCapacity, path.shortWaveFrac],
    ...[kept.convected, kept.radiated, kept.shortWave, path.sheet.length > 0 ? 1 : 0],
  ]);
  let next = headLength;
  const take = (length: number) => {
    next += length;
    return next - length;
  };
  numbers.set(path.longWave, take(patches));
  numbers.set(path.shortWave, take(patches));
  numbers.set(path.plumePatch, take(patches));
  const onSurface = take(patches);
  const onMat = take(patches);
  for (const part of path.sheet)
    numbers[(path.heater.kind === 'heat-mat' ? onMat : onSurface) + part.patch]! += part.share;
  numbers.set(path.plumeAir, take(airNodes));
  const stands = take(airNodes);
  for (const { node, weight } of path.stands) numbers[stands + node]! += weight;
  return numbers;
}
