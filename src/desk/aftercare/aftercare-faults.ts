// What can be wrong around aftercare besides the answers themselves.
import type { Fault } from '../../shared/fault.ts';

const fault = (code: string, field: string, got: string, allowed: string, say: string, fix: string): Fault => ({
  code,
  field,
  got,
  allowed,
  say,
  fix,
});

export const aftercareFaults = {
  notReleased: fault(
    'AFTERCARE_NOT_RELEASED',
    'id',
    'a placement without a release',
    'a placement whose animal has left',
    'Nothing follows yet: the animal has not left.',
    'Release it first; its tasks are then made by themselves.',
  ),
  taskUnknown: (key: string) =>
    fault(
      'AFTERCARE_TASK',
      'key',
      key.slice(0, 80),
      'a task of this placement that is open',
      'There is no such task here, or no longer.',
      'Look at the tasks again: an answer or a new proof may have settled it.',
    ),
  eventUnknown: (id: string) =>
    fault(
      'AFTERCARE_EVENT',
      'of',
      id,
      'an answer or a step of this placement that stands',
      'What is to be taken back or looked at is not there, or no longer.',
      'Look at the placement again.',
    ),
  needsWhy: fault(
    'AFTERCARE_WHY',
    'why',
    'nothing',
    '3 to 500 characters',
    'Setting a task aside needs a reason.',
    'Say in a few words why it is not needed.',
  ),
  day: (got: string, from: string, latest: string) =>
    fault(
      'AFTERCARE_DAY',
      'on',
      got,
      `a day from ${from} to ${latest}`,
      'This day lies before the release or ahead.',
      'Say on which day it was so.',
    ),
  feedUnknown: fault(
    'CALENDAR_FEED',
    '',
    'an address',
    'the address of a calendar that the shop gave out and that still works',
    'There is no calendar at this address, or no longer.',
    'Ask the shop for a new address.',
  ),
} as const;
