// Typed readings and several loggers become one log.
import { expect, it } from 'vitest';
import { handLog } from './hand-readings.ts';
import { mergeLogs } from './merge-logs.ts';
import { madeLog } from './testing/made-log.ts';

it('three numbers and a time, in order of time', () => {
  const log = handLog([
    { atS: 2000, valuesC: { 'basking-surface': 31, room: 18 } },
    { atS: 1000, valuesC: { 'cool-air': 22 } },
  ]);
  expect(log.ok && log.value.timesS).toEqual([1000, 2000]);
  expect(log.ok && log.value.channels.map((c) => [c.place, c.values])).toEqual([
    ['basking-surface', [null, 31]],
    ['cool-air', [22, null]],
    ['room', [null, 18]],
  ]);
});

it('every fault of every reading', () => {
  const log = handLog([
    { atS: 1, valuesC: {} },
    { atS: 2, valuesC: { room: 86, 'cool-air': Number.NaN } },
  ]);
  expect(log.ok ? [] : log.faults.map((f) => [f.code, f.field])).toEqual([
    ['HAND_NONE', '[0].valuesC'],
    ['HAND_RANGE', '[1].valuesC.cool-air'],
    ['HAND_RANGE', '[1].valuesC.room'],
  ]);
});

it('two loggers keep their own times side by side', () => {
  const [a, b] = [
    madeLog([{ place: 'room', dayC: 19, nightC: 18 }], 2, 600),
    madeLog([{ place: 'cool-air', dayC: 22, nightC: 20 }], 2, 900),
  ];
  const both = mergeLogs([a, b]);
  expect(new Set(both.channels.map((c) => c.id)).size).toBe(2);
  for (const [i, log] of [a, b].entries())
    expect(both.channels[i]!.values.filter((v) => v !== null)).toEqual(log.channels[0]!.values);
  expect([...both.timesS].sort((x, y) => x - y)).toEqual(both.timesS);
});
