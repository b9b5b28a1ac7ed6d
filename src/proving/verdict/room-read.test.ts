import { expect, test } from 'vitest';
import type { ReadingLog } from '../reading-log.ts';
import { roomReadOf } from './room-read.ts';

const log = (values: readonly (number | null)[], place: 'room' | 'cool-air' = 'room'): ReadingLog => ({
  kind: 'logger',
  timesS: values.map((_, i) => i * 300),
  channels: [{ id: 'a', label: 'A', quantity: 'tempC', place, instrumentId: null, values }],
});

test('the ends of what the room was read at; holes are no readings', () => {
  expect(roomReadOf(log([19, null, 17.5, 21]))).toEqual({ low: 17.5, high: 21 });
  expect(roomReadOf(log([null, null]))).toBeNull();
  expect(roomReadOf(log([19, 20], 'cool-air'))).toBeNull();
});

test('one odd reading of a long log covers nothing', () => {
  const usual = Array.from({ length: 200 }, (_, i) => 18 + (i % 11) / 10);
  expect(roomReadOf(log([...usual, -5, 60]))).toEqual({ low: 18, high: 19 });
});
