// The facts of data/ inside a worker, read once when it starts; unsound rows are left out by the facts room itself.
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import type { Facts } from '../../husbandry/fact.ts';
import { factsFrom } from '../../husbandry/facts.ts';
import { withShopValues } from '../../husbandry/overlay.ts';
import type { ShopValue } from '../../husbandry/shop-value.ts';
import { rangeOf } from '../../husbandry/species-facts.ts';
import type { FactsBrief } from './protocol.ts';

const files = import.meta.glob<unknown>(['../../../data/*.json', '../../../data/species/*.json'], {
  eager: true,
  import: 'default',
});

const { facts: shipped } = factsFrom(files);

export { shipped };

let laid: { readonly key: string; readonly facts: Facts } | null = null;

/** The facts with the branch's own values over them; the same object while the values are the same. */
export function factsWith(values: readonly ShopValue[]): Facts {
  const key = JSON.stringify(values);
  if (laid?.key !== key) laid = { key, facts: withShopValues(shipped, values).facts };
  return laid.facts;
}

export function factsBrief(values: readonly ShopValue[]): FactsBrief {
  const facts = factsWith(values);
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
