// One plan from start to end: the file is checked, the animal's needs looked up, the home simulated and judged.
// Runs in a worker; leaves out records and queueing (plan-enclosure.ts, planner.ts).
import { join } from 'node:path';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { Facts } from '../husbandry/fact.ts';
import { judgeEnclosure } from '../husbandry/judge-enclosure.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import type { ShopValue } from '../husbandry/shop-value.ts';
import { noStandard, usualHomeStandardId } from '../husbandry/usual-standard.ts';
import { enclosureFrom } from '../physics/validate-enclosure.ts';
import type { Priors } from '../planning/ensemble.ts';
import { planEnclosure, settledMembers } from '../planning/plan.ts';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import { dataFile } from '../records/data-files.ts';
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
  /** The space standard that the shop goes by; "none" for none, the usual home minimum unless named. */
  readonly standardId?: string;
  /** The branch's own values, laid over the facts before anything is judged. */
  readonly shopValues?: readonly ShopValue[];
}

/** The usual ensemble of a plan that counts, and its seed (our choice; the same input gives the same answer). */
export const usualPlan = { members: settledMembers, seed: 1 } as const;

/** Faults: every one of the enclosure file, "PLAN_NO_ANIMAL", "PLAN_SPECIES", "PLAN_STANDARD", missing facts of the species. */
export function runPlanJob(job: PlanJob, shipped = loadedFacts()): Result<PlanAnswer> {
  const { facts } = withShopValues(shipped, job.shopValues ?? []);
  const checked = enclosureFrom(job.enclosure, facts.materials);
  if (!checked.ok) return checked;
  const enclosure = checked.value;
  const animal = enclosure.animal;
  if (animal === null) return bad([noAnimal]);
  const species = rowOf(facts.species, animal.speciesId);
  if (species === undefined)
    return bad([unknownRow('PLAN_SPECIES', 'animal.speciesId', animal.speciesId, facts.species)]);
  const wanted = job.standardId ?? usualHomeStandardId;
  const standard = wanted === noStandard ? null : rowOf(facts.standards, wanted);
  if (standard === undefined) return bad([unknownRow('PLAN_STANDARD', 'standardId', wanted, facts.standards)]);
  const climate = climateNeeds(species, animal.stage);
  if (!climate.ok) return climate;
  return good(
    planEnclosure({
      enclosure,
      climate: climate.value,
      materials: facts.materials,
      priors: priorsOfProgram(),
      otherNeeds: judgeEnclosure(enclosure, species, standard, facts),
      members: job.members ?? usualPlan.members,
      seed: job.seed ?? usualPlan.seed,
    }),
  );
}

export const rowOf = <Row>(table: Readonly<Record<string, Row>>, id: string): Row | undefined =>
  Object.hasOwn(table, id) ? table[id] : undefined;

let loaded: Facts | undefined;

export function loadedFacts(): Facts {
  loaded ??= loadFacts(join(programRoot(), 'data')).facts;
  return loaded;
}

let priors: Priors | undefined;

export function priorsOfProgram(): Priors {
  priors ??= dataFile('priors.json') as unknown as Priors;
  return priors;
}

const noAnimal: Fault = {
  code: 'PLAN_NO_ANIMAL',
  field: 'animal',
  got: 'null',
  allowed: 'the species, life stage and length of the animal',
  say: 'A home can only be judged for an animal.',
  fix: 'Say in "animal" which animal will live there.',
};

function unknownRow(code: 'PLAN_SPECIES' | 'PLAN_STANDARD', field: string, got: string, table: object): Fault {
  const what = code === 'PLAN_SPECIES' ? 'species' : 'space standard';
  return {
    code,
    field,
    got,
    allowed: Object.keys(table).sort().join(', '),
    say: `This ${what} is not in the data.`,
    fix: 'Choose one of those named, or add its facts with their sources to data/.',
  };
}
