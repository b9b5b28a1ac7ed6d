// The map of a made-up day whose answer is known: a cold night at the warm end, a hot noon in the middle.
import { createColors } from 'picocolors';
import { expect, it } from 'vitest';
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { DayAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { displayFor } from './display.ts';
import { floorMap, longestRun, troublesOf } from './floor-map.ts';
import { gradientMapLines } from './gradient-map.ts';
import { de } from './messages/de.ts';
import { en } from './messages/en.ts';
import type { Terminal } from './terminal.ts';
import { widthOf } from './wrap.ts';

const range = (low: number, high: number) => ({ low, high, source: 'COMMON', at: '', read: 'memory' as const });
const climate: ClimateNeeds = {
  speciesId: 'corn',
  stage: 'adult',
  baskingSurfaceC: range(30, 32),
  warmAirC: range(27, 30),
  coolAirC: range(20, 24),
  nightMinC: range(18, 21),
  rhPct: range(40, 60),
  reachableMaxC: { target: 35, alarm: 38, cutOut: 40, source: 'OUR-CHOICE' },
  climbs: true,
};

/** Floor [°C] as a rule of the place and the hour, in the form of a day's answer. */
function dayOf(floorC: (xM: number, hour: number) => number, warmEnd: 'left' | 'right' = 'left'): DayAnswer {
  const hours = Array.from({ length: 96 }, (_, i) => (i + 1) / 4);
  const columnXM = [0.15, 0.45, 0.75, 1.05];
  const day: Partial<DayAnswer> = {
    hours,
    columnXM,
    warmEnd,
    floorC: hours.map((hour) => columnXM.map((xM) => floorC(xM, hour))),
    heaterW: hours.map((hour) => (hour < 12 ? 100 : 50)),
    roomC: hours.map(() => 18),
  };
  return day as DayAnswer;
}

const sound = (xM: number): number => 31 - (xM / 1.2) * 9;
const coldNight = (xM: number, hour: number): number => (hour <= 6 ? 15 : sound(xM));
const enclosure = { box: { lengthM: 1.2 }, day: { startH: 8, endH: 20 }, heaters: [] } as unknown as Enclosure;
const terminal = (colour: boolean, columns = 80): Terminal => ({
  out: () => {},
  err: () => {},
  columns,
  colour,
  paint: createColors(colour),
  env: {},
  stdin: (async function* () {})(),
});

it('finds no trouble on a sound floor and says so', () => {
  const map = floorMap(dayOf(sound), 1.2, enclosure.day, climate, 60);
  expect(troublesOf(map, 'left')).toEqual([]);
  const lines = gradientMapLines(dayOf(sound), enclosure, climate, displayFor('metric', 'en'), terminal(false), en);
  expect(lines[0]).toBe(en.map.fine);
});

it('finds a cold night over the whole floor, at its hours', () => {
  const map = floorMap(dayOf(coldNight), 1.2, enclosure.day, climate, 60);
  const found = troublesOf(map, 'left');
  expect(found.map((t) => [t.part, t.kind, t.fromH])).toEqual([
    ['warm', 'cold', 0],
    ['middle', 'cold', 0],
    ['cool', 'cold', 0],
  ]);
  for (const trouble of found) expect(trouble.hours).toBe(6);
});

it('mirrors with the warm end', () => {
  const mirrored = dayOf((xM, hour) => coldNight(1.2 - xM, hour), 'right');
  const left = floorMap(dayOf(coldNight), 1.2, enclosure.day, climate, 60);
  const right = floorMap(mirrored, 1.2, enclosure.day, climate, 60);
  const kinds = (rows: typeof left.rows) => rows.map((row) => row.map((cell) => cell.kind));
  expect(kinds(right.rows).map((row) => [...row].reverse())).toEqual(kinds(left.rows));
});

it('counts a run over midnight as one', () => {
  expect(longestRun([true, true, false, true])).toEqual({ start: 3, length: 3 });
  expect(longestRun([true, true])).toEqual({ start: 0, length: 2 });
  expect(longestRun([false])).toEqual({ start: 0, length: 0 });
});

it.each([
  [false, 24],
  [true, 12],
])('with colour %s draws %i rows that fit the width', (colour, rows) => {
  for (const columns of [60, 80, 120]) {
    const show = displayFor('metric', 'en');
    const lines = gradientMapLines(dayOf(coldNight), enclosure, climate, show, terminal(colour, columns), en);
    expect(lines.filter((line) => /^\d\d /.test(line))).toHaveLength(rows);
    for (const line of lines.filter((text) => /^\d\d /.test(text))) expect(widthOf(line)).toBeLessThanOrEqual(columns);
    expect(lines.some((line) => line.includes('\u001b'))).toBe(colour);
  }
});

it('tells every kind of cell in its legend, in both languages', () => {
  for (const messages of [en, de]) {
    const text = gradientMapLines(
      dayOf(sound),
      enclosure,
      climate,
      displayFor('metric', 'en'),
      terminal(false),
      messages,
    ).join('\n');
    for (const word of Object.values(messages.map.legend)) expect(text).toContain(word);
  }
});
