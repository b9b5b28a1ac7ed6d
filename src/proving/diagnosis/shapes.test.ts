// The shapes of curves, each on a log made to show it and on one that does not.
import { describe, expect, it } from 'vitest';
import type { ReadingLog } from '../reading-log.ts';
import { madeLog, noonS } from '../testing/made-log.ts';
import { dayShift, halfHours, lastingJump, middayBump, saturated } from './shapes.ts';

const day = { startH: 8, endH: 20 };
const healthy = madeLog([
  { place: 'room', dayC: 19, nightC: 18 },
  { place: 'warm-hide', dayC: 27, nightC: 24 },
]);
const points = (log: ReadingLog) => halfHours(log, log.channels[1]!);
const changed = (change: (v: number, t: number) => number): ReadingLog => ({
  ...healthy,
  channels: healthy.channels.map((c, i) =>
    i === 1 ? { ...c, values: c.values.map((v, k) => (v === null ? null : change(v, healthy.timesS[k]!))) } : c,
  ),
});

describe('a lasting jump', () => {
  const from = noonS + 40 * 3600;
  it('is found with its hour and its size', () => {
    const jump = lastingJump(points(changed((v, t) => (t >= from ? v + 4 : v))), 2);
    expect(Math.abs((jump?.atS ?? 0) - from)).toBeLessThan(2 * 3600);
    expect(jump?.byK).toBeCloseTo(4, 0);
  });
  it('is not a door left open for an hour', () =>
    expect(lastingJump(points(changed((v, t) => (t >= from && t < from + 3600 ? v - 6 : v))), 2)).toBeNull());
  it('is not there in a healthy log', () => expect(lastingJump(points(healthy), 2)).toBeNull());
});

describe('the day', () => {
  it('stands where it was planned', () => expect(Math.abs(dayShift(points(healthy), day)?.byH ?? 9)).toBeLessThan(1));
  it.each([4, -6])('comes %s h late', (byH) => {
    const late = changed((_, t) => {
      const hour = (((t / 3600 - byH) % 24) + 24) % 24;
      return hour >= 8 && hour < 20 ? 27 : 24;
    });
    const shift = dayShift(points(late), day);
    expect(Math.abs((shift?.byH ?? 0) - byH)).toBeLessThanOrEqual(0.5);
    expect(shift?.leftFrac).toBeLessThan(0.3);
  });
  it('has no shift when it never changes', () => expect(dayShift(points(healthy), { startH: 0, endH: 0 })).toBeNull());
});

it('sun is a bump at noon', () => {
  const sunny = changed((v, t) => {
    const hour = (t / 3600) % 24;
    return hour > 10 && hour < 16 ? v + 5 * Math.sin((Math.PI * (hour - 10)) / 6) : v;
  });
  expect(middayBump(points(sunny), day).byK).toBeGreaterThan(3);
  expect(middayBump(points(healthy), day).byK).toBeLessThan(0.5);
});

it('a wet sensor stands at the top', () => {
  const dry = madeLog([{ place: 'cool-air', dayC: 55, nightC: 60, quantity: 'rhPct' }]);
  const wet = madeLog([{ place: 'cool-air', dayC: 99, nightC: 99.5, quantity: 'rhPct' }], 20);
  expect(saturated(dry, dry.channels[0]!)).toBeNull();
  const at = saturated(wet, wet.channels[0]!);
  expect((at!.toS - at!.fromS) / 3600).toBeCloseTo(20, 0);
});
