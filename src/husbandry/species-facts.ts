// Reading one fact of a species for one life stage: the stage's own value goes before the one for all stages.
import type { LifeStage } from '../physics/enclosure.ts';
import type { SourcedRange } from './climate.ts';
import type { Fact, FactTable, Species } from './fact.ts';

/** The fact for this stage, or null when data/ has none. */
export const factOf = (species: Species, stage: LifeStage, key: string): Fact | null =>
  species[stage][key] ?? species.all[key] ?? null;

/** A fact as low..high; a single value is both ends. Null when the fact is missing or not a number. */
export function rangeOfFact(fact: Fact | null | undefined): SourcedRange | null {
  if (!fact) return null;
  const single = typeof fact.value === 'number' ? fact.value : null;
  const low = fact.low ?? single;
  const high = fact.high ?? single;
  return low === null || high === null ? null : { ...fact, low, high };
}

export const rangeOf = (species: Species, stage: LifeStage, key: string): SourcedRange | null =>
  rangeOfFact(factOf(species, stage, key));

/** A fact in words, or null. */
export function wordOf(species: Species, stage: LifeStage, key: string): string | null {
  const value = factOf(species, stage, key)?.value;
  return typeof value === 'string' ? value : null;
}

/** The one number of a fact in a table: its value, or the middle of its range. */
export function numberIn(table: FactTable, key: string): number | null {
  const range = rangeOfFact(table[key]);
  if (!range) return null;
  const value = table[key]?.value;
  return typeof value === 'number' ? value : (range.low + range.high) / 2;
}
