// Sprayed more than dries: both sides of the limit, the limit against a floor run through days, and that more spray never
// makes it hold.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { searchInputOf } from '../../bench/search.ts';
import { anyEnclosure, testMaterials } from '../../checks/box/random-enclosure.ts';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { runBox, runStateFrom, startTally } from '../physics/run.ts';
import { bestParameters, buildModel, settleBox } from '../physics/simulate.ts';
import { loadFacts } from '../records/facts.ts';
import type { Priors } from './ensemble.ts';
import { planEnclosure } from './plan.ts';
import type { PlanAnswer } from './plan-answer.ts';
import { openSprayNeed } from './search/spray-need.ts';
import { sprayNeedId, sprayVerdict } from './spray-verdict.ts';
import { driesGPerDay } from './wet-floor.ts';

const data = new URL('../../data/', import.meta.url);
const json = (file: string) => JSON.parse(readFileSync(new URL(file, data), 'utf8'));
const { facts } = loadFacts(data.pathname);
const tub = json('examples/tub-mat-600.json') as Enclosure;
const sprayed = (e: Enclosure, waterGPerDay: number, atHours = [8, 20]): Enclosure => ({
  ...e,
  misting: { waterGPerDay, atHours },
});

function plan(enclosure: Enclosure, members = 8): PlanAnswer {
  const climate = climateNeeds(facts.species[enclosure.animal!.speciesId]!, enclosure.animal!.stage);
  if (!climate.ok) throw new Error('climate facts missing');
  const priors = json('priors.json') as Priors;
  return planEnclosure({ enclosure, climate: climate.value, materials: facts.materials, priors, members, seed: 3 });
}
const need = (p: PlanAnswer) => p.needs.find((n) => n.id === sprayNeedId);
const asIs = { day: {}, night: {} };

describe('a plan', { timeout: 60_000 }, () => {
  const dry = plan(tub);
  const at = (grams: number) => plan(sprayed(tub, grams));
  const { driesWinterGPerDay: winter, driesSummerGPerDay: summer } = at(50).spray!;

  test('says nothing where nobody sprays', () => {
    expect(need(dry)).toBeUndefined();
    expect(dry.spray).toBeNull();
    expect(need(plan(sprayed(tub, 0)))).toBeUndefined();
  });

  test('holds below what every version dries, fails above what any does, is not known between', () => {
    const least = Math.min(winter.low, summer.low);
    const most = Math.min(winter.high, summer.high);
    expect(need(at(0.9 * least))!.verdict).toBe('holds');
    expect(need(at(1.1 * most))!.verdict).toBe('fails');
    expect(need(at(Math.min(winter.median, summer.median)))!.verdict).toBe('not-known');
  });

  test('what fails fails the plan, says what dries, what stays and how much may be sprayed', () => {
    const wet = at(400);
    expect(wet.verdict).toBe('fails');
    const { reasons, fixes, told, found } = need(wet)!;
    const g = (v: number) => v.toFixed(0);
    expect(found).toContain(`winter ${g(winter.median)} g a day (${g(winter.low)} to ${g(winter.high)} g)`);
    expect(reasons[0]).toBe('400 g a day are sprayed.');
    expect(reasons[2]).toContain(`by ${g(400 - winter.median)} g in winter, by ${g(400 - summer.median)} g in summer`);
    const sure = /no more than (\d+) g a day in winter and (\d+) g in summer/.exec(fixes[0]!)!;
    expect(need(at(Math.min(Number(sure[1]), Number(sure[2]))))!.verdict).toBe('holds');
    expect(told!.reasons.map((one) => one?.code)).toEqual([
      'spray.sprayed',
      'spray.dries',
      'spray.stays',
      'spray.skin',
      'spray.doubt',
    ]);
  });
});

test('names the season in which it stays, and none where it does not in the middle version', () => {
  const box = sprayed(tub, 100);
  const codes = (winter: number, summer: number, low = 50) =>
    sprayVerdict(box, [
      { winter, summer },
      { winter, summer },
      { winter: low, summer: low },
    ])[0]!.told!.reasons.map((one) => one?.code);
  expect(codes(80, 120)).toContain('spray.staysWinter');
  expect(codes(120, 80)).toContain('spray.staysSummer');
  expect(codes(80, 80)).toContain('spray.stays');
  expect(codes(120, 120)).toContain('spray.mayStay');
});

/** Water lying on the floor after each of some days. */
function lyingG(enclosure: Enclosure, days: number): number[] {
  const model = buildModel(enclosure, facts.materials);
  const room = enclosure.room.winter;
  const settled = settleBox(model, { roomC: room.lowC, roomRhPct: room.rhPct, sunWPerM2: 0, isDay: false });
  let state = runStateFrom(model, settled);
  return Array.from({ length: days }, (_, d) => {
    state = runBox(model, room, state, 24 * d, 24 * (d + 1), { stepS: 120, renewS: 300 }, startTally(model), () => {});
    return 1000 * state.moisture.filmKg;
  });
}

describe('the limit against a floor run through days', { timeout: 60_000 }, () => {
  test.each(['tub-mat-600', 'wood-1200', 'glass-mesh-900'])('%s', (name) => {
    const box = { ...(json(`examples/${name}.json`) as Enclosure) };
    const { winter } = driesGPerDay(buildModel(box, facts.materials), asIs);
    const over = lyingG(sprayed(box, 1.3 * winter), 4);
    for (let d = 1; d < 4; d++) expect(over[d]! - over[d - 1]!).toBeGreaterThan(0.15 * winter);
    const under = lyingG(sprayed(box, 0.7 * winter), 4);
    expect(Math.abs(under[3]! - under[2]!)).toBeLessThan(0.01 * winter);
  });
});

test('more spray never makes it hold, in any box', { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(
      anyEnclosure,
      fc.double({ min: 1, max: 2000, noNaN: true }),
      fc.double({ min: 1, max: 3 }),
      (e, g, more) => {
        const share = (grams: number) => {
          const box = sprayed(e, grams);
          const dries = [0.4, 1, 2.5].map((leakage) =>
            driesGPerDay(buildModel(box, testMaterials, { ...bestParameters, leakage }), asIs),
          );
          return sprayVerdict(box, dries)[0]!.shareHolding!;
        };
        expect(share(g * more)).toBeLessThanOrEqual(share(g));
      },
    ),
    { seed: 1, numRuns: 25 },
  );
});

test('more air dries more, as is advised', () => {
  const wider = { ...tub, box: { ...tub.box, vents: tub.box.vents.map((v) => ({ ...v, areaM2: 2 * v.areaM2 })) } };
  const of = (e: Enclosure) => driesGPerDay(buildModel(e, facts.materials), asIs);
  expect(of(wider).winter).toBeGreaterThan(1.05 * of(tub).winter);
  expect(of(wider).summer).toBeGreaterThan(1.05 * of(tub).summer);
});

test('a search names it among what no heater mends', { timeout: 60_000 }, () => {
  const input = searchInputOf('wood-1200', { members: 8 });
  const found = (grams: number) => openSprayNeed(sprayed(input.enclosure, grams), input).map((n) => n.verdict);
  expect(found(0)).toEqual([]);
  expect(found(100)).toEqual([]);
  expect(found(2000)).toEqual(['fails']);
});
