// The rows of placements: opened once, everything after that added. Only one end may stand at a time: released or refused.
import { randomUUID } from 'node:crypto';
import type { PlacementEventKind } from './placement-schema.ts';
import type { Db } from './schema.ts';

export interface PlacementWriter {
  readonly at: Date;
  readonly by: string;
}

export interface Placement extends PlacementWriter {
  readonly id: string;
  readonly branchId: string;
  readonly enquiryId: string;
  readonly animalId: string;
}

export interface PlacementEvent extends PlacementWriter {
  readonly id: string;
  readonly kind: PlacementEventKind;
  readonly body: Readonly<Record<string, unknown>>;
}

/** Where a placement stands after all that happened. */
export type PlacementState = 'open' | 'released' | 'refused';

const stateAfter: Readonly<Partial<Record<PlacementEventKind, PlacementState>>> = {
  released: 'released',
  refused: 'refused',
  reopened: 'open',
  'taken-back': 'open',
};
const allowedFrom: Readonly<Partial<Record<PlacementEventKind, PlacementState>>> = {
  released: 'open',
  refused: 'open',
  reopened: 'refused',
  'taken-back': 'released',
};

export const placementState = (events: readonly Pick<PlacementEvent, 'kind'>[]): PlacementState =>
  events.reduce<PlacementState>((state, event) => stateAfter[event.kind] ?? state, 'open');

export async function insertPlacement(
  db: Db,
  what: Pick<Placement, 'branchId' | 'enquiryId' | 'animalId'>,
  writer: PlacementWriter,
): Promise<string> {
  const id = randomUUID();
  const { branchId, enquiryId, animalId } = what;
  await db
    .insertInto('placement')
    .values({ id, branch_id: branchId, enquiry_id: enquiryId, animal_id: animalId, at: writer.at, by: writer.by })
    .execute();
  return id;
}

const rows = (db: Db) =>
  db
    .selectFrom('placement')
    .select(['id', 'branch_id as branchId', 'enquiry_id as enquiryId', 'animal_id as animalId', 'at', 'by']);

export async function placementById(db: Db, id: string): Promise<Placement | undefined> {
  return await rows(db).where('id', '=', id).executeTakeFirst();
}

/** Newest first. */
export async function placementsOfBranch(db: Db, branchId: string): Promise<Placement[]> {
  return await rows(db).where('branch_id', '=', branchId).orderBy('at', 'desc').orderBy('id').execute();
}

/** In the order in which they were written. */
export async function placementEvents(db: Db, placementId: string): Promise<PlacementEvent[]> {
  return await db
    .selectFrom('placement_event')
    .select(['id', 'kind', 'body', 'at', 'by'])
    .where('placement_id', '=', placementId)
    .orderBy('seq')
    .execute();
}

export type Added =
  /** `again`: this token was written before, nothing was added. */
  | { readonly ok: true; readonly id: string; readonly again: boolean }
  /** The placement does not stand where this could follow. */
  | { readonly ok: false; readonly state: PlacementState };

/** Adds what happened, inside the caller's transaction: what goes with it (the animal's entry) stands or falls with it.
 *  The placement's row is locked first, so that of two releases at once the second sees the first. */
export async function addPlacementEvent(
  tx: Db,
  placementId: string,
  event: { readonly kind: PlacementEventKind; readonly body: object; readonly token: string },
  writer: PlacementWriter,
): Promise<Added> {
  await tx.selectFrom('placement').select('id').where('id', '=', placementId).forUpdate().executeTakeFirstOrThrow();
  const before = await tx
    .selectFrom('placement_event')
    .select('id')
    .where('placement_id', '=', placementId)
    .where('token', '=', event.token)
    .executeTakeFirst();
  if (before) return { ok: true, id: before.id, again: true };
  const state = placementState(await placementEvents(tx, placementId));
  const needed = allowedFrom[event.kind];
  if (needed !== undefined && needed !== state) return { ok: false, state };
  const id = randomUUID();
  await tx
    .insertInto('placement_event')
    .values({
      id,
      placement_id: placementId,
      kind: event.kind,
      body: JSON.stringify(event.body),
      token: event.token,
      at: writer.at,
      by: writer.by,
    })
    .execute();
  return { ok: true, id, again: false };
}

/** The placement of this animal to this home that stands open, if any. */
export async function openPlacementOf(db: Db, enquiryId: string, animalId: string): Promise<string | undefined> {
  const found = await rows(db)
    .where('enquiry_id', '=', enquiryId)
    .where('animal_id', '=', animalId)
    .orderBy('at', 'desc')
    .execute();
  for (const { id } of found) if (placementState(await placementEvents(db, id)) === 'open') return id;
  return undefined;
}

/** Holds placement and animal until the transaction ends: entries about the animal wait, so that what was judged is what
 *  goes, and of two placements of one animal the second sees the first. */
export async function holdPlacement(tx: Db, { id, animalId }: Pick<Placement, 'id' | 'animalId'>): Promise<void> {
  await tx.selectFrom('placement').select('id').where('id', '=', id).forUpdate().executeTakeFirstOrThrow();
  await tx.selectFrom('animal').select('id').where('id', '=', animalId).forUpdate().executeTakeFirstOrThrow();
}

/** Whether this was sent before: a device sends again what it got no answer to. */
export async function wasSent(tx: Db, placementId: string, token: string): Promise<boolean> {
  const found = await tx
    .selectFrom('placement_event')
    .select('id')
    .where('placement_id', '=', placementId)
    .where('token', '=', token)
    .executeTakeFirst();
  return found !== undefined;
}

/** What happened to every placement of a branch, without the bodies, in the order in which it was written. */
export async function happenedInBranch(
  db: Db,
  branchId: string,
): Promise<ReadonlyMap<string, readonly Pick<PlacementEvent, 'kind' | 'at'>[]>> {
  const found = await db
    .selectFrom('placement_event as e')
    .innerJoin('placement as p', 'p.id', 'e.placement_id')
    .select(['e.placement_id as placementId', 'e.kind', 'e.at'])
    .where('p.branch_id', '=', branchId)
    .orderBy('e.seq')
    .execute();
  const byPlacement = new Map<string, Pick<PlacementEvent, 'kind' | 'at'>[]>();
  for (const { placementId, kind, at } of found) {
    const own = byPlacement.get(placementId);
    if (own) own.push({ kind, at });
    else byPlacement.set(placementId, [{ kind, at }]);
  }
  return byPlacement;
}
