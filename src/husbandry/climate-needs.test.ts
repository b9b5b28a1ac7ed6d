import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import { climateNeeds, reachableMax } from './climate-needs.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../data', import.meta.url)));

describe('climate needs', () => {
  test('every species and stage has them, sourced and in order', () => {
    for (const species of Object.values(facts.species)) {
      for (const stage of ['hatchling', 'young', 'adult'] as const) {
        const found = climateNeeds(species, stage);
        if (!found.ok) throw new Error(JSON.stringify(found.faults));
        const needs = found.value;
        for (const range of [needs.baskingSurfaceC, needs.warmAirC, needs.coolAirC, needs.nightMinC, needs.rhPct]) {
          expect(facts.sources[range.source]).toBeDefined();
          expect(range.low).toBeLessThanOrEqual(range.high);
        }
        expect(needs.coolAirC.high).toBeLessThanOrEqual(needs.warmAirC.high);
        expect(needs.baskingSurfaceC.high).toBeLessThanOrEqual(needs.reachableMaxC.target);
        expect(needs.reachableMaxC.target).toBeLessThan(needs.reachableMaxC.alarm);
        expect(needs.reachableMaxC.alarm).toBeLessThan(needs.reachableMaxC.cutOut);
      }
    }
  });

  test('the stage goes before the species', () => {
    const corn = facts.species.corn!;
    const own = { low: 22, high: 24, source: 'COMMON', at: '', read: 'memory' } as const;
    const young = { ...corn, young: { ...corn.young, nightMinC: own } };
    const night = (stage: 'young' | 'adult') => {
      const found = climateNeeds(young, stage);
      return found.ok ? found.value.nightMinC.low : null;
    };
    expect([night('young'), night('adult')]).toEqual([22, 18]);
  });

  test('what is missing is named, all of it', () => {
    const corn = facts.species.corn!;
    const { rhPct: _rh, coolAirC: _cool, ...rest } = corn.all;
    const found = climateNeeds({ ...corn, all: rest }, 'adult');
    expect(found.ok).toBe(false);
    if (!found.ok)
      expect(found.faults.map((f) => f.field)).toEqual(['species/corn.json: coolAirC', 'species/corn.json: rhPct']);
  });

  test.each([
    [null, 38, 40],
    [42, 38, 40],
    [40, 38, 39],
    [38, 36, 37],
  ])('a critical maximum of %s °C gives alarm %s and cut-out %s', (ctMaxC, alarm, cutOut) => {
    expect(reachableMax(ctMaxC)).toMatchObject({ target: 35, alarm, cutOut });
  });
});
