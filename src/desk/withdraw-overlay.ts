// The shop goes back to the shipped value. The withdrawn one stays readable, with who, when and why.
import { overlayFaults } from '../husbandry/overlay-faults.ts';
import { withdrawStanding } from '../records/overlays.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';

/** Faults: "OVERLAY_UNKNOWN", "OVERLAY_WHY". */
export async function withdrawOverlay(
  desk: DeskContext,
  id: string,
  why: string,
): Promise<Result<{ readonly withdrawn: string }>> {
  const reason = why.trim();
  if (reason === '') return bad([overlayFaults.why()]);
  const writer = { branchId: desk.actor.branchId, at: desk.clock.now(), by: desk.actor.name };
  const gone = await withdrawStanding(desk.db, id, reason, writer);
  return gone ? good({ withdrawn: id }) : bad([overlayFaults.unknown(id)]);
}
