// One plan from start to end: the file is checked, the animal's needs looked up, the home simulated and judged.
// Runs in a worker; leaves out records and queueing (plan-enclosure.ts, planner.ts).
import { join } from 'node:path';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { Facts } from '../husbandry/fact.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { enclosureFrom } from '../physics/validate-enclosure.ts';
import { planEnclosure } from '../planning/plan.ts';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import { loadFacts } from '../records/facts.ts';
import { programRoot } from '../records/root.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';

export interface PlanJob {
  /** What should be an enclosure file. */
  readonly enclosure: unknown;
  /** Size of the ensemble; more is slower and steadier. */
  readonly members?: number;
  readonly seed?: number;
}

/** The usual ensemble of a plan that counts, and its seed (our choice; the same input gives the same answer). */
export const usualPlan = { members: 200, seed: 1 } as const;

/** Faults: every one of the enclosure file, "PLAN_NO_ANIMAL", "PLAN_SPECIES", missing facts of the species. */
export function runPlanJob(job: PlanJob, facts = loadedFacts()): Result<PlanAnswer> {
  const checked = enclosureFrom(job.enclosure, facts.materials);
  if (!checked.ok) return checked;
  const enclosure = checked.value;
  const animal = enclosure.animal;
  if (animal === null) return bad([noAnimal]);
  const species = facts.species[animal.speciesId];
  if (species === undefined) return bad([unknownSpecies(enclosure, facts)]);
  const climate = climateNeeds(species, animal.stage);
  if (!climate.ok) return climate;
  const members = job.members ?? usualPlan.members;
  const seed = job.seed ?? usualPlan.seed;
  return good(planEnclosure({ enclosure, climate: climate.value, species, materials: facts.materials, members, seed }));
}

let loaded: Facts | undefined;

function loadedFacts(): Facts {
  loaded ??= loadFacts(join(programRoot(), 'data')).facts;
  return loaded;
}

const noAnimal: Fault = {
  code: 'PLAN_NO_ANIMAL',
  field: 'animal',
  got: 'null',
  allowed: 'the species, life stage and length of the animal',
  say: 'A home can only be judged for an animal.',
  fix: 'Say in "animal" which animal will live there.',
};

function unknownSpecies({ animal }: Enclosure, facts: Facts): Fault {
  return {
    code: 'PLAN_SPECIES',
    field: 'animal.speciesId',
    got: animal?.speciesId ?? '',
    allowed: Object.keys(facts.species).sort().join(', '),
    say: 'The needs of this species are not in the data.',
    fix: 'Choose one of the species named, or add its facts with their sources to data/species.',
  };
}
