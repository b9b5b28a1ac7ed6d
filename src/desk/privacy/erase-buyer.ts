// A buyer asks to be forgotten, or the time of keeping is over: the own words go, the animal's record and the numbers of
// the home stay. What stood in earlier backups and on paper is not reached from here.
import { enquiryById } from '../../records/enquiries.ts';
import { type Erasure, eraseOwnWords, erasureOf, rowsOfBuyer, unplacedSince } from '../../records/erasures.ts';
import { ownWordsIn } from '../../records/own-words.ts';
import { placementById, placementEvents, placementState } from '../../records/placements.ts';
import { enquiryKeptDays } from '../../records/privacy-facts.ts';
import type { Db } from '../../records/schema.ts';
import { erasedNote } from '../../shared/erased-note.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import type { DeskContext } from '../desk-context.ts';
import { enquiryUnknown } from '../enquiry-faults.ts';
import { placementFaults } from '../placement-faults.ts';
import { privacyFaults, shortestErasureReason } from './privacy-faults.ts';

/** More than is erased with one press (our choice). */
const mostAtOnce = 200;
const dayMs = 86_400_000;

/** Faults: "PLACEMENT_ROLE", "PLACEMENT_UNKNOWN". */
async function enquiryOfPlacement(desk: DeskContext, placementId: string): Promise<Result<string>> {
  const refused = roleFaults(desk);
  if (refused.length > 0) return bad(refused);
  const placement = await placementById(desk.db, placementId);
  if (placement === undefined || placement.branchId !== desk.actor.branchId)
    return bad([placementFaults.unknown(placementId)]);
  return good(placement.enquiryId);
}

const roleFaults = ({ actor }: DeskContext): readonly Fault[] =>
  actor.role === 'manager' || actor.role === 'owner'
    ? []
    : [placementFaults.role(actor.role, 'manager or owner', 'Giving out or erasing what a buyer said')];

/** All that is kept of a buyer, and of it the own words apart. Faults: "PLACEMENT_ROLE", "PLACEMENT_UNKNOWN". */
export async function buyerData(desk: DeskContext, placementId: string) {
  const enquiryId = await enquiryOfPlacement(desk, placementId);
  if (!enquiryId.ok) return enquiryId;
  const rows = await rowsOfBuyer(desk.db, enquiryId.value);
  const erasure = (await erasureOf(desk.db, enquiryId.value)) ?? null;
  const ownWords = Object.entries(rows).flatMap(([part, kept]) =>
    kept.flatMap((row) => {
      const at = String((row as { at?: Date; on?: string }).on ?? (row as { at?: Date }).at?.toISOString());
      return ownWordsIn(row).map((one) => ({ part, at, ...one }));
    }),
  );
  return good({ madeAt: desk.clock.now().toISOString(), enquiryId: enquiryId.value, erasure, ownWords, rows });
}

/** Faults, all at once: "PLACEMENT_ROLE", "PLACEMENT_UNKNOWN", "ERASURE_REASON", "ERASURE_OPEN", "ERASURE_DONE". */
export async function eraseBuyer(desk: DeskContext, placementId: string, reason: string): Promise<Result<Erasure>> {
  const enquiryId = await enquiryOfPlacement(desk, placementId);
  if (!enquiryId.ok) return enquiryId;
  return await desk.db.transaction().execute(async (tx) => await eraseIn(tx, desk, enquiryId.value, reason));
}

async function eraseIn(tx: Db, desk: DeskContext, enquiryId: string, reason: string): Promise<Result<Erasure>> {
  // Placements are opened under this lock, so none comes in between.
  await tx.selectFrom('enquiry').select('id').where('id', '=', enquiryId).forUpdate().executeTakeFirstOrThrow();
  if (await erasureOf(tx, enquiryId)) return bad([privacyFaults.done(enquiryId)]);
  const words = reason.trim();
  const placements = await tx
    .selectFrom('placement')
    .select('id')
    .where('enquiry_id', '=', enquiryId)
    .orderBy('id')
    .forUpdate()
    .execute();
  const faults: Fault[] = words.length < shortestErasureReason ? [privacyFaults.reason(words.length)] : [];
  for (const { id } of placements)
    if (placementState(await placementEvents(tx, id)) === 'open') faults.push(privacyFaults.open(id));
  if (faults.length > 0) return bad(faults);
  const at = desk.clock.now();
  const { name: by, branchId } = desk.actor;
  const note = erasedNote(at.toISOString().slice(0, 10), by, words);
  return good(await eraseOwnWords(tx, enquiryId, { branchId, reason: words, note, at, by }));
}

/** Enquiries without a placement whose time of keeping is over. Faults: "PLACEMENT_ROLE". */
export async function dueErasures(desk: DeskContext) {
  const refused = roleFaults(desk);
  if (refused.length > 0) return bad(refused);
  const keptDays = enquiryKeptDays();
  const due = await dueNow(desk, desk.db);
  return good({ keptDays, due: due.map((one) => ({ ...one, updatedAt: one.updatedAt.toISOString() })) });
}

const dueNow = async (desk: DeskContext, db: Db) =>
  await unplacedSince(
    db,
    desk.actor.branchId,
    new Date(desk.clock.now().getTime() - enquiryKeptDays().value * dayMs),
    mostAtOnce,
  );

/** All of these or none. Faults: "PLACEMENT_ROLE", "ENQUIRY_UNKNOWN", "ERASURE_NOT_DUE". */
export async function eraseDue(
  desk: DeskContext,
  ids: readonly string[],
): Promise<Result<{ readonly erased: number }>> {
  const refused = roleFaults(desk);
  if (refused.length > 0) return bad(refused);
  for (const id of ids)
    if ((await enquiryById(desk.db, desk.actor.branchId, id)) === undefined) return bad([enquiryUnknown(id)]);
  return await desk.db.transaction().execute(async (tx) => {
    const sorted = [...new Set(ids)].sort();
    if (sorted.length === 0) return good({ erased: 0 });
    await tx.selectFrom('enquiry').select('id').where('id', 'in', sorted).orderBy('id').forUpdate().execute();
    const due = new Set((await dueNow(desk, tx)).map((one) => one.id));
    const faults = sorted.filter((id) => !due.has(id)).map(privacyFaults.notDue);
    if (faults.length > 0) return bad(faults);
    for (const id of sorted) {
      const done = await eraseIn(tx, desk, id, `kept for ${enquiryKeptDays().value} days and no animal was placed`);
      if (!done.ok) return done;
    }
    return good({ erased: sorted.length });
  });
}
