import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayAnswer } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { buildModel, simulateDay } from '../../physics/simulate.ts';
import { loadFacts } from '../../records/facts.ts';
import { cellPath, type DayField, dayField, longestRun, troublesOf } from './day-field.ts';
import { contourTemperatures, isolines } from './isolines.ts';
import { rowAtHour } from './readings.ts';
import type { WantedClimate } from './wanted.ts';

const data = new URL('../../../data', import.meta.url).pathname;
const wood = JSON.parse(readFileSync(`${data}/examples/wood-1200.json`, 'utf8')) as Enclosure;
const { materials } = loadFacts(data).facts;
const winter: DayAnswer = simulateDay(buildModel(wood, materials), { ...wood.room.winter, lowC: 2, highC: 8 });
const climate: WantedClimate = {
  baskingLowC: 30,
  baskingHighC: 32,
  warmLowC: 27,
  warmHighC: 30,
  coolLowC: 20,
  coolHighC: 24,
  nightLowC: 18,
};

describe('dayField of a real simulated day', () => {
  const field = dayField(winter, wood.box.lengthM, wood.day, climate);

  it('never leaves the range of the simulated floor', () => {
    const all = winter.floorC.flat();
    const [least, most] = [Math.min(...all), Math.max(...all)];
    for (const value of field.tempC) {
      expect(value).toBeGreaterThanOrEqual(least - 1e-9);
      expect(value).toBeLessThanOrEqual(most + 1e-9);
    }
  });

  it('agrees with the simulated row and column nearest to a cell', () => {
    const [hour, column] = [12, Math.floor(winter.columnXM.length / 2)];
    const xM = winter.columnXM[column] ?? 0;
    const cell =
      Math.floor((hour / 24) * field.rows) * field.columns + Math.floor((xM / wood.box.lengthM) * field.columns);
    expect(field.tempC[cell]).toBeCloseTo(winter.floorC[rowAtHour(winter, hour)]?.[column] ?? Number.NaN, 0);
  });

  it('names a room near freezing as too cold at the cool end for most of the day', () => {
    const worst = troublesOf(field, winter.warmEnd).find(({ part }) => part === 'cool');
    expect(worst?.kind).toBe('cold');
    expect(worst?.hours).toBeGreaterThan(12);
  });

  it('covers every cell with exactly one level', () => {
    const area = (path: string) =>
      [...path.matchAll(/M(\d+) \d+H(\d+)/g)].reduce((sum, [, from, to]) => sum + Number(to) - Number(from), 0);
    const cold = area(cellPath(field, (level) => level < 0));
    const rest = area(cellPath(field, (level) => level >= 0));
    expect(cold).toBeGreaterThan(0);
    expect(cold + rest).toBe(field.rows * field.columns);
  });
});

describe('longestRun', () => {
  it('goes on over midnight', () => {
    expect(longestRun([true, true, false, false, true])).toEqual({ start: 4, length: 3 });
    expect(longestRun([false, false])).toEqual({ start: 0, length: 0 });
    expect(longestRun([true, true])).toEqual({ start: 0, length: 2 });
  });

  it('is never longer than the flags that are set', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 40 }), (flags) => {
        const { length } = longestRun(flags);
        expect(length).toBeLessThanOrEqual(flags.filter(Boolean).length);
        expect(length > 0).toBe(flags.some(Boolean));
      }),
    );
  });
});

it('draws a line of equal temperature where a straight slope has it', () => {
  const [rows, columns] = [12, 20];
  const tempC = Float64Array.from({ length: rows * columns }, (_, cell) => 20 + 0.5 * (cell % columns));
  const field: DayField = { rows, columns, tempC, level: new Array(rows * columns).fill(0) };
  expect(contourTemperatures(field, 2)).toEqual([20, 22, 24, 26, 28]);
  const [line] = isolines(field, [23.1]);
  // 23.1 °C lies 6.2 columns from the first centre, which is half a cell from the edge.
  for (const [, x] of line?.path.matchAll(/[ML](\d+\.\d+) /g) ?? []) expect(Number(x)).toBeCloseTo(6.7, 1);
  expect(line?.reach).toBe(rows);
});
