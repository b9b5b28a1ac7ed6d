// What can be wrong with an erasure, said once for every action.
import type { Fault } from '../../shared/fault.ts';

/** Long enough that a later reader knows why (our choice). */
export const shortestErasureReason = 5;

export const privacyFaults = {
  done: (enquiryId: string): Fault => ({
    code: 'ERASURE_DONE',
    field: 'enquiryId',
    got: enquiryId,
    allowed: 'an enquiry whose buyer was not erased',
    say: 'The own words of this buyer were erased; nothing more is written here.',
    fix: 'Open a new enquiry if the person comes back.',
  }),
  open: (placementId: string): Fault => ({
    code: 'ERASURE_OPEN',
    field: 'placementId',
    got: placementId,
    allowed: 'placements that were released or refused',
    say: 'A placement of this home stands open.',
    fix: 'Release the animal or refuse the sale first, then erase.',
  }),
  reason: (letters: number): Fault => ({
    code: 'ERASURE_REASON',
    field: 'reason',
    got: `${letters} letters`,
    allowed: `at least ${shortestErasureReason} letters`,
    say: 'An erasure is kept with its reason; this one is too short to be one.',
    fix: 'Write why, without naming the person.',
  }),
  notDue: (id: string): Fault => ({
    code: 'ERASURE_NOT_DUE',
    field: 'ids',
    got: id,
    allowed: 'enquiries in the list of what is due',
    say: 'This enquiry is not due: it was changed, placed or erased meanwhile.',
    fix: 'Load the list again.',
  }),
} as const;
