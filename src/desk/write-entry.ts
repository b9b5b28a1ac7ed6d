// Something happened to an animal: write it down, correct it, or withdraw it. Nothing is overwritten.
import { randomUUID } from 'node:crypto';
import { type AnimalEvent, lastOf } from '../animal/event.ts';
import { eventFaults } from '../animal/event-fields.ts';
import { isGone } from '../animal/fitness.ts';
import { eventRows, insertEvent, standingEvents } from '../records/animal-events.ts';
import { putWhereabouts, type Rows, type Writer } from '../records/animals.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { type AnimalRecord, type DeskSurroundings, recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { latestDayOf } from './today.ts';

export interface Entry {
  readonly animalId: string;
  readonly kind: string;
  /** Day on which it happened; today when left out. */
  readonly on?: string;
  /** Moment, ISO; now when left out. */
  readonly at?: string;
  readonly body: object;
  /** The device's own name for it: sent twice, written once. */
  readonly clientKey?: string;
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_ENTRY". @returns written false when it was there already. */
export async function writeEntry(
  desk: DeskContext,
  entry: Entry,
): Promise<Result<{ readonly id: string; readonly written: boolean }>> {
  const around = await surroundings(desk);
  const on = entry.on ?? around.today;
  const faults = [...eventFaults(entry.kind, on, entry.body, latestDayOf(desk.clock)), ...momentFaults(entry.at)];
  if (faults.length > 0) return bad(faults);
  const found = await recordOf(desk, around, entry.animalId);
  if (!found.ok) return found;
  const writer = writerOf(desk);
  const id = randomUUID();
  const written = await desk.db.transaction().execute(async (tx) => {
    const at = entry.at === undefined ? writer.at : new Date(entry.at);
    const event = { id, animalId: entry.animalId, kind: entry.kind, on, at, body: entry.body };
    const fresh = await insertEvent(
      tx,
      { ...event, corrects: null, reason: '', clientKey: entry.clientKey ?? null },
      writer,
    );
    if (fresh) await followUp(tx, found.value, around);
    return fresh;
  });
  return good({ id, written });
}

/** Writes entries that belong to something else that is being done, in its transaction. The caller has checked them. */
export async function writeEntriesIn(
  tx: Rows,
  desk: DeskContext,
  record: AnimalRecord,
  around: DeskSurroundings,
  entries: readonly (Pick<AnimalEvent, 'kind' | 'body'> & { readonly clientKey: string })[],
): Promise<void> {
  const writer = writerOf(desk);
  for (const entry of entries) {
    const event = { id: randomUUID(), animalId: record.row.id, on: around.today, at: writer.at };
    await insertEvent(tx, { ...event, ...entry, corrects: null, reason: '' }, writer);
  }
  await followUp(tx, record, around);
}

export interface EntryCorrection {
  readonly animalId: string;
  readonly entryId: string;
  /** Null withdraws it. */
  readonly body: object | null;
  readonly on?: string;
  readonly reason: string;
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_ENTRY_UNKNOWN", "ANIMAL_REASON", "ANIMAL_ENTRY". */
export async function correctEntry(
  desk: DeskContext,
  change: EntryCorrection,
): Promise<Result<{ readonly id: string }>> {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, change.animalId);
  if (!found.ok) return found;
  const standing = found.value.events.find((event) => event.id === change.entryId);
  if (standing === undefined) return bad([animalFaults.entryUnknown(change.entryId)]);
  const on = change.on ?? standing.on;
  const faults = change.body === null ? [] : eventFaults(standing.kind, on, change.body, latestDayOf(desk.clock));
  if (change.reason.trim() === '') faults.push(animalFaults.needsReason([standing.kind]));
  if (faults.length > 0) return bad(faults);
  const writer = writerOf(desk);
  const id = randomUUID();
  const written = await desk.db.transaction().execute(async (tx) => {
    const event = {
      id,
      animalId: change.animalId,
      kind: standing.kind,
      on,
      at: new Date(standing.at),
      body: change.body,
    };
    const corrected = { ...event, corrects: change.entryId, reason: change.reason.trim(), clientKey: null };
    const fresh = await insertEvent(tx, corrected, writer);
    if (fresh) await followUp(tx, found.value, around);
    return fresh;
  });
  return written ? good({ id }) : bad([animalFaults.entryUnknown(change.entryId)]);
}

export const writerOf = (desk: DeskContext): Writer => ({
  branchId: desk.actor.branchId,
  at: desk.clock.now(),
  by: desk.actor.name,
});

function momentFaults(at: string | undefined) {
  if (at === undefined || !Number.isNaN(Date.parse(at))) return [];
  return eventFaults('note', at, { text: at }, at).map((fault) => ({ ...fault, field: 'at' }));
}

/** Keeps where it is in step with what was written, corrections and all. */
async function followUp(tx: Rows, record: AnimalRecord, around: DeskSurroundings): Promise<void> {
  const events = standingEvents(await eventRows(tx, [record.row.id]));
  await putWhereabouts(tx, record.row.id, whereaboutsFrom(events, record, around.today));
}

function whereaboutsFrom(events: readonly AnimalEvent[], { row }: AnimalRecord, today: string) {
  const last = lastOf(events, 'movement')?.body;
  const branchId = last && last.toBranchId !== '' ? last.toBranchId : row.branchId;
  return { branchId, enclosure: last?.toPlace ?? row.enclosure, gone: isGone(events, today) };
}
