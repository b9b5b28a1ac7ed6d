// Takes its time: first the two days for the pictures, then the ensemble for the verdicts. Ended when something newer comes.
/// <reference lib="webworker" />
import priors from '../../../data/priors.json';
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import type { Facts } from '../../husbandry/fact.ts';
import { judgeEnclosure } from '../../husbandry/judge-enclosure.ts';
import { shopFactsFor } from '../../husbandry/used-shop-values.ts';
import { buildModel, simulateDay } from '../../physics/simulate.ts';
import type { Priors } from '../../planning/ensemble.ts';
import { planEnclosure } from '../../planning/plan.ts';
import type { Fault } from '../../shared/fault.ts';
import { shipped } from './facts.ts';
import type { PlanReply, PlanRequest } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (reply: PlanReply) => self.postMessage(reply);

/** The facts that a plan cannot do without, or what is missing. */
function factsFor({ enclosure }: PlanRequest, facts: Facts) {
  const { animal } = enclosure;
  const species = animal ? facts.species[animal.speciesId] : undefined;
  if (!animal || !species) {
    const fault: Fault = {
      code: 'PLAN_SPECIES',
      field: 'animal.speciesId',
      got: animal?.speciesId ?? 'no animal',
      allowed: Object.keys(facts.species).join(', '),
      say: 'The facts hold no such species.',
      fix: 'Choose one from the list.',
    };
    return { ok: false, faults: [fault] } as const;
  }
  const climate = climateNeeds(species, animal.stage);
  return climate.ok ? ({ ok: true, species, climate: climate.value } as const) : climate;
}

self.onmessage = ({ data }: MessageEvent<PlanRequest>) => {
  try {
    const startedMs = performance.now();
    const { enclosure, standardId, shopValues, members, seed } = data;
    const { animal } = enclosure;
    const own = shopFactsFor(shipped, shopValues, { use: 'plan', animal, enclosure, standardId });
    const { facts } = own;
    const model = buildModel(enclosure, facts.materials);
    const winter = simulateDay(model, enclosure.room.winter);
    const summer = simulateDay(model, enclosure.room.summer);
    tell({ kind: 'days', winter, summer, tookMs: performance.now() - startedMs });
    const found = factsFor(data, facts);
    if (!found.ok) {
      tell({ kind: 'refused', faults: found.faults });
      return;
    }
    const { species, climate } = found;
    const plan = planEnclosure({
      enclosure,
      climate,
      materials: facts.materials,
      priors: priors as Priors,
      otherNeeds: judgeEnclosure(enclosure, species, facts.standards[own.standardId] ?? null, facts),
      members,
      seed,
    });
    tell({ kind: 'plan', plan, used: own.used, tookMs: performance.now() - startedMs });
  } catch (error) {
    tell({ kind: 'failed', say: error instanceof Error ? error.message : String(error) });
  }
};
