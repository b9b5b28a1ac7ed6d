// The sale is refused, in one tap with its reason; or taken up again later; or an animal that went comes back.
import { usualQuarantineDays } from '../animal/quarantine.ts';
import type { Result } from '../shared/result.ts';
import { bad } from '../shared/result.ts';
import { actOnPlacement } from './act-on-placement.ts';
import type { DeskContext } from './desk-context.ts';
import { placementFaults } from './placement-faults.ts';
import type { PlacementThread } from './placement-thread.ts';
import { writeEntriesIn } from './write-entry.ts';

export const refusalReasons = ['home', 'animal', 'law', 'keeper', 'changed-mind', 'other'] as const;
export type RefusalReason = (typeof refusalReasons)[number];
export const returnReasons = ['keeper', 'home', 'animal', 'household', 'other'] as const;
export type ReturnReason = (typeof returnReasons)[number];

interface Sent {
  readonly text: string;
  readonly token: string;
}

/** Faults: "REFUSAL_REASON", "PLACEMENT_UNKNOWN", "PLACEMENT_STATE", "PLACEMENT_ROLE". */
export async function refuseSale(
  desk: DeskContext,
  placementId: string,
  { reason, text, token }: Sent & { readonly reason: RefusalReason },
): Promise<Result<PlacementThread>> {
  const words = text.trim();
  if (reason === 'other' && words === '') return bad([placementFaults.refusalReason()]);
  const body = { reason, text: words };
  return await actOnPlacement(desk, { placementId, token, kind: 'refused', from: 'open', body: () => body });
}

/** Faults: "PLACEMENT_UNKNOWN", "PLACEMENT_STATE", "PLACEMENT_ROLE". */
export const reopenPlacement = async (
  desk: DeskContext,
  placementId: string,
  { token }: Pick<Sent, 'token'>,
): Promise<Result<PlacementThread>> =>
  await actOnPlacement(desk, { placementId, token, kind: 'reopened', from: 'refused', body: () => ({}) });

/** The animal comes back: into the register, into an enclosure, and into quarantine, since it was in another household
 *  (our choice). Faults: "PLACEMENT_UNKNOWN", "PLACEMENT_STATE", "PLACEMENT_ROLE". */
export async function takeBack(
  desk: DeskContext,
  placementId: string,
  sent: Sent & { readonly reason: ReturnReason; readonly enclosure: string },
): Promise<Result<PlacementThread>> {
  const { reason, text, enclosure, token } = sent;
  return await actOnPlacement(desk, {
    placementId,
    token,
    kind: 'taken-back',
    from: 'released',
    body: () => ({ reason, text: text.trim(), enclosure }),
    also: async (tx, { animal, around }) => {
      const days = usualQuarantineDays(around.care, animal.species.family);
      const quarantine = {
        step: 'start',
        why: 'returned',
        where: enclosure,
        clearBy: 'time',
        days,
        tests: '',
      } as const;
      const movement = { toPlace: enclosure, toBranchId: desk.actor.branchId, why: 'returned' };
      await writeEntriesIn(tx, desk, animal, around, [
        { kind: 'sale', body: { outcome: 'returned', reference: placementId }, clientKey: `${token}:sale` },
        { kind: 'movement', body: movement, clientKey: `${token}:movement` },
        { kind: 'quarantine', body: quarantine, clientKey: `${token}:quarantine` },
      ]);
    },
  });
}
