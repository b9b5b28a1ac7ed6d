// What climate an animal of this species and stage needs, as the planning room compares it with a simulation.
import type { LifeStage } from '../physics/enclosure.ts';
import { good, type Result } from '../shared/result.ts';
import type { ClimateNeeds } from './climate.ts';
import type { Species } from './fact.ts';
import { dataFault } from './fact-check.ts';
import { neededForClimate } from './facts-species.ts';
import { rangeOf, wordOf } from './species-facts.ts';

/** No surface within reach above these [°C]: our choice, from the highest local figure in a statute read (35) and
 *  from critical maxima of 38 to 42 among kept snakes; lowered where a species' own maximum is lower. */
export const reachableCeiling = {
  targetC: 35,
  alarmC: 38,
  cutOutC: 40,
  alarmBelowMaxK: 2,
  cutOutBelowMaxK: 1,
} as const;

/** Ceiling for surfaces in reach.
 *  @param ctMaxC lowest critical thermal maximum read for the species or a relative [°C], or null */
export function reachableMax(ctMaxC: number | null): ClimateNeeds['reachableMaxC'] {
  const { targetC, alarmC, cutOutC, alarmBelowMaxK, cutOutBelowMaxK } = reachableCeiling;
  const max = ctMaxC ?? Infinity;
  const source = 'OUR-CHOICE';
  return {
    target: targetC,
    alarm: Math.min(alarmC, max - alarmBelowMaxK),
    cutOut: Math.min(cutOutC, max - cutOutBelowMaxK),
    source,
  };
}

/** Needs of climate for one species and life stage. Faults name every fact that is missing.
 *  Source: the facts of data/species/; ranges keep their own source and mark. */
export function climateNeeds(species: Species, stage: LifeStage): Result<ClimateNeeds> {
  const [baskingSurfaceC, warmAirC, coolAirC, nightMinC, rhPct] = neededForClimate.map((key) =>
    rangeOf(species, stage, key),
  );
  if (!baskingSurfaceC || !warmAirC || !coolAirC || !nightMinC || !rhPct) {
    const ctx = { file: `species/${species.id}.json`, sourceKeys: new Set<string>() };
    const missing = neededForClimate.filter((key) => !rangeOf(species, stage, key));
    return {
      ok: false,
      faults: missing.map((key) => dataFault(ctx, key, 'DATA_MISSING', null, 'a sourced range', `No ${key} is known.`)),
    };
  }
  const ctMax = rangeOf(species, stage, 'ctMaxC');
  const ceiling = reachableMax(ctMax?.low ?? null);
  return good({
    speciesId: species.id,
    stage,
    baskingSurfaceC,
    warmAirC,
    coolAirC,
    nightMinC,
    rhPct,
    reachableMaxC: ctMax?.own ? { ...ceiling, own: ctMax.own } : ceiling,
    climbs: wordOf(species, stage, 'climbs') === 'yes',
  });
}
