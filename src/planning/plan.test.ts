// The plan on real enclosures: what holds, what fails and why, and that it answers the same for the same seed.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { SteadyAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { boxGeometry, modelFrom, settleBox } from '../physics/simulate.ts';
import { steadyAnswer } from '../physics/steady-answer.ts';
import { loadFacts } from '../records/facts.ts';
import { drawMembers, type Priors } from './ensemble.ts';
import { baskingAimC, memberAnswer, momentsOf } from './member.ts';
import { planEnclosure } from './plan.ts';
import type { PlanAnswer } from './plan-answer.ts';
import { between } from './turning-point.ts';

const data = new URL('../../data/', import.meta.url);
const json = (file: string) => JSON.parse(readFileSync(new URL(file, data), 'utf8'));
const { facts } = loadFacts(data.pathname);
const priors = json('priors.json') as Priors;
const wood = json('examples/wood-1200.json') as Enclosure;

function plan(enclosure: Enclosure, members = 12, seed = 3): PlanAnswer {
  const climate = climateNeeds(facts.species[enclosure.animal!.speciesId]!, enclosure.animal!.stage);
  if (!climate.ok) throw new Error('climate facts missing');
  return planEnclosure({ enclosure, climate: climate.value, materials: facts.materials, priors, members, seed });
}
const need = (p: PlanAnswer, id: string) => p.needs.find((n) => n.id === id)!;
const winter = (lowC: number, highC: number): Enclosure => ({
  ...wood,
  room: { ...wood.room, winter: { ...wood.room.winter, lowC, highC } },
});

