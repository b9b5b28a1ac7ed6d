// What can be wrong with what is asked of the branch's shelf, beside the shelf itself (planning/shelf).
import type { Fault } from '../shared/fault.ts';

export const shelfFaults = {
  changed: (base: number, newest: number): Fault => ({
    code: 'SHELF_CHANGED',
    field: 'base',
    got: String(base),
    allowed: String(newest),
    say: 'Somebody else has changed the shelf meanwhile; nothing of theirs was overwritten.',
    fix: 'Load the shelf again and make the change on it.',
  }),
  unknown: (version: number): Fault => ({
    code: 'SHELF_VERSION',
    field: 'version',
    got: String(version),
    allowed: 'a version of this shelf; 0 for the starter shelf',
    say: 'There is no such earlier shelf.',
    fix: 'Choose one from the list of changes.',
  }),
} as const;
