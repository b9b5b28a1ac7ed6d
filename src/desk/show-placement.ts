// One placement with its whole thread, and the list of all of this branch: where each stands and what is missing next.
import { happenedInBranch, placementState, placementsOfBranch } from '../records/placements.ts';
import type { Result } from '../shared/result.ts';
import { recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryTitle, listEnquiries } from './find-enquiries.ts';
import { type PlacementThread, placementThread } from './placement-thread.ts';

/** Faults: "PLACEMENT_UNKNOWN". */
export const showPlacement = async (desk: DeskContext, id: string): Promise<Result<PlacementThread>> =>
  await placementThread(desk, id);

/** Newest first. */
export async function listPlacements(desk: DeskContext) {
  const around = await surroundings(desk);
  const placements = await placementsOfBranch(desk.db, desk.actor.branchId);
  const [animals, enquiries] = [await recordsOf(desk, around, {}), await listEnquiries(desk)];
  const animalOf = new Map(animals.map((one) => [one.row.id, one]));
  const enquiryOf = new Map(enquiries.map((one) => [one.id, one]));
  const happened = await happenedInBranch(desk.db, desk.actor.branchId);
  return placements.map((placement) => {
    const events = happened.get(placement.id) ?? [];
    const animal = animalOf.get(placement.animalId);
    const enquiry = enquiryOf.get(placement.enquiryId);
    return {
      ...placement,
      at: placement.at.toISOString(),
      state: placementState(events),
      changedAt: (events.at(-1)?.at ?? placement.at).toISOString(),
      title: enquiry ? enquiryTitle(enquiry) : '',
      callName: animal?.entry.callName ?? '',
      speciesId: animal?.species.id ?? '',
    };
  });
}
