// Everything a pack tells of, from the thread of its placement: the animal, the home and its proof, what was decided.
// Leaves out the figures, which a worker computes.

import type { Place } from '../../husbandry/law-rule.ts';
import { noStandard } from '../../husbandry/usual-standard.ts';
import { requirementIds } from '../../proving/release/requirement.ts';
import { sayRequirement } from '../../proving/release/words/say.ts';
import { languageCodes } from '../../shared/languages.ts';
import { good, type Result } from '../../shared/result.ts';
import type { DeskContext } from '../desk-context.ts';
import { homeOf } from '../home-of-enquiry.ts';
import type { PaperUnits } from '../paper-units.ts';
import { type PlacementThread, placementThread } from '../placement-thread.ts';
import { usedShopValues } from '../plan-enclosure.ts';
import type { PlanJob } from '../plan-job.ts';
import type { PackAnimal, PackOverride, PackSubject } from './pack-subject.ts';

export interface Gathered {
  readonly subject: PackSubject;
  readonly job: PlanJob;
  /** As the pack was written last; null for the first. */
  readonly printedLast: PaperUnits | null;
}

/** Faults: "PLACEMENT_UNKNOWN", "ENQUIRY_UNKNOWN", "ANIMAL_UNKNOWN", "PROOF_NO_HOME". */
export async function gatherPack(desk: DeskContext, placementId: string): Promise<Result<Gathered>> {
  const found = await placementThread(desk, placementId);
  if (!found.ok) return found;
  const thread = found.value;
  const home = homeOf(thread.enquiry);
  if (!home.ok) return home;
  // a home with faults goes on as it stands, so that the worker names them all
  const { job, used } = await usedShopValues(desk, {
    enclosure: thread.enclosure ?? home.value,
    ...standardOf(thread.enquiry.document),
  });
  return good({ job, subject: subjectOf(thread, used.shopValues), printedLast: printedLast(thread) });
}

function printedLast({ packPrint }: PlacementThread): PaperUnits | null {
  if (packPrint === null) return null;
  const { language, temperature, length, mass } = packPrint;
  return { language, temperature, length, mass };
}

/** The space standard that the enquiry was planned by; the branch's own choice goes when it names none. */
function standardOf({ answers }: PlacementThread['enquiry']['document']): Pick<PlanJob, 'standardId'> {
  const { standardId } = (answers ?? {}) as { readonly standardId?: unknown };
  if (standardId === null) return { standardId: noStandard };
  return typeof standardId === 'string' ? { standardId } : {};
}

function subjectOf(thread: PlacementThread, shopValues: PackSubject['shopValues']): PackSubject {
  const { around, proof, said, state } = thread;
  const { vet, 'home-place': homePlace } = said.statements;
  const ended = state === 'open' ? undefined : thread.events.findLast((event) => event.kind === state);
  const places: readonly Place[] = [around.place, ...(homePlace?.place ? [homePlace.place] : [])];
  return {
    printedOn: around.today,
    shopName: around.shopName,
    branchName: around.branchName,
    places: [...new Set(places)],
    southern: around.southern,
    animal: animalOf(thread),
    proof: proof && { on: proof.at.toISOString().slice(0, 10), answer: proof.answer, current: proof.current },
    state,
    ended: ended ? { on: ended.at.toISOString().slice(0, 10), by: ended.by } : null,
    overrides: overridesOf(thread),
    shopValues,
    vetName: vet?.answer === 'yes' ? vet.text : '',
    facts: around.facts,
    care: around.care,
  };
}

function animalOf({ animal, fitness }: PlacementThread): PackAnimal {
  const { row, species, stage, entry, events, massG, totalLengthCm, movedOn } = animal;
  return { registerId: row.id, species, stage, entry, events, massG, totalLengthCm, movedOn, fitness: fitness.answer };
}

/** In the order of the requirements. */
const overridesOf = ({ said }: PlacementThread): readonly PackOverride[] =>
  requirementIds.flatMap((id) => {
    const one = said.overrides[id];
    if (one === undefined) return [];
    const what = Object.fromEntries(languageCodes().map((language) => [language, sayRequirement(id, language).title]));
    return [{ what, why: one.reason, by: one.by, on: one.at.slice(0, 10) }];
  });
