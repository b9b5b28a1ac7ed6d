// An animal comes in: put it into the register and into its enclosure, in quarantine unless it was bred here.
import { randomUUID } from 'node:crypto';
import { eventFaults } from '../animal/event-fields.ts';
import { usualQuarantineDays } from '../animal/quarantine.ts';
import { type RegisterEntry, registerFaults } from '../animal/register.ts';
import { insertEvent } from '../records/animal-events.ts';
import { insertAnimal, insertFacts, putWhereabouts } from '../records/animals.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { latestDayOf } from './today.ts';

export interface TakeIn {
  readonly values: RegisterEntry;
  readonly enclosure: string;
  /** Null: none, because it was bred here or somebody decided so. */
  readonly quarantine: {
    readonly clearBy: 'time' | 'tests' | 'both';
    readonly days: number | null;
    readonly tests: string;
  } | null;
}

/** Faults: "ANIMAL_SPECIES", "ANIMAL_REGISTER", "ANIMAL_ENTRY". */
export async function takeInAnimal(desk: DeskContext, request: TakeIn): Promise<Result<{ readonly id: string }>> {
  const around = await surroundings(desk);
  const { actor, clock, db } = desk;
  const writer = { branchId: actor.branchId, at: clock.now(), by: actor.name };
  const species = around.facts.species[request.values.speciesId ?? ''];
  const movement = { toPlace: request.enclosure, toBranchId: actor.branchId, why: 'arrival' };
  const days = request.quarantine?.days ?? (species ? usualQuarantineDays(around.care, species.family) : 90);
  const quarantine = request.quarantine && {
    step: 'start',
    why: 'arrival',
    where: request.enclosure,
    clearBy: request.quarantine.clearBy,
    days,
    tests: request.quarantine.tests,
  };
  const latest = latestDayOf(clock);
  const faults = [
    ...(species ? [] : [animalFaults.species(request.values.speciesId ?? '', Object.keys(around.facts.species))]),
    ...registerFaults(request.values),
    ...eventFaults('movement', around.today, movement, latest),
    ...(quarantine ? eventFaults('quarantine', around.today, quarantine, latest) : []),
  ];
  if (faults.length > 0) return bad(faults);
  const id = randomUUID();
  await db.transaction().execute(async (tx) => {
    await insertAnimal(tx, id, around.shopId, writer);
    await insertFacts(tx, id, request.values, '', writer);
    await putWhereabouts(tx, id, { branchId: actor.branchId, enclosure: request.enclosure, gone: false });
    const event = { animalId: id, on: around.today, at: writer.at, corrects: null, reason: '', clientKey: null };
    await insertEvent(tx, { ...event, id: randomUUID(), kind: 'movement', body: movement }, writer);
    if (quarantine) await insertEvent(tx, { ...event, id: randomUUID(), kind: 'quarantine', body: quarantine }, writer);
  });
  return good({ id });
}
