import { expect, test } from 'vitest';
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { DayAnswer } from '../physics/answer.ts';
import { floorLevels } from './floor-levels.ts';

const range = (low: number, high: number) => ({ low, high, source: 'COMMON', at: '', read: 'memory' as const });
const climate: ClimateNeeds = {
  speciesId: 'corn',
  stage: 'adult',
  baskingSurfaceC: range(28, 32),
  warmAirC: range(26, 30),
  coolAirC: range(20, 25),
  nightMinC: range(18, 18),
  rhPct: range(40, 60),
  reachableMaxC: { target: 35, alarm: 38, cutOut: 40, source: 'OUR-CHOICE' },
  climbs: false,
};
const hours = Array.from({ length: 25 }, (_, h) => h);
const columnXM = [0.15, 0.45, 0.75, 1.05];
const dayOf = (floor: (hour: number, column: number) => number, warmEnd: 'left' | 'right' = 'left') =>
  ({ hours, columnXM, warmEnd, floorC: hours.map((h) => columnXM.map((_, c) => floor(h, c))) }) as unknown as DayAnswer;
const period = { startH: 8, endH: 20 };
const levels = (day: DayAnswer) => floorLevels(day, 1.2, period, climate, 24, 12);

test('a floor as wanted everywhere is all wanted; ten kelvin colder is cold by day and night', () => {
  const wanted = [28, 26, 23, 22];
  expect(levels(dayOf((_, c) => wanted[c]!)).wantedFrac).toBe(1);
  const cold = levels(dayOf((_, c) => wanted[c]! - 11));
  expect(cold.wantedFrac).toBe(0);
  expect(Math.max(...cold.outsideK)).toBeLessThan(0);
});

test('the cool end too warm by day shows at the cool end only', () => {
  const { outsideK, columns } = levels(dayOf(() => 29));
  const noon = outsideK.slice(12 * columns, 13 * columns);
  expect(noon[0]).toBe(0);
  expect(noon.at(-1)).toBeCloseTo(4, 6);
});

test('a box turned round gives the same picture turned round', () => {
  const left = levels(dayOf((h, c) => 24 + c + h / 12));
  const right = levels(dayOf((h, c) => 24 + (3 - c) + h / 12, 'right'));
  const { rows, columns } = left;
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      expect(right.outsideK[r * columns + columns - 1 - c]).toBeCloseTo(left.outsideK[r * columns + c]!, 9);
});
