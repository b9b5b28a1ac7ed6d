// Everything a pack tells of, from the records: the animal, the home's enquiry and its proof, what was decided.
// Leaves out the figures, which a worker computes.
import type { Place } from '../../husbandry/law-rule.ts';
import type { ProofAnswer } from '../../proving/verdict/proof-answer.ts';
import { newestProof } from '../../records/readings.ts';
import { good, type Result } from '../../shared/result.ts';
import { type AnimalRecord, type DeskSurroundings, recordOf, surroundings } from '../animal-record.ts';
import type { DeskContext } from '../desk-context.ts';
import { enquiryFor, homeOf } from '../home-of-enquiry.ts';
import { usedShopValues } from '../plan-enclosure.ts';
import type { PlanJob } from '../plan-job.ts';
import { isCurrent } from '../prove-enquiry.ts';
import { fitnessOf } from '../show-animal.ts';
import type { PackOverride, PackProof, PackSubject } from './pack-subject.ts';

/** What was decided about the placement, as far as a pack tells of it. */
export interface PackDecision {
  readonly state: PackSubject['state'];
  readonly ended: PackSubject['ended'];
  readonly overrides: readonly PackOverride[];
  readonly vetName: string;
  /** Place of the home where it is not that of the desk. */
  readonly homePlace: Place | null;
}

export const undecided: PackDecision = { state: 'open', ended: null, overrides: [], vetName: '', homePlace: null };

export interface Gathered {
  readonly subject: PackSubject;
  readonly job: PlanJob;
}

/** Faults: "ENQUIRY_UNKNOWN", "PROOF_NO_HOME", "ANIMAL_UNKNOWN". */
export async function gatherPack(
  desk: DeskContext,
  of: { readonly enquiryId: string; readonly animalId: string },
  decision: PackDecision = undecided,
): Promise<Result<Gathered>> {
  const enquiry = await enquiryFor(desk, of.enquiryId);
  if (!enquiry.ok) return enquiry;
  const home = homeOf(enquiry.value);
  if (!home.ok) return home;
  const around = await surroundings(desk);
  const animal = await recordOf(desk, around, of.animalId);
  if (!animal.ok) return animal;
  const enclosure = withAnimal(home.value, animal.value);
  const { job, used } = await usedShopValues(desk, { enclosure });
  const kept = await newestProof(desk.db, of.enquiryId);
  const proof: PackProof | null = kept
    ? {
        on: kept.at.toISOString().slice(0, 10),
        answer: kept.answer as unknown as ProofAnswer,
        current: await isCurrent(desk, enquiry.value, kept),
      }
    : null;
  const places = [around.place, ...(decision.homePlace === null ? [] : [decision.homePlace])];
  return good({
    job,
    subject: {
      printedOn: around.today,
      shopName: around.shopName,
      branchName: around.branchName,
      places: [...new Set(places)],
      southern: around.southern,
      animal: animalOf(animal.value, around),
      proof,
      state: decision.state,
      ended: decision.ended,
      overrides: decision.overrides,
      shopValues: used.shopValues,
      vetName: decision.vetName,
      facts: around.facts,
      care: around.care,
    },
  });
}

/** The home is planned for this very animal: its species, age, length and mass as far as they are on record. */
function withAnimal(home: Readonly<Record<string, unknown>>, { species, stage, massG, totalLengthCm }: AnimalRecord) {
  const drawn = (home.animal ?? null) as { readonly totalLengthM?: number; readonly stage?: string } | null;
  const totalLengthM = totalLengthCm === null ? drawn?.totalLengthM : totalLengthCm / 100;
  return { ...home, animal: { speciesId: species.id, stage: stage ?? drawn?.stage ?? 'adult', totalLengthM, massG } };
}

function animalOf(record: AnimalRecord, around: DeskSurroundings): PackSubject['animal'] {
  const { row, species, stage, entry, events, massG, totalLengthCm, movedOn } = record;
  const { answer } = fitnessOf(record, around);
  return { registerId: row.id, species, stage, entry, events, massG, totalLengthCm, movedOn, fitness: answer };
}
