// The facts of data/ inside a worker, read once when it starts; unsound rows are left out by the facts room itself.
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import { factsFrom } from '../../husbandry/facts.ts';
import { rangeOf } from '../../husbandry/species-facts.ts';
import type { FactsBrief } from './protocol.ts';

const files = import.meta.glob<unknown>(['../../../data/*.json', '../../../data/species/*.json'], {
  eager: true,
  import: 'default',
});

export const { facts, faults: factFaults } = factsFrom(files);

export function factsBrief(): FactsBrief {
  const species = Object.values(facts.species).map((row) => {
    const climateOf = (stage: 'hatchling' | 'young' | 'adult') => {
      const needs = climateNeeds(row, stage);
      return needs.ok ? needs.value : null;
    };
    return {
      id: row.id,
      commonName: row.commonName,
      scientificName: row.scientificName,
      adultLengthCm: rangeOf(row, 'adult', 'adultTotalLengthCm'),
      climate: { hatchling: climateOf('hatchling'), young: climateOf('young'), adult: climateOf('adult') },
    };
  });
  return {
    species: species.sort((a, b) => a.commonName.localeCompare(b.commonName)),
    standards: Object.values(facts.standards).map(({ id, name, speciesIds, source, read }) => ({
      id,
      name,
      speciesIds,
      source,
      read,
    })),
    sources: facts.sources,
    cautions: facts.cautions,
  };
}
