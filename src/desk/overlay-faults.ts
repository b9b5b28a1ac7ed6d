// What can be wrong with a shop's own value, said once for every action.
import type { Fault } from '../shared/fault.ts';

export const overlayFaults = {
  fact: (got: string): Fault => ({
    code: 'OVERLAY_FACT',
    field: 'path',
    got,
    allowed:
      'a number, range or word of a species or of care, "policy.standardId" or a "policy.proof..." rule; never what the law says',
    say: 'There is no value here that a shop may overrule.',
    fix: 'Open the sheet of the species and choose the value there.',
  }),
  parts: (path: string, got: readonly string[], allowed: readonly string[]): Fault => ({
    code: 'OVERLAY_PARTS',
    field: path,
    got: got.join(', ') || 'nothing',
    allowed: allowed.join(' and '),
    say: 'The shop value has not the same parts as the shipped one.',
    fix: `Give ${allowed.join(' and ')}.`,
  }),
  word: (path: string, got: string, allowed: readonly string[]): Fault => ({
    code: 'OVERLAY_WORD',
    field: path,
    got,
    allowed: allowed.join(', '),
    say: 'The program does not know this word here.',
    fix: 'Choose one of those named.',
  }),
  number: (path: string, got: string, low: number, high: number): Fault => ({
    code: 'OVERLAY_NUMBER',
    field: path,
    got,
    allowed: `a whole number from ${low} to ${high}`,
    say: 'This rule of the shop cannot have this value.',
    fix: 'Give a whole number within the limits.',
  }),
  why: (): Fault => ({
    code: 'OVERLAY_WHY',
    field: 'why',
    got: 'no reason',
    allowed: 'a few words',
    say: 'A shop value is shown to customers with its reason; none was given.',
    fix: 'Write why the shop does it otherwise.',
  }),
  unknown: (id: string): Fault => ({
    code: 'OVERLAY_UNKNOWN',
    field: 'id',
    got: id,
    allowed: 'a value of this branch that holds',
    say: 'There is no such shop value, or it was withdrawn meanwhile.',
    fix: 'Load the sheet again.',
  }),
} as const;
