// Names of the species, asked once.
import { useEffect, useState } from 'react';
import { ask } from './animal-api.ts';

export interface SpeciesName {
  readonly id: string;
  readonly commonName: string;
  readonly scientificName: string;
}

let known: Promise<readonly SpeciesName[]> | null = null;

async function fetched(): Promise<readonly SpeciesName[]> {
  const answer = await ask<{ readonly species: readonly SpeciesName[] }>('/api/species');
  if (!answer.ok) {
    known = null;
    return [];
  }
  return [...answer.value.species].sort((a, b) => a.commonName.localeCompare(b.commonName));
}

export function useSpecies(): { readonly all: readonly SpeciesName[]; readonly nameOf: (id: string) => string } {
  const [all, setAll] = useState<readonly SpeciesName[]>([]);
  useEffect(() => {
    known ??= fetched();
    void known.then(setAll);
  }, []);
  return { all, nameOf: (id) => all.find((one) => one.id === id)?.commonName ?? id };
}
