// The one way in which anything happens to a placement: held, looked at anew, judged, written, together with whatever
// belongs to it. What a device sends again after a power cut or a lost answer changes nothing.

import { erasureOf } from '../records/erasures.ts';
import type { PlacementEventKind } from '../records/placement-schema.ts';
import {
  addPlacementEvent,
  holdPlacement,
  type PlacementState,
  placementById,
  wasSent,
} from '../records/placements.ts';
import type { Db } from '../records/schema.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { placementFaults } from './placement-faults.ts';
import { lookingOnly } from './placement-roles.ts';
import { type PlacementThread, placementThread } from './placement-thread.ts';
import { privacyFaults } from './privacy/privacy-faults.ts';

export interface PlacementAct {
  readonly placementId: string;
  /** Made by the device, the same whenever it sends this again. */
  readonly token: string;
  readonly kind: PlacementEventKind;
  /** Where the placement must stand. */
  readonly from: PlacementState;
  readonly faults?: (thread: PlacementThread) => readonly Fault[];
  readonly body: (thread: PlacementThread) => object;
  /** Written in the same transaction. */
  readonly also?: (tx: Db, thread: PlacementThread) => Promise<void>;
}

/** Faults: "PLACEMENT_UNKNOWN", "PLACEMENT_ROLE", "PLACEMENT_STATE", "ERASURE_DONE", those of the act. @returns the thread afterwards */
export async function actOnPlacement(desk: DeskContext, act: PlacementAct): Promise<Result<PlacementThread>> {
  const onlyLooks = lookingOnly(desk);
  if (onlyLooks.length > 0) return bad(onlyLooks);
  const placement = await placementById(desk.db, act.placementId);
  if (placement === undefined || placement.branchId !== desk.actor.branchId)
    return bad([placementFaults.unknown(act.placementId)]);
  return await desk.db.transaction().execute(async (tx) => {
    const inside: DeskContext = { ...desk, db: tx };
    await holdPlacement(tx, placement);
    const thread = await placementThread(inside, placement.id);
    if (!thread.ok || (await wasSent(tx, placement.id, act.token))) return thread;
    // An animal may always come back; nothing else is written about a buyer who was erased.
    if (act.kind !== 'taken-back' && (await erasureOf(tx, placement.enquiryId)))
      return bad([privacyFaults.done(placement.enquiryId)]);
    if (thread.value.state !== act.from) return bad([placementFaults.state(thread.value.state, act.from)]);
    const faults = act.faults?.(thread.value) ?? [];
    if (faults.length > 0) return bad(faults);
    const event = { kind: act.kind, body: act.body(thread.value), token: act.token };
    const writer = { at: desk.clock.now(), by: desk.actor.name };
    const added = await addPlacementEvent(tx, placement.id, event, writer);
    if (!added.ok) return bad([placementFaults.state(added.state, act.from)]);
    await act.also?.(tx, thread.value);
    const after = await placementThread(inside, placement.id);
    return after.ok ? good(after.value) : after;
  });
}
