// The figures of a pack, computed in a worker: the plan of this home, and the four faults that the keeper is told about
// rehearsed on it. Leaves out words, records and drawings.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import { withShopValues } from '../../husbandry/overlay.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { enclosureFrom } from '../../physics/validate-enclosure.ts';
import type { FaultRehearsal } from '../../planning/faults/fault-answer.ts';
import { rehearseFaults, usualVersions } from '../../planning/faults/rehearse.ts';
import type { PlanAnswer } from '../../planning/plan-answer.ts';
import { good, type Result } from '../../shared/result.ts';
import { loadedFacts, type PlanJob, priorsOfProgram, runPlanJob, usualPlan } from '../plan-job.ts';

export interface PackJob {
  readonly kind: 'pack';
  readonly plan: PlanJob;
}

export interface PackFigures {
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly plan: PlanAnswer;
  readonly rehearsal: FaultRehearsal;
}

/** Power cut, heat wave, cold snap, thermostat stuck on (data/faults.json). */
export const packFaults = { powerCut: 'H20', heatWave: 'H19', coldSnap: 'H16', stuckOn: 'H2' } as const;

export const isPackJob = (job: PlanJob | PackJob): job is PackJob => 'kind' in job && job.kind === 'pack';

/** Faults: those of runPlanJob. */
export function runPackJob({ plan: job }: PackJob, shipped = loadedFacts()): Result<PackFigures> {
  const planned = runPlanJob(job, shipped);
  if (!planned.ok) return planned;
  const { facts } = withShopValues(shipped, job.shopValues ?? []);
  const checked = enclosureFrom(job.enclosure, facts.materials);
  if (!checked.ok) return checked;
  const enclosure = checked.value;
  const { speciesId, stage } = enclosure.animal!;
  const climate = climateNeeds(facts.species[speciesId]!, stage);
  if (!climate.ok) return climate;
  const rehearsing = rehearseFaults({
    enclosure,
    climate: climate.value,
    materials: facts.materials,
    priors: priorsOfProgram(),
    cases: facts.faultCases,
    versions: usualVersions,
    seed: job.seed ?? usualPlan.seed,
    only: Object.values(packFaults),
  });
  let step = rehearsing.next();
  while (!step.done) step = rehearsing.next();
  return good({ enclosure, climate: climate.value, plan: planned.value, rehearsal: step.value });
}
