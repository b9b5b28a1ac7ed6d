// What can be wrong with an action on an animal, said once for every action.
import type { Fault } from '../shared/fault.ts';

export const animalFaults = {
  unknown: (id: string): Fault => ({
    code: 'ANIMAL_UNKNOWN',
    field: 'id',
    got: id,
    allowed: 'an animal of this shop',
    say: 'There is no such animal here.',
    fix: 'Open the list and choose one from there.',
  }),
  species: (got: string, known: readonly string[]): Fault => ({
    code: 'ANIMAL_SPECIES',
    field: 'speciesId',
    got,
    allowed: known.join(', '),
    say: 'This species is not in the data.',
    fix: 'Choose one of those named, or add its facts with their sources to data/.',
  }),
  entryUnknown: (id: string): Fault => ({
    code: 'ANIMAL_ENTRY_UNKNOWN',
    field: 'entryId',
    got: id,
    allowed: 'an entry of this animal that holds',
    say: 'There is no such entry, or it was corrected meanwhile.',
    fix: 'Load the animal again and correct the entry that stands there now.',
  }),
  needsReason: (fields: readonly string[]): Fault => ({
    code: 'ANIMAL_REASON',
    field: 'reason',
    got: 'no reason',
    allowed: 'a few words',
    say: `What stood in the register is changed (${fields.join(', ')}): it must say why.`,
    fix: 'Write why it is corrected. The old value stays readable.',
  }),
  examinationOpen: (steps: readonly string[]): Fault => ({
    code: 'ANIMAL_EXAMINATION_OPEN',
    field: 'answers',
    got: `${steps.length} steps that nobody has looked at: ${steps.join(', ')}`,
    allowed: 'every step, or a sign for the vet',
    say: 'The look-over is not finished.',
    fix: 'Look at the open steps; what was entered is kept.',
  }),
  photo: (got: string): Fault => ({
    code: 'ANIMAL_PHOTO',
    field: 'data',
    got,
    allowed: 'a JPEG, PNG or WebP picture of at most 400 000 bytes, as base64',
    say: 'This is no picture that can be kept.',
    fix: 'Take the photograph again, or choose a smaller picture.',
  }),
} as const;
