// One animal is meant for one home: open a placement. Opened twice, it is the same one as long as it stands open.
import { erasureOf } from '../records/erasures.ts';
import { insertPlacement, openPlacementOf } from '../records/placements.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { placementFaults } from './placement-faults.ts';
import { lookingOnly } from './placement-roles.ts';
import { privacyFaults } from './privacy/privacy-faults.ts';

export interface NewPlacement {
  readonly enquiryId: string;
  readonly animalId: string;
}

/** Faults, all at once: "ENQUIRY_UNKNOWN", "ANIMAL_UNKNOWN", "PLACEMENT_ANIMAL_GONE", "ERASURE_DONE"; "PLACEMENT_ROLE". */
export async function openPlacement(
  desk: DeskContext,
  { enquiryId, animalId }: NewPlacement,
): Promise<Result<{ readonly id: string; readonly again: boolean }>> {
  const onlyLooks = lookingOnly(desk);
  if (onlyLooks.length > 0) return bad(onlyLooks);
  const around = await surroundings(desk);
  const [enquiry, animal] = [await enquiryFor(desk, enquiryId), await recordOf(desk, around, animalId)];
  const faults = [
    ...(enquiry.ok ? [] : enquiry.faults),
    ...(animal.ok ? [] : animal.faults),
    ...(animal.ok && animal.value.row.gone ? [placementFaults.animalGone(animalId)] : []),
  ];
  if (faults.length > 0) return bad(faults);
  const writer = { at: desk.clock.now(), by: desk.actor.name };
  return await desk.db.transaction().execute(async (tx) => {
    // The enquiry's row is the lock: two openings at once become one placement.
    await tx.selectFrom('enquiry').select('id').where('id', '=', enquiryId).forUpdate().executeTakeFirstOrThrow();
    if (await erasureOf(tx, enquiryId)) return bad([privacyFaults.done(enquiryId)]);
    const before = await openPlacementOf(tx, enquiryId, animalId);
    if (before !== undefined) return good({ id: before, again: true });
    const id = await insertPlacement(tx, { branchId: desk.actor.branchId, enquiryId, animalId }, writer);
    return good({ id, again: false });
  });
}
