// The daily round: every enclosure of the branch, what was written today, and checks that come in late from a device
// that was offline. Sent twice they are written once; two devices may write the same enclosure, both stay.
import type { EventBodies } from '../animal/event.ts';
import { roundLines, roundSum } from '../animal/round.ts';
import type { Fault } from '../shared/fault.ts';
import { recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { writeEntry } from './write-entry.ts';

export async function readRound(desk: DeskContext) {
  const around = await surroundings(desk);
  const records = await recordsOf(desk, around, { branchId: desk.actor.branchId, gone: false });
  const animals = records.map(({ row, entry, species, arrivedOn, events }) => ({
    animalId: row.id,
    callName: entry.callName ?? '',
    place: row.enclosure,
    species,
    arrivedOn,
    events,
  }));
  const lines = roundLines(animals, around.today);
  return { today: around.today, lines, sum: roundSum(lines) };
}

export interface RoundCheck {
  readonly clientKey: string;
  readonly animalId: string;
  readonly on: string;
  readonly at: string;
  readonly body: EventBodies['round'];
}

export interface MergedCheck {
  readonly clientKey: string;
  /** written now, known from before, or refused with the faults. */
  readonly outcome: 'written' | 'known' | 'refused';
  readonly faults: readonly Fault[];
}

/** Takes every check that can be taken; one that is refused never holds up the others. */
export async function mergeRound(desk: DeskContext, checks: readonly RoundCheck[]): Promise<readonly MergedCheck[]> {
  const merged: MergedCheck[] = [];
  for (const { clientKey, animalId, on, at, body } of checks) {
    const result = await writeEntry(desk, { animalId, kind: 'round', on, at, body, clientKey });
    if (result.ok) merged.push({ clientKey, outcome: result.value.written ? 'written' : 'known', faults: [] });
    else merged.push({ clientKey, outcome: 'refused', faults: result.faults });
  }
  return merged;
}
