// Say or correct what the register holds of an animal. The old value stays, with who, when and why.
import { type RegisterEntry, type RegisterField, registerFaults } from '../animal/register.ts';
import { insertFacts } from '../records/animals.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';

export interface RegisterChange {
  readonly id: string;
  readonly values: RegisterEntry;
  /** Needed where something stood before. */
  readonly reason: string;
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_REGISTER", "ANIMAL_SPECIES", "ANIMAL_REASON". */
export async function correctRegister(
  desk: DeskContext,
  change: RegisterChange,
): Promise<Result<{ readonly changed: number }>> {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, change.id);
  if (!found.ok) return found;
  const { entry } = found.value;
  const fresh = Object.fromEntries(
    Object.entries(change.values).filter(([field, value]) => value !== (entry[field as RegisterField] ?? '')),
  ) as RegisterEntry;
  const overwritten = (Object.keys(fresh) as RegisterField[]).filter((field) => (entry[field] ?? '') !== '');
  const unknownSpecies = fresh.speciesId !== undefined && !Object.hasOwn(around.facts.species, fresh.speciesId);
  const faults = [
    ...registerFaults(change.values),
    ...(unknownSpecies ? [animalFaults.species(fresh.speciesId ?? '', Object.keys(around.facts.species))] : []),
    ...(overwritten.length > 0 && change.reason.trim() === '' ? [animalFaults.needsReason(overwritten)] : []),
  ];
  if (faults.length > 0) return bad(faults);
  const writer = { branchId: desk.actor.branchId, at: desk.clock.now(), by: desk.actor.name };
  await desk.db.transaction().execute(async (tx) => {
    await insertFacts(tx, change.id, fresh, overwritten.length > 0 ? change.reason.trim() : '', writer);
  });
  return good({ changed: Object.keys(fresh).length });
}
