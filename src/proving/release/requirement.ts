// What a requirement of a release is, how it is answered, and what may be said or overridden about it.
// Leaves out the answering (requirements.ts) and its words (words/).
import type { Reason } from '../../animal/reason.ts';
import type { Place } from '../../husbandry/law-rule.ts';
import type { ReadMark, Sourced } from '../../husbandry/need.ts';
import type { ReleaseReasonKey } from './words/en.ts';

/** In the order in which they are shown and asked for. */
export const requirementIds = [
  'home-fits',
  'home-proven',
  'thermostat',
  'guard',
  'two-hides',
  'lock',
  'thermometer',
  'heater-safe',
  'examination',
  'mass',
  'feeding',
  'slough',
  'quarantine',
  'mites',
  'treatment',
  'settled',
  'register',
  'home-place',
  'buyer-age',
  'species-lawful',
  'papers',
  'licences',
  'cautions',
  'household',
  'vet',
  'information',
] as const;
export type RequirementId = (typeof requirementIds)[number];
export type RequirementGroup = 'home' | 'animal' | 'law' | 'keeper';

/** One row of data/release.json. */
export interface RequirementRow extends Sourced {
  readonly id: RequirementId;
  readonly group: RequirementGroup;
  /** always: no shop can make it optional; shop: absolute unless the shop says otherwise; no: a manager may override. */
  readonly absolute: 'always' | 'shop' | 'no';
  readonly answeredBy: 'program' | 'person' | 'either';
}

export type RequirementAnswer = 'met' | 'not-met' | 'not-known';

/** A reason of this room, or one of the animal's own. A blank that begins with "#" is a word of the book. */
export type ReleaseReason =
  | { readonly key: ReleaseReasonKey; readonly blanks?: Readonly<Record<string, string | number>> }
  | { readonly key: 'animal'; readonly reason: Reason };

/** Where the answer comes from, so that it can be opened; who and when where a person or a kept answer stands behind it. */
export interface Evidence {
  readonly at: 'plan' | 'proof' | 'animal' | 'look-over' | 'enquiry' | 'statement' | 'law';
  readonly on: string | null;
  readonly by: string | null;
}

/** What a person said of a requirement; the newest stands. "open" takes back what was said. */
export interface Statement {
  readonly requirement: RequirementId;
  readonly answer: 'yes' | 'no' | 'open';
  readonly text: string;
  /** Where the home lies. */
  readonly place: Place | null;
  /** Age the buyer was asked against. */
  readonly years: number | null;
  /** ISO time. */
  readonly at: string;
  readonly by: string;
}

/** A manager's word that it may go all the same. It covers what stood there when it was given, nothing worse. */
export interface Override {
  readonly requirement: RequirementId;
  readonly covers: 'not-met' | 'not-known';
  readonly reason: string;
  readonly at: string;
  readonly by: string;
}

/** Who says that no override can help: the program, the shop's policy, or the law of a place. */
export type AbsoluteBy = 'program' | 'shop' | 'law';

export interface RequirementFinding {
  readonly id: RequirementId;
  readonly group: RequirementGroup;
  readonly answer: RequirementAnswer;
  readonly absolute: AbsoluteBy | null;
  /** Most telling first; never empty. */
  readonly reasons: readonly ReleaseReason[];
  readonly evidence: Evidence;
  /** What was said of it, where something was. */
  readonly statement: Statement | null;
  readonly override: Override | null;
  /** Met, or overridden where that is allowed. */
  readonly stands: boolean;
  readonly source: string;
  readonly read: ReadMark;
}

/** What a statement of each kind holds; a requirement that is not here is never stated. */
export const statementForms: Readonly<
  Partial<
    Record<
      RequirementId,
      { readonly text: 'needed' | 'optional' | 'none'; readonly place?: true; readonly years?: true }
    >
  >
> = {
  // What is drawn may differ from what stands there: somebody saw it, in a photograph or on the spot, and says how.
  guard: { text: 'needed' },
  'two-hides': { text: 'needed' },
  lock: { text: 'needed' },
  thermometer: { text: 'needed' },
  treatment: { text: 'needed' },
  'home-place': { text: 'none', place: true },
  'buyer-age': { text: 'optional', years: true },
  'species-lawful': { text: 'needed' },
  licences: { text: 'needed' },
  cautions: { text: 'none' },
  // Anything written here would be a word about somebody's health.
  household: { text: 'none' },
  vet: { text: 'needed' },
  information: { text: 'optional' },
};

export const isRequirementId = (text: string): text is RequirementId =>
  (requirementIds as readonly string[]).includes(text);
