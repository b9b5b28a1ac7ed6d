// Lamp lives and power over the years against sums done by hand.
import { burningHoursPerYear } from '../../src/planning/cost/lamp-life.ts';
import { wholeLifeCost } from '../../src/planning/cost/whole-life-cost.ts';
import type { CheckRow } from '../check-row.ts';
import { num } from '../inputs.ts';
import { type Runner, readTables, rowsOf } from '../table.ts';

const kitCosts: Runner = (i) => {
  const hoursPerYear = burningHoursPerYear(
    num(i, 'hoursPerDay'),
    num(i, 'dutyFrac'),
    num(i, 'dimmed') === 1 ? 'dimming' : 'pulse',
  );
  const kWhPerYear = (num(i, 'meanW') * 8760) / 1000;
  const lamp = { name: 'lamp', price: num(i, 'lampPrice'), hoursPerYear, lifeH: num(i, 'lifeH') };
  const cost = wholeLifeCost(num(i, 'kitPrice'), [lamp], kWhPerYear, num(i, 'tariff'), num(i, 'years'));
  return { ...cost, kWhPerYear, newInFirstYear: cost.byYear[0]!.replaced.length } as unknown as Record<string, number>;
};

export async function cases(): Promise<CheckRow[]> {
  const tables = readTables(new URL('./costs.table.json', import.meta.url));
  return tables.flatMap((table) => rowsOf(table, { kitCosts }));
}
