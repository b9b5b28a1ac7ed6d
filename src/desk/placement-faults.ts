// What can be wrong with an action on a placement, said once for every action.
import type { RequirementFinding } from '../proving/release/requirement.ts';
import { sayReleaseReason, sayRequirement } from '../proving/release/words/say.ts';
import type { PlacementState } from '../records/placements.ts';
import type { Fault } from '../shared/fault.ts';

export const placementFaults = {
  unknown: (id: string): Fault => ({
    code: 'PLACEMENT_UNKNOWN',
    field: 'id',
    got: id,
    allowed: 'a placement of this branch',
    say: 'There is no such placement here.',
    fix: 'Open the list and choose one from there.',
  }),
  animalGone: (id: string): Fault => ({
    code: 'PLACEMENT_ANIMAL_GONE',
    field: 'animalId',
    got: id,
    allowed: 'an animal that is here',
    say: 'This animal has left already.',
    fix: 'Choose an animal that is here, or take this one back first.',
  }),
  state: (got: PlacementState, allowed: PlacementState): Fault => ({
    code: 'PLACEMENT_STATE',
    field: 'state',
    got,
    allowed,
    say: `The placement is ${got}; this can only be done while it is ${allowed}.`,
    fix: 'Load the placement again and see what happened meanwhile.',
  }),
  role: (got: string, allowed: string, what: string): Fault => ({
    code: 'PLACEMENT_ROLE',
    field: 'role',
    got,
    allowed,
    say: `${what} is not for this role.`,
    fix: `Ask somebody who is ${allowed}.`,
  }),
  statement: (field: string, got: string, allowed: string): Fault => ({
    code: 'STATEMENT_FIELD',
    field,
    got,
    allowed,
    say: 'This cannot be stated so.',
    fix: 'Say it again with the fields of this requirement.',
  }),
  overrideAbsolute: (finding: RequirementFinding): Fault => ({
    code: 'OVERRIDE_ABSOLUTE',
    field: finding.id,
    got: `absolute by ${finding.absolute ?? 'nobody'}`,
    allowed: 'a requirement that is not absolute',
    say: `${sayRequirement(finding.id, 'en').title}: no override helps.`,
    fix: sayRequirement(finding.id, 'en').todo,
  }),
  overrideNeedless: (id: string): Fault => ({
    code: 'OVERRIDE_NEEDLESS',
    field: id,
    got: 'met, or never overridden',
    allowed: 'a requirement that is not met or not known',
    say: 'There is nothing to override here, or to take back.',
    fix: 'Load the placement again.',
  }),
  overrideReason: (letters: number): Fault => ({
    code: 'OVERRIDE_REASON',
    field: 'reason',
    got: `${letters} letters`,
    allowed: `at least ${shortestOverrideReason} letters`,
    say: 'An override is printed with its reason; this one is too short to be one.',
    fix: 'Write why the animal may go all the same.',
  }),
  refusalReason: (): Fault => ({
    code: 'REFUSAL_REASON',
    field: 'text',
    got: 'nothing',
    allowed: 'a few words when the reason is "other"',
    say: 'The reason is missing.',
    fix: 'Write it in a few words, or choose one of the reasons.',
  }),
} as const;

/** Short enough for a stub, long enough that a word like "fine" does not pass (our choice). */
export const shortestOverrideReason = 12;

/** One fault for each requirement that does not stand, all at once. */
export const shutFaults = (findings: readonly RequirementFinding[]): readonly Fault[] =>
  findings
    .filter((finding) => !finding.stands)
    .map((finding) => ({
      code: 'RELEASE_SHUT',
      field: finding.id,
      got: finding.answer,
      allowed: finding.absolute === null ? 'met, or overridden by a manager with a reason' : 'met; no override helps',
      say: `${sayRequirement(finding.id, 'en').title}: ${finding.reasons.map((why) => sayReleaseReason(why, 'en')).join(' ')}`,
      fix: sayRequirement(finding.id, 'en').todo,
      source: finding.source,
    }));
