// The rows of what happened to animals: put down once, corrected by a new row, read with every correction.
import { sql } from 'kysely';
import type { AnimalEvent } from '../animal/event.ts';
import type { Rows, Writer } from './animals.ts';

export interface NewEvent {
  readonly id: string;
  readonly animalId: string;
  readonly kind: string;
  readonly on: string;
  readonly at: Date;
  /** null withdraws the entry that it corrects. */
  readonly body: object | null;
  readonly corrects: string | null;
  readonly reason: string;
  readonly clientKey: string | null;
}

/** False when an entry with the same client key, or another correction of the same entry, is there already. */
export async function insertEvent(tx: Rows, event: NewEvent, writer: Writer): Promise<boolean> {
  const row = await tx
    .insertInto('animal_event')
    .values({
      id: event.id,
      animal_id: event.animalId,
      kind: event.kind,
      happened_on: event.on,
      happened_at: event.at,
      body: event.body === null ? null : JSON.stringify(event.body),
      corrects: event.corrects,
      reason: event.reason,
      branch_id: writer.branchId,
      recorded_at: writer.at,
      by: writer.by,
      client_key: event.clientKey,
    })
    .onConflict((clash) => clash.doNothing())
    .returning('id')
    .executeTakeFirst();
  return row !== undefined;
}

export interface EventRow {
  readonly id: string;
  readonly animalId: string;
  readonly kind: string;
  readonly on: string;
  readonly at: Date;
  readonly body: Record<string, unknown> | null;
  readonly corrects: string | null;
  readonly reason: string;
  readonly recordedAt: Date;
  readonly by: string;
}

/** Every row of these animals as it was written, oldest first. */
export async function eventRows(db: Rows, animalIds: readonly string[]): Promise<readonly EventRow[]> {
  if (animalIds.length === 0) return [];
  return await db
    .selectFrom('animal_event')
    .select((eb) => [
      'id',
      'animal_id as animalId',
      'kind',
      // As text: a day has no zone.
      eb.cast<string>('happened_on', 'text').as('on'),
      'happened_at as at',
      'body',
      'corrects',
      'reason',
      'recorded_at as recordedAt',
      'by',
    ])
    .where(sql<boolean>`animal_id = any(${[...animalIds]}::uuid[])`)
    .orderBy('happened_at')
    .orderBy('seq')
    .execute();
}

/** What holds: each entry by its last correction, withdrawn ones left out. */
export function standingEvents(rows: readonly EventRow[]): readonly AnimalEvent[] {
  const correctionOf = new Map(rows.flatMap((row) => (row.corrects === null ? [] : [[row.corrects, row] as const])));
  return rows.flatMap((row) => {
    if (row.corrects !== null) return [];
    let last = row;
    for (let next = correctionOf.get(last.id); next !== undefined; next = correctionOf.get(last.id)) last = next;
    if (last.body === null) return [];
    const { kind, on, by } = last;
    return [{ id: last.id, kind, on, at: last.at.toISOString(), body: last.body, by } as unknown as AnimalEvent];
  });
}

export function eventsByAnimal(rows: readonly EventRow[]): ReadonlyMap<string, readonly AnimalEvent[]> {
  const groups = new Map<string, EventRow[]>();
  for (const row of rows) {
    const own = groups.get(row.animalId);
    if (own) own.push(row);
    else groups.set(row.animalId, [row]);
  }
  return new Map([...groups].map(([id, own]) => [id, standingEvents(own)]));
}
