// The look-over nose to tail: go on where it was left, save as it goes, finish it, against the last one.

import { lastOf } from '../animal/event.ts';
import { eventFaults } from '../animal/event-fields.ts';
import { type Answers, compareExaminations, type ExaminationBody, examinationVerdict } from '../animal/examination.ts';
import { draftOf, dropDraft, putDraft } from '../records/animal-photos.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { latestDayOf } from './today.ts';
import { writeEntry, writerOf } from './write-entry.ts';

/** Steps, what was entered so far and what the last one said. Faults: "ANIMAL_UNKNOWN". */
export async function readExamination(desk: DeskContext, id: string) {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const last = lastOf(found.value.events, 'examination');
  const draft = await draftOf(desk.db, id);
  return good({
    steps: around.care.examination,
    draft: draft ? { document: draft.document, updatedAt: draft.updatedAt.toISOString(), by: draft.by } : null,
    last: last ? { on: last.on, by: last.by, body: last.body } : null,
    callName: found.value.entry.callName ?? '',
    speciesId: found.value.species.id,
  });
}

/** Faults: "ANIMAL_UNKNOWN", "ANIMAL_ENTRY". */
export async function saveExamination(desk: DeskContext, id: string, document: object): Promise<Result<null>> {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const faults = eventFaults('examination', around.today, document, latestDayOf(desk.clock));
  if (faults.length > 0) return bad(faults);
  await putDraft(desk.db, id, document, writerOf(desk));
  return good(null);
}

/** Writes it down for good. Unfinished is refused unless a sign is for the vet already.
 *  Faults: "ANIMAL_UNKNOWN", "ANIMAL_ENTRY", "ANIMAL_EXAMINATION_OPEN". */
export async function finishExamination(desk: DeskContext, id: string, body: ExaminationBody, clientKey?: string) {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const verdict = examinationVerdict(around.care.examination, body.answers ?? {});
  if (verdict.result === 'unfinished')
    return bad([animalFaults.examinationOpen([...verdict.open, ...verdict.unknown])]);
  const before: Answers = lastOf(found.value.events, 'examination')?.body.answers ?? {};
  const entry = { animalId: id, kind: 'examination', body, ...(clientKey === undefined ? {} : { clientKey }) };
  const written = await writeEntry(desk, entry);
  if (!written.ok) return written;
  for (const { sign } of verdict.seen) {
    // A cloudy eye opens the slough record by itself; mites are counted from the look-over (animal/quarantine.ts).
    if (sign.starts === 'slough' && written.value.written)
      await writeEntry(desk, { animalId: id, kind: 'slough', body: { stage: 'cloudy' } });
  }
  await dropDraft(desk.db, id);
  return good({ id: written.value.id, verdict, comparison: compareExaminations(before, body.answers) });
}
