// A fit on readings made by the simulator itself: it must move towards the box that made them and say what it cannot know.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Priors } from '../../physics/priors.ts';
import { bestParameters, boxGeometry, modelFrom, solveSteady } from '../../physics/simulate.ts';
import { loadFacts } from '../../records/facts.ts';
import { madeLog } from '../testing/made-log.ts';
import { roomNodes } from './box-response.ts';
import { calibrate } from './calibrate.ts';
import { forecastBox } from './forecast.ts';
import { learnedFrom } from './learned.ts';
import { forecastMoments } from './moments.ts';

const data = new URL('../../../data/', import.meta.url);
const read = (path: string) => JSON.parse(readFileSync(new URL(path, data), 'utf8'));
const { materials } = loadFacts(data.pathname).facts;
const enclosure = read('examples/wood-1200.json') as Enclosure;
const priors = read('priors.json') as Priors;
const checked = (id: string) => ({
  id,
  name: id,
  checks: [{ quantity: 'tempC' as const, atS: 1_700_000_000, truth: 0, shown: 0, how: 'ice' as const }],
});

/** Readings of a box that leaks more and loses more than the best guess. */
const truth = { ...bestParameters, panelConductivity: 1.3, leakage: 2.2 };
const model = modelFrom(boxGeometry(enclosure, materials), truth);
const steady = (roomC: number, isDay: boolean) => solveSteady(model, { roomC, roomRhPct: 55, sunWPerM2: 0, isDay });
const [atDay, atNight] = [steady(19, true), steady(18, false)];
const watts = (a: typeof atDay) => a.heaterW.reduce((s, w) => s + w, 0);
const base = madeLog([
  { place: 'room', dayC: 19, nightC: 18, instrumentId: 'r' },
  {
    place: 'basking-surface',
    dayC: atDay.places['basking-surface']!,
    nightC: atNight.places['basking-surface']!,
    instrumentId: 'b',
  },
  { place: 'cool-air', dayC: atDay.places['cool-air']!, nightC: atNight.places['cool-air']!, instrumentId: 'c' },
]);
const power = {
  id: 'w',
  label: 'w',
  quantity: 'powerW' as const,
  place: 'basking-surface' as const,
  instrumentId: null,
  values: base.timesS.map((t) => {
    const h = (t / 3600) % 24;
    return h >= 8 && h < 20 ? watts(atDay) : watts(atNight);
  }),
};
const log = { ...base, channels: [...base.channels, power] };
const input = { enclosure, materials, priors, instruments: ['r', 'b', 'c'].map(checked) };

describe('calibrate', () => {
  const withPower = calibrate({ ...input, log })!;
  it('explains the readings', () => {
    for (const r of withPower.fit.residuals) expect(Math.abs(r.residual)).toBeLessThan(3 * r.sd);
    expect(withPower.roomFrom).toBe('read');
  });
  it('moves towards the box that made them: more heat lost than guessed', () => {
    const learned = learnedFrom(withPower.fit);
    const of = (name: string) => learned.find((l) => l.name === name)!;
    expect(of('panelConductivity').median * of('leakage').median).toBeGreaterThan(1.1);
  });
  it('watts teach what temperatures alone cannot', () => {
    const without = calibrate({ ...input, log: base })!;
    const left = (f: typeof withPower) => learnedFrom(f.fit).find((l) => l.name === 'panelConductivity')!.widthLeftFrac;
    expect(left(withPower)).toBeLessThan(left(without));
  });
  it('forecasts the night that made nobody read it, within its own interval', () => {
    const moments = forecastMoments(enclosure, withPower.lagH);
    const night = moments.find((m) => m.id === 'coldest-night')!;
    const spread = forecastBox(withPower.fit, [night], 32).moments['coldest-night'].spreadC['basking-surface']!;
    const really = steady(night.roomC, false).places['basking-surface']!;
    expect(really).toBeGreaterThan(spread.low);
    expect(really).toBeLessThan(spread.high);
    expect(spread.high - spread.low).toBeLessThan(3);
  });
  it('gives the same answer twice', () => {
    const again = calibrate({ ...input, log })!;
    expect([...again.fit.state]).toEqual([...withPower.fit.state]);
  });
  it('has nothing to say without a place', () => {
    expect(calibrate({ ...input, log: { ...base, channels: base.channels.slice(0, 1) } })).toBeNull();
  });
});

it('rooms of the table span what was read', () => {
  expect(roomNodes([])).toEqual([]);
  expect(roomNodes([18])).toEqual([17, 19]);
  expect(roomNodes([15, 21])).toEqual([15, 18, 21]);
});
