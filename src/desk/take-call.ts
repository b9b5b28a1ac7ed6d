// Somebody calls about an animal that was sold: what first? Works it out, and writes the call down when asked to.
import { numberOf } from '../animal/care-facts.ts';
import { massFinding } from '../animal/mass-series.ts';
import { type TriageCall, triage } from '../animal/triage.ts';
import type { LifeStage } from '../physics/enclosure.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { writeEntry } from './write-entry.ts';

export interface CallRequest {
  /** Null for an animal that the shop does not know. */
  readonly animalId: string | null;
  readonly speciesId: string | null;
  readonly stage: LifeStage | null;
  readonly call: TriageCall;
  readonly note: string;
  readonly keep: boolean;
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_SPECIES". */
export async function takeCall(desk: DeskContext, request: CallRequest): Promise<Result<ReturnType<typeof triage>>> {
  const around = await surroundings(desk);
  const known = request.animalId === null ? null : await recordOf(desk, around, request.animalId);
  if (known !== null && !known.ok) return known;
  const record = known?.value ?? null;
  const species = record?.species ?? around.facts.species[request.speciesId ?? ''];
  if (species === undefined)
    return bad([animalFaults.species(request.speciesId ?? '', Object.keys(around.facts.species))]);
  const stage = request.stage ?? record?.stage ?? 'adult';
  const lossPct =
    request.call.lossPct ?? (record ? massFinding(record.events, around.care, around.today).lossPct : null);
  const alarm = numberOf(around.care.condition, 'lossAlarmPct');
  const answer = triage(around.care.triage, species, stage, { ...request.call, lossPct }, alarm);
  if (request.keep && record) {
    const body = { complaint: request.call.complaintId || 'unsaid', next: answer.next, note: request.note };
    const written = await writeEntry(desk, { animalId: record.row.id, kind: 'call', body });
    if (!written.ok) return written;
  }
  return good(answer);
}
