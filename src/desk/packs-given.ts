// Packs as they were given to keepers: which there are, the very file of one, and what a pack made today would say otherwise.
import { packGiven, packsGivenOf } from '../records/packs-given.ts';
import { placementById } from '../records/placements.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { differencesBetween, type PartDifference } from './pack/said-lines.ts';
import { placementFaults } from './placement-faults.ts';
import type { Planner } from './planner.ts';
import { setPack } from './print-pack.ts';

/** Newest first. Faults: "PLACEMENT_UNKNOWN". */
export async function listPacks(desk: DeskContext, placementId: string) {
  const found = await ownPlacement(desk, placementId);
  return found.ok ? good(await packsGivenOf(desk.db, placementId)) : found;
}

/** The very file that was given. Faults: "PLACEMENT_UNKNOWN", "PACK_UNKNOWN", "PACK_ERASED". */
export async function readPack(desk: DeskContext, placementId: string, packId: string) {
  const found = await ownPlacement(desk, placementId);
  if (!found.ok) return found;
  const pack = await packGiven(desk.db, placementId, packId);
  if (pack === undefined) return bad([packUnknown(packId)]);
  return pack.bytes.length === 0 ? bad([packErased(packId)]) : good(pack);
}

/** In the language and units of the one that was given; nothing is kept of it.
 *  Faults: those of reading and of printing a pack. */
export async function packDifferences(
  desk: DeskContext,
  planner: Planner,
  placementId: string,
  packId: string,
  signal?: AbortSignal,
): Promise<Result<readonly PartDifference[]>> {
  const given = await readPack(desk, placementId, packId);
  if (!given.ok) return given;
  const { language, temperature, length, mass, said } = given.value;
  const today = await setPack(desk, planner, placementId, { language, temperature, length, mass }, signal);
  return today.ok ? good(differencesBetween(said, today.value.said)) : today;
}

async function ownPlacement(desk: DeskContext, id: string) {
  const placement = await placementById(desk.db, id);
  const mine = placement !== undefined && placement.branchId === desk.actor.branchId;
  return mine ? good(placement) : bad([placementFaults.unknown(id)]);
}

const packUnknown = (got: string): Fault => ({
  code: 'PACK_UNKNOWN',
  field: 'packId',
  got,
  allowed: 'a pack that was made of this placement',
  say: 'There is no such pack here.',
  fix: 'Choose one of the list.',
});

const packErased = (got: string): Fault => ({
  code: 'PACK_ERASED',
  field: 'packId',
  got,
  allowed: 'a pack whose buyer was not erased',
  say: 'The words of this buyer were erased, and this paper with them.',
  fix: 'Make a new pack from what is still kept.',
});
