// One proof from start to end: the home is checked, the animal's needs looked up, the readings judged. Works without
// records; leaves out keeping anything (prove-enquiry.ts).
import { join } from 'node:path';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { Facts } from '../husbandry/fact.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import type { ShopValue } from '../husbandry/shop-value.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { Priors } from '../physics/priors.ts';
import { enclosureFrom } from '../physics/validate-enclosure.ts';
import type { LogQuestion } from '../proving/files/understood.ts';
import type { Instrument } from '../proving/instrument.ts';
import { proveHome } from '../proving/prove.ts';
import type { ReadingLog } from '../proving/reading-log.ts';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import { defaultRule, type ProofRule, type RuleSetting } from '../proving/verdict/rule.ts';
import { dataFile } from '../records/data-files.ts';
import { loadFacts } from '../records/facts.ts';
import { programRoot } from '../records/root.ts';
import { bad, type Result } from '../shared/result.ts';

export interface ProofJob {
  /** What should be an enclosure file, animal and all. */
  readonly enclosure: unknown;
  readonly log: ReadingLog;
  readonly instruments: readonly Instrument[];
  readonly questions: readonly LogQuestion[];
  readonly rule?: ProofRule;
  readonly ruleSettings?: readonly RuleSetting[];
  readonly seed?: number;
  /** The branch's own values, laid over the facts before anything is judged. */
  readonly shopValues?: readonly ShopValue[];
}

/** Faults: those of the enclosure file, "PROOF_NO_ANIMAL", missing facts of the species, "PROOF_NO_READINGS". */
export function runProofJob(
  job: ProofJob,
  shipped: Facts = loadFacts(join(programRoot(), 'data')).facts,
): Result<ProofAnswer> {
  const { facts } = withShopValues(shipped, job.shopValues ?? []);
  const checked = enclosureFrom(job.enclosure, facts.materials);
  if (!checked.ok) return checked;
  const enclosure: Enclosure = checked.value;
  const animal = enclosure.animal;
  const species =
    animal === null
      ? undefined
      : Object.hasOwn(facts.species, animal.speciesId)
        ? facts.species[animal.speciesId]
        : undefined;
  if (animal === null || species === undefined) {
    const allowed = Object.keys(facts.species).sort().join(', ');
    return bad([
      {
        code: 'PROOF_NO_ANIMAL',
        field: 'animal',
        got: animal?.speciesId ?? 'none',
        allowed,
        say: 'A home is proven for an animal; this file names none that is known.',
        fix: 'Say in "animal" which animal will live there.',
      },
    ]);
  }
  const climate = climateNeeds(species, animal.stage);
  if (!climate.ok) return climate;
  return proveHome({
    enclosure,
    climate: climate.value,
    materials: facts.materials,
    priors: dataFile('priors.json') as unknown as Priors,
    log: job.log,
    instruments: job.instruments,
    rule: job.rule ?? defaultRule,
    ruleSettings: job.ruleSettings ?? [],
    questions: job.questions,
    seed: job.seed ?? 1,
  });
}
