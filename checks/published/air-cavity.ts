// The benchmark of slow air in a square cavity: two grids and extrapolation to none, as its author did.
import type { CheckRow } from '../check-row.ts';
import { num } from '../inputs.ts';
import { airCavity } from '../solvers/air-cavity.ts';
import { type Inputs, readTables, rowsOf } from '../table.ts';

function extrapolated(i: Inputs): Record<string, number> {
  const on = (cells: number, step: number) =>
    airCavity({
      rayleigh: num(i, 'rayleigh'),
      prandtl: num(i, 'prandtl'),
      cells,
      stretch: num(i, 'stretch'),
      step,
      maxSteps: 8000,
    });
  const [coarse, fine] = [num(i, 'coarse'), num(i, 'fine')];
  const [first, second] = [on(coarse, num(i, 'coarseStep')), on(fine, num(i, 'fineStep'))];
  const gain = 1 / ((fine / coarse) ** 2 - 1);
  const beyond = (low: number, high: number) => high + gain * (high - low);
  return {
    nusselt: beyond(first.nusseltHot, second.nusseltHot),
    sidewaysMax: beyond(first.sidewaysMax, second.sidewaysMax),
    upMax: beyond(first.upMax, second.upMax),
  };
}

export async function cases(): Promise<CheckRow[]> {
  const tables = readTables(new URL('./air-cavity.json', import.meta.url));
  return tables.flatMap((table) => rowsOf(table, { airCavity: extrapolated }));
}
