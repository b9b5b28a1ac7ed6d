// What can be wrong around readings besides the readings themselves, said once for every action.
import type { Fault } from '../shared/fault.ts';

const fault = (code: string, field: string, got: string, allowed: string, say: string, fix: string): Fault => ({
  code,
  field,
  got,
  allowed,
  say,
  fix,
});

export const readingFaults = {
  fileUnknown: (id: string) =>
    fault(
      'LOG_UNKNOWN',
      'fileId',
      id,
      'a file of this home',
      'There is no such file here.',
      'Open the list of files and choose one from there.',
    ),
  noHome: fault(
    'PROOF_NO_HOME',
    'document.enclosure',
    'nothing',
    'an enquiry with a home',
    'This enquiry has no home yet.',
    'Draw or choose the home first.',
  ),
  nothingRead: fault(
    'PROOF_NOTHING_READ',
    '',
    'no file, no typed and no live reading',
    'readings of this home',
    'Nobody has read anything in this home yet.',
    'Add a logger file, type readings, or connect a live source.',
  ),
  busy: (waiting: number) =>
    fault(
      'PROOF_BUSY',
      '',
      `${waiting} proofs waiting`,
      'a few at a time',
      'Too many proofs are being computed at this moment.',
      'Try again in a few seconds.',
    ),
  stopped: () =>
    fault(
      'PROOF_STOPPED',
      '',
      'stopped by whoever waited for it',
      '',
      'The proof was stopped before it came to an answer.',
      'Ask for it again; the readings are all still there.',
    ),
  instrumentUnknown: (id: string) =>
    fault(
      'INSTRUMENT_UNKNOWN',
      'instrumentId',
      id,
      'an instrument of this branch',
      'There is no such instrument here.',
      'Add it first, or choose one from the list.',
    ),
  instrumentName: (got: string) =>
    fault(
      'INSTRUMENT_NAME',
      'name',
      got,
      '1 to 80 characters',
      'An instrument needs a name that stands on it.',
      'Write a number on it and use that.',
    ),
  /** The same words for a link that never was, ran out or was withdrawn: a stranger learns nothing. */
  linkUnknown: fault(
    'KEEPER_LINK',
    '',
    'a link',
    'a link that the shop gave out and that still works',
    'This link does not work, or no longer.',
    'Ask the shop for a new one.',
  ),
  linkDays: (got: number) =>
    fault(
      'KEEPER_LINK_DAYS',
      'days',
      String(got),
      '1 to 400 days',
      'A link lasts from a day to thirteen months.',
      'Choose a number of days in between.',
    ),
  readingUnknown: (id: string) =>
    fault(
      'HAND_UNKNOWN',
      'readingId',
      id,
      'a typed reading of this home',
      'There is no such reading here.',
      'Open the list of typed readings and choose one from there.',
    ),
  readingWhy: (got: string) =>
    fault(
      'HAND_WHY',
      'why',
      got,
      'a few words',
      'A reading is not set aside without a reason.',
      'Write what is wrong with it; whoever reads the proof later will ask.',
    ),
  readingTime: (got: string) =>
    fault(
      'HAND_TIME',
      'at',
      got,
      'a time within the last 60 days',
      'This time lies in the future or long ago.',
      'Set the time at which the thermometer was read.',
    ),
  sourceUnknown: fault(
    'LIVE_SOURCE',
    '',
    'a secret',
    'the secret of a live source',
    'No live source goes by this secret.',
    'Copy the address again from the page of the home.',
  ),
  liveValue: (got: string) =>
    fault(
      'LIVE_VALUE',
      'readings',
      got,
      'numbers that such a sensor can give',
      'This is no reading of such a sensor.',
      'Send the number alone, or under "value".',
    ),
  liveTime: (got: string) =>
    fault(
      'LIVE_TIME',
      'readings',
      got,
      'a time of the last 30 days, at most two minutes ahead',
      'The time of this reading cannot be.',
      "Set the sensor's clock, or leave the time out: then it counts as measured now.",
    ),
} as const;
