// Everything that belongs to one placement, read together: home, plan, proof, animal, law, what was said, requirements.
import { lastOf } from '../animal/event.ts';
import { massSeries } from '../animal/mass-series.ts';
import { treatmentState } from '../animal/quarantine.ts';
import { wordOf } from '../husbandry/species-facts.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { enclosureFrom } from '../physics/validate-enclosure.ts';
import { ageAsked, type LawInput, lawOfPlaces, type PlaceLaw } from '../proving/release/law-requirements.ts';
import { type ReleaseAnswer, releaseAnswer } from '../proving/release/requirements.ts';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import type { EnquiryRow } from '../records/enquiries.ts';
import { type Erasure, erasureOf } from '../records/erasures.ts';
import { lastPackPrint, type PackPrint } from '../records/pack-prints.ts';
import {
  type Placement,
  type PlacementEvent,
  type PlacementState,
  placementById,
  placementEvents,
  placementState,
} from '../records/placements.ts';
import { type PlanResultRow, planResultsOf } from '../records/plan-results.ts';
import { newestProof, type ProofResultRow } from '../records/readings.ts';
import { allRequirements } from '../records/release-facts.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { type AnimalRecord, type DeskSurroundings, recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { placementFaults } from './placement-faults.ts';
import { type StandingSaid, standingSaid } from './placement-said.ts';
import { isCurrent } from './prove-enquiry.ts';
import { releasePolicy } from './release-policy.ts';
import { shopValues } from './shop-values.ts';
import { fitnessOf, registerOf } from './show-animal.ts';

export interface PlacementThread {
  readonly placement: Placement;
  readonly state: PlacementState;
  readonly events: readonly PlacementEvent[];
  readonly said: StandingSaid;
  readonly around: DeskSurroundings;
  readonly enquiry: EnquiryRow;
  /** When the own words of the buyer were taken out, by whom and why; null when they were not. */
  readonly erasure: Erasure | null;
  /** The home with this very animal in it; null when none is drawn or it has faults. */
  readonly enclosure: Enclosure | null;
  readonly plan: PlanResultRow | null;
  readonly proof: (Omit<ProofResultRow, 'answer'> & { readonly answer: ProofAnswer; readonly current: boolean }) | null;
  readonly animal: AnimalRecord;
  readonly fitness: ReturnType<typeof fitnessOf>;
  readonly register: ReturnType<typeof registerOf>;
  /** Law of the desk's place, and of the home's where that is another. */
  readonly law: readonly PlaceLaw[];
  /** Age that the buyer is asked against. */
  readonly ageYears: number;
  readonly release: ReleaseAnswer;
  /** How its pack was written last; null when it was not yet. */
  readonly packPrint: PackPrint | null;
}

/** Where no rule of the place was read a shop asks for this age all the same (our choice). */
const usualAgeYears = 16;

/** Faults: "PLACEMENT_UNKNOWN", "ENQUIRY_UNKNOWN", "ANIMAL_UNKNOWN". */
export async function placementThread(desk: DeskContext, id: string): Promise<Result<PlacementThread>> {
  const placement = await placementById(desk.db, id);
  if (placement === undefined || placement.branchId !== desk.actor.branchId) return bad([placementFaults.unknown(id)]);
  const around = await surroundings(desk);
  const enquiry = await enquiryFor(desk, placement.enquiryId);
  if (!enquiry.ok) return enquiry;
  const animal = await recordOf(desk, around, placement.animalId);
  if (!animal.ok) return animal;
  const events = await placementEvents(desk.db, id);
  const plans = await planResultsOf(desk.db, placement.enquiryId);
  const row = await newestProof(desk.db, placement.enquiryId);
  const current = await isCurrent(desk, enquiry.value, row);
  const proof = row ? { ...row, answer: row.answer as unknown as ProofAnswer, current } : null;
  const read = {
    placement,
    events,
    around,
    enquiry: enquiry.value,
    erasure: (await erasureOf(desk.db, placement.enquiryId)) ?? null,
    plan: plans.find((plan) => plan.aside === null) ?? null,
    proof,
    animal: animal.value,
    packPrint: (await lastPackPrint(desk.db, id)) ?? null,
  };
  return good(judged(read, releasePolicy(await shopValues(desk))));
}

type Read = Pick<
  PlacementThread,
  'placement' | 'events' | 'around' | 'enquiry' | 'erasure' | 'plan' | 'proof' | 'animal' | 'packPrint'
>;

function judged(read: Read, policy: ReturnType<typeof releasePolicy>): PlacementThread {
  const { events, around, enquiry, proof, animal } = read;
  const { facts } = around;
  const said = standingSaid(events);
  const enclosure = homeWithAnimal(enquiry, animal, around);
  const law: LawInput = {
    law: facts.law,
    speciesId: animal.species.id,
    annex: wordOf(animal.species, 'adult', 'euAnnex'),
    underTreatment: treatmentState(animal.events, around.today).running.length > 0,
    papersThere: papersThere(animal.entry.paperNumber),
    deskPlace: around.place,
    usualAgeYears,
    today: around.today,
    said: said.statements as LawInput['said'],
  };
  const fitness = fitnessOf(animal, around);
  const register = registerOf(animal, around);
  const looked = lastOf(animal.events, 'examination');
  const answers = (enquiry.document.answers ?? {}) as { speciesId?: unknown; cautionsExplained?: unknown };
  const release = releaseAnswer({
    rows: allRequirements(),
    home: {
      enclosure,
      plannedSpeciesId: typeof answers.speciesId === 'string' ? answers.speciesId : null,
      species: animal.species,
      facts,
      enquiry: { on: enquiry.updatedAt.toISOString(), by: enquiry.createdBy },
      proof: proof && {
        verdict: proof.answer.verdict,
        current: proof.current,
        on: proof.at.toISOString(),
        by: proof.by,
      },
    },
    animal: { fitness, register, lookedOver: looked && { on: looked.on, by: looked.by } },
    law,
    householdExplained: answers.cautionsExplained === true,
    ...said,
    policy,
  });
  return {
    ...read,
    state: placementState(events),
    said,
    enclosure,
    fitness,
    register,
    law: lawOfPlaces(law),
    ageYears: ageAsked(law),
    release,
  };
}

/** Asked and not known is not the same as not there: it stays open. */
function papersThere(number: string | undefined): boolean | null {
  const text = (number ?? '').trim();
  return text === '' || text === 'unknown' ? null : true;
}

function homeWithAnimal(enquiry: EnquiryRow, animal: AnimalRecord, around: DeskSurroundings): Enclosure | null {
  const { enclosure, answers } = enquiry.document as {
    enclosure?: { animal?: { totalLengthM?: unknown; stage?: unknown } | null } | null;
    answers?: { totalLengthM?: unknown; stage?: unknown };
  };
  if (typeof enclosure !== 'object' || enclosure === null) return null;
  const planned = { ...enclosure.animal, ...answers };
  const inside = {
    speciesId: animal.species.id,
    stage: animal.stage ?? planned.stage ?? 'adult',
    totalLengthM: animal.totalLengthCm === null ? planned.totalLengthM : animal.totalLengthCm / 100,
    massG: massSeries(animal.events).at(-1)?.massG ?? null,
  };
  const checked = enclosureFrom({ ...enclosure, animal: inside }, around.facts.materials);
  return checked.ok ? checked.value : null;
}