describe('a wooden vivarium with a trimmed pulse thermostat', { timeout: 60_000 }, () => {
  let usual: PlanAnswer;
  beforeAll(() => {
    usual = plan(wood);
  }, 60_000);

  test('holds the basking surface and says where the dial should start', () => {
    expect(need(usual, 'basking-surface').verdict).toBe('holds');
    const advised = usual.dial[0]!.advisedDayC!;
    expect(advised.median).toBeGreaterThan(24);
    expect(advised.median).toBeLessThan(31);
    expect(advised.low).toBeLessThan(advised.high);
  });

  test('tells the share of floor that suits the animal, row by row', () => {
    const shares = usual.winter.floorWantedFrac;
    expect(shares).toHaveLength(usual.winter.day.hours.length);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1 + 1e-9);
    expect(Math.max(...shares)).toBeGreaterThan(0.3);
  });

  test('answers the same for the same seed', () => {
    const again = plan(wood);
    expect(again.needs).toEqual(usual.needs);
    expect(again.kWhPerYear).toEqual(usual.kWhPerYear);
  });

  test('fails in a loft that falls to 2 °C, and says how warm the hide stays', () => {
    const cold = plan(winter(2, 6));
    const basking = need(cold, 'basking-surface');
    expect(basking.verdict).toBe('fails');
    expect(basking.reasons.join(' ')).toMatch(/flat out/);
    expect(cold.verdict).toBe('fails');
    expect(cold.dial[0]!.advisedDayC).toBeNull();
  });

  test('a colder room never raises a share of versions that hold the night', () => {
    const shares = [18, 10, 2].map((t) => need(plan(winter(t, t + 2), 8), 'night-warmth').shareHolding!);
    expect(shares[1]!).toBeLessThanOrEqual(shares[0]!);
    expect(shares[2]!).toBeLessThanOrEqual(shares[1]!);
  });

  test('a 38 °C room fails for every kit, with the sentence that no heater can cool', () => {
    const hot: Enclosure = { ...wood, room: { ...wood.room, summer: { ...wood.room.summer, lowC: 28, highC: 38 } } };
    const cool = need(plan(hot), 'cool-end-summer');
    expect(cool.verdict).toBe('fails');
    expect(cool.reasons.join(' ')).toContain('No heater can cool this room');
  });

  test('without a thermometer at the basking site the dial is a guess, and the reading that settles it is named', () => {
    const blind: Enclosure = { ...wood, thermometers: [] };
    const basking = need(plan(blind, 100), 'basking-surface');
    expect(basking.verdict).not.toBe('holds');
    if (basking.verdict === 'not-known') expect(basking.settledBy).toMatch(/basking/);
  });

  test('a heater too weak to be trimmed leaves summer judged with the heater at work, not with a made-up dial', () => {
    const weak: Enclosure = { ...wood, heaters: wood.heaters.map((h) => ({ ...h, powerW: 40 })) };
    const p = plan(weak);
    expect(need(p, 'basking-surface').verdict).toBe('fails');
    expect(p.summer.noon.heaterW[0]!).toBeGreaterThan(30);
  });

  test('a heater that is flat out in winter reaches its aim in mid-season, and its surface is hottest then', () => {
    const pvc = json('examples/pvc-1200.json') as Enclosure;
    const { winter: w, summer: s } = pvc.room;
    const p = plan({
      ...pvc,
      // as deep as the box, so that it warms the walls beside it too
      heaters: pvc.heaters.map((h) => ({ ...h, powerW: Math.round(h.powerW * 1.49), depthM: 0.58 })),
      room: { winter: { ...w, lowC: 6.4, highC: 7.2 }, summer: { ...s, lowC: 22, highC: 26.5 } },
    });
    const mostW = pvc.heaters[0]!.powerW * 1.49;
    const watts = [p.winter, p.mid!, p.summer].map((x) => x.noon.heaterW[0]!);
    expect(watts[0]!).toBeGreaterThan(0.95 * mostW);
    expect(watts[1]!).toBeLessThan(0.97 * mostW);
    expect(watts[2]!).toBeLessThan(watts[1]!);
    const hottest = [p.winter, p.mid!, p.summer].map((x) => x.noonInterval['hottest-reachable']!.median);
    expect(hottest[1]!).toBeGreaterThan(Math.max(hottest[0]!, hottest[2]!) + 0.5);
    const reach = need(p, 'hottest-reachable');
    const held = [p.winter, p.summer].every((x) => x.noonInterval['hottest-reachable']!.median <= 38);
    expect([held, reach.verdict]).not.toEqual([true, 'holds']);
    // hottest of all where the heater just comes off its stop, and the room of that day is named
    const room = /hottest between the seasons, at about ([\d.]+) °C in the room/.exec(reach.reasons.join(' '))?.[1];
    expect(Number(room)).toBeGreaterThan(p.winter.noon.roomC);
    expect(Number(room)).toBeLessThan(p.mid!.noon.roomC);
  });

  test('no day between the seasons has a surface hotter than what is judged', () => {
    const pvc = json('examples/pvc-1200.json') as Enclosure;
    const { winter: w, summer: s } = pvc.room;
    const home: Enclosure = {
      ...pvc,
      heaters: pvc.heaters.map((h) => ({ ...h, powerW: Math.round(h.powerW * 1.49), depthM: 0.58 })),
      room: { winter: { ...w, lowC: 10, highC: 11 }, summer: { ...s, lowC: 22, highC: 26.5 } },
    };
    const climate = climateNeeds(facts.species[home.animal!.speciesId]!, home.animal!.stage);
    if (!climate.ok) throw new Error('climate facts missing');
    const moments = momentsOf(home);
    const model = modelFrom(boxGeometry(home, facts.materials), drawMembers(priors, 1, 1)[0]!);
    const member = memberAnswer(model, moments, climate.value);
    const hottest = (a: { places: SteadyAnswer['places'] }) => a.places['hottest-reachable']!;
    const ends = Math.max(...[member.winterDay, member.midDay, member.summerDay].map(hottest));
    const days = Array.from({ length: 21 }, (_, i) => {
      const at = {
        ...between(moments.winterDay, moments.summerDay, i / 20),
        holdBaskingC: baskingAimC(climate.value),
      };
      return hottest(steadyAnswer(model, at, settleBox(model, at, member.settled)));
    });
    const judged = Math.max(ends, hottest(member.turnDay!));
    expect(Math.max(...days)).toBeGreaterThan(ends + 0.3);
    expect(Math.max(...days)).toBeLessThan(judged + 0.1);
  });

  test('mid-season lies between winter and summer, with a limit of its own at the cool end', () => {
    const mid = usual.mid!;
    expect(mid.noon.roomC).toBeCloseTo((usual.winter.noon.roomC + usual.summer.noon.roomC) / 2, 9);
    expect(mid.night.roomC).toBeCloseTo((usual.winter.night.roomC + usual.summer.night.roomC) / 2, 9);
    const cool = need(usual, 'cool-end-mid');
    expect(cool.verdict).toBe('holds');
    const mild: Enclosure = { ...wood, room: { ...wood.room, winter: { ...wood.room.summer, lowC: 24, highC: 27 } } };
    expect(need(plan(mild), 'cool-end-mid').verdict).toBe('fails');
  });

  test('an unguarded emitter within reach fails, whatever the dial', () => {
    const bare: Enclosure = { ...wood, heaters: wood.heaters.map((h) => ({ ...h, guarded: false })) };
    expect(need(plan(bare, 4), 'hottest-reachable').verdict).toBe('fails');
  });
});
