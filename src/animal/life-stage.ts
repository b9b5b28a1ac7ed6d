// Hatchling, young or adult, by the length of this animal against the usual lengths of its species.
import type { Species } from '../husbandry/fact.ts';
import { rangeOf } from '../husbandry/species-facts.ts';
import type { LifeStage } from '../physics/enclosure.ts';

/** Null when neither length nor mass tells. A mass is used only against the masses of hatchlings and adults.
 *  @param totalLengthCm [cm]  @param massG [g] */
export function lifeStageOf(species: Species, totalLengthCm: number | null, massG: number | null): LifeStage | null {
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  const young = rangeOf(species, 'young', 'totalLengthCm');
  const hatchling = rangeOf(species, 'hatchling', 'totalLengthCm');
  if (totalLengthCm !== null && adult && hatchling) {
    if (totalLengthCm >= adult.low) return 'adult';
    return totalLengthCm <= (hatchling.high + (young?.low ?? hatchling.high)) / 2 ? 'hatchling' : 'young';
  }
  const adultG = rangeOf(species, 'adult', 'massG');
  const hatchlingG = rangeOf(species, 'hatchling', 'massG');
  if (massG === null || !adultG || !hatchlingG) return null;
  // Twice a hatchling and half an adult as bounds: our choice.
  if (massG <= 2 * hatchlingG.high) return 'hatchling';
  return massG >= adultG.low / 2 ? 'adult' : 'young';
}
