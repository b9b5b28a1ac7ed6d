// The ready enclosures and facts that the checks of proofs run on.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Enclosure } from '../../src/physics/enclosure.ts';
import type { MaterialTable } from '../../src/physics/material.ts';
import type { Priors } from '../../src/physics/priors.ts';
import { enclosureFrom } from '../../src/physics/validate-enclosure.ts';
import { loadFacts } from '../../src/records/facts.ts';

const data = new URL('../../data/', import.meta.url);
const json = (path: string): unknown => JSON.parse(readFileSync(new URL(path, data), 'utf8'));

export const materials: MaterialTable = loadFacts(fileURLToPath(data)).facts.materials;
export const priors = json('priors.json') as Priors;

/** Homes whose one heater the other model knows: the mesh lid with two heaters is left out. */
export const otherModelKnows = ['wood-1200', 'large-wood-1800', 'pvc-1200', 'tall-wood', 'tub-mat-600'] as const;

export function exampleHome(name: string): Enclosure {
  const found = enclosureFrom(json(`examples/${name}.json`), materials);
  if (!found.ok) throw new Error(`example ${name} is not sound`);
  return found.value;
}
