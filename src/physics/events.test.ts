// Lamp failing, power cut, schedule, second cut-out: at the second they are set to, when a step begins there; else at the
// start of the step that holds them, so at most one step late. With watts that nothing controls the day's energy says it.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import type { Enclosure } from './enclosure.ts';
import { buildModel, simulateDay } from './simulate.ts';

const { materials } = loadFacts(new URL('../../data', import.meta.url).pathname).facts;
const wood = JSON.parse(
  readFileSync(new URL('../../data/examples/wood-1200.json', import.meta.url), 'utf8'),
) as Enclosure;
const powerW = 60;
const lone = (part: Partial<Enclosure['heaters'][number]> = {}): Enclosure => ({
  ...wood,
  heaters: [{ ...wood.heaters[0]!, powerW, thermostatId: null, ...part }],
  thermostats: [],
});
type Options = Parameters<typeof simulateDay>[2];
const kWh = (e: Enclosure, options: Options) =>
  simulateDay(buildModel(e, materials), e.room.winter, { leadH: 1, ...options }).kWhPerDay;
const hours = (h: number) => (powerW * h) / 1000;

describe('events', () => {
  it.each([10, 60])('in steps of %s s: a heater that dies at ten has given ten hours', (stepS) => {
    expect(kWh(lone(), { stepS, dead: { heater: 0, fromH: 10 } })).toBeCloseTo(hours(10), 9);
  });

  it.each([10, 60])('in steps of %s s: a cut from ten to half past eleven takes an hour and a half', (stepS) => {
    expect(kWh(lone(), { stepS, powerCut: { fromH: 10, toH: 11.5 } })).toBeCloseTo(hours(22.5), 9);
  });

  it.each([10, 60])('in steps of %s s: a heater of the day works from the day’s start to its end', (stepS) => {
    const e = { ...lone({ period: 'day' }), day: { startH: 8, endH: 20.5 } };
    expect(kWh(e, { stepS })).toBeCloseTo(hours(12.5), 9);
  });

  it('between two steps it comes at most one step late', () => {
    const stepS = 60;
    const fromH = 10 + 37 / 3600;
    const off = kWh(lone(), { stepS, dead: { heater: 0, fromH } }) - hours(fromH);
    expect(off).toBeGreaterThanOrEqual(-1e-12);
    expect(off).toBeLessThanOrEqual(hours(stepS / 3600) + 1e-12);
    expect(off).toBeGreaterThan(hours(20 / 3600));
  });

  it('a stuck thermostat gives full power from its hour on, and a second cut-out holds it below its own threshold', () => {
    const e: Enclosure = {
      ...wood,
      heaters: [{ ...wood.heaters[0]!, powerW: 150 }],
    };
    const stuck = { thermostat: 0, duty: 1, fromH: 10 };
    const hottest = (cutOutC: number | null) =>
      Math.max(
        ...simulateDay(
          buildModel({ ...e, thermostats: e.thermostats.map((t) => ({ ...t, cutOutC })) }, materials),
          e.room.winter,
          { stepS: 10, leadH: 1, stuck },
        ).places.probe!.slice(41),
      );
    const [free, held] = [hottest(null), hottest(30)];
    expect(free).toBeGreaterThan(31);
    expect(held).toBeLessThan(30.6);
    expect(held).toBeGreaterThan(28);
  });

  it('after a power cut the box is where one step a fifth as long says, within 0.02 K', () => {
    const after = (stepS: number) =>
      simulateDay(buildModel(wood, materials), wood.room.winter, {
        stepS,
        leadH: 1,
        powerCut: { fromH: 10, toH: 11.5 },
      });
    const [coarse, fine] = [after(10), after(2)];
    coarse.places['basking-surface']!.forEach((c, i) => {
      expect(Math.abs(c! - fine.places['basking-surface']![i]!)).toBeLessThan(0.02);
    });
  });
});
