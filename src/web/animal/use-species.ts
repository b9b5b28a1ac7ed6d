// Names of the species, asked once.
import { useEffect, useMemo, useState } from 'react';
import { useSheet } from '../settings/settings-context.tsx';
import { ask } from './animal-api.ts';

export interface SpeciesName {
  readonly id: string;
  readonly commonName: string;
  readonly scientificName: string;
}

const storageKey = 'warmstead-species-1';
let known: Promise<readonly SpeciesName[]> | null = null;

/** Names from the last visit, so that the round is readable without a connection. */
function lastNames(): readonly SpeciesName[] {
  try {
    const raw: unknown = JSON.parse(localStorage.getItem(storageKey) ?? '[]');
    return Array.isArray(raw) ? (raw as readonly SpeciesName[]) : [];
  } catch {
    return [];
  }
}

async function fetched(): Promise<readonly SpeciesName[]> {
  const answer = await ask<{ readonly species: readonly SpeciesName[] }>('/api/species');
  if (!answer.ok) {
    known = null;
    return lastNames();
  }
  const names = answer.value.species.map(({ id, commonName, scientificName }) => ({ id, commonName, scientificName }));
  names.sort((a, b) => a.commonName.localeCompare(b.commonName));
  localStorage.setItem(storageKey, JSON.stringify(names));
  return names;
}

export function useSpecies(): { readonly all: readonly SpeciesName[]; readonly nameOf: (id: string) => string } {
  const { factsSaid, measure } = useSheet();
  const [names, setAll] = useState(lastNames);
  useEffect(() => {
    known ??= fetched();
    void known.then(setAll);
  }, []);
  const all = useMemo(
    () => [...factsSaid(names)].sort((a, b) => a.commonName.localeCompare(b.commonName, measure.locale)),
    [names, factsSaid, measure],
  );
  return { all, nameOf: (id) => all.find((one) => one.id === id)?.commonName ?? id };
}
