import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { testMaterials } from '../../checks/box/random-enclosure.ts';
import type { Enclosure } from './enclosure.ts';
import { buildModel } from './simulate.ts';
import { simulateYear, type YearAnswer } from './year.ts';

const example = (name: string): Enclosure => {
  const path = new URL(`../../data/examples/${name}.json`, import.meta.url);
  const e = JSON.parse(readFileSync(path, 'utf8')) as Enclosure;
  const known = (id: string) => (id in testMaterials ? id : id === 'glass' ? 'glass' : 'wood');
  const panels = Object.fromEntries(
    Object.entries(e.box.panels).map(([side, p]) => [
      side,
      { ...p, layers: p.layers.map((l) => ({ ...l, materialId: known(l.materialId) })) },
    ]),
  ) as unknown as Enclosure['box']['panels'];
  return { ...e, box: { ...e.box, panels }, substrate: null };
};
const roomC = (days: number) =>
  Float64Array.from({ length: 24 * days }, (_, h) => 17 + 2 * Math.sin((h * Math.PI) / 12) + Math.sin(h / 29));
const answer = (name: string, days: number, stepS: number, renewS = 7200): YearAnswer => {
  const r = simulateYear(buildModel(example(name), testMaterials), roomC(days), { stepS, renewS });
  if (!r.ok) throw new Error(r.faults[0]!.say);
  return r.value;
};
const mean = (x: Float64Array) => x.reduce((s, v) => s + v, 0) / x.length;

describe('a year', { timeout: 60_000 }, () => {
  it('closes its books of heat and water', () => {
    for (const name of ['wood-1200', 'glass-mesh-900']) {
      const { balance, heaterW, kWh } = answer(name, 10, 1800);
      expect(balance.relative).toBeLessThan(1e-6);
      expect(balance.waterRelative).toBeLessThan(1e-6);
      expect(balance.heatIn - balance.heatOut - balance.stored).toBeLessThan(1e-6 * balance.heatIn);
      expect(heaterW.reduce((s, w) => s + w, 0) / 1000).toBeCloseTo(kWh, 9);
    }
  });

  it('agrees with short steps: energy within 1 %, means within 0.2 K', () => {
    for (const name of ['wood-1200', 'glass-mesh-900']) {
      const long = answer(name, 7, 1800);
      const short = answer(name, 7, 120, 600);
      expect(Math.abs(long.kWh / short.kWh - 1)).toBeLessThan(0.01);
      expect(Math.abs(mean(long.baskingC) - mean(short.baskingC))).toBeLessThan(0.2);
      expect(Math.abs(mean(long.coolAirC) - mean(short.coolAirC))).toBeLessThan(0.2);
      expect(Math.abs(mean(long.coolRhPct) - mean(short.coolRhPct))).toBeLessThan(1);
    }
  });

  it('has all its water in the books, that of the last interval too', () => {
    const halfDays = answer('wood-1200', 1, 1800, 43_200).balance;
    const twoHours = answer('wood-1200', 1, 1800).balance;
    expect(Math.abs(halfDays.waterInGPerH / twoHours.waterInGPerH - 1)).toBeLessThan(0.05);
  });

  it('costs less in a warmer room', () => {
    const model = buildModel(example('wood-1200'), testMaterials);
    const used = (by: number) => {
      const r = simulateYear(
        model,
        roomC(5).map((t) => t + by),
      );
      return r.ok ? r.value.kWh : Number.NaN;
    };
    expect(used(3)).toBeLessThan(used(0));
  });

  it('refuses broken rooms and steps, all at once', () => {
    const hours = roomC(2);
    hours[5] = Number.NaN;
    hours[7] = 99;
    const model = buildModel(example('wood-1200'), testMaterials);
    const r = simulateYear(model, hours.subarray(0, 47), { stepS: 700 });
    expect(r.ok ? [] : r.faults.map((f) => f.field)).toEqual(['hourlyC', 'hourlyC[5]', 'hourlyC[7]', 'stepS']);
  });
});
