// What a rule of law looks like in data/law.json, and the places it may hold in.
import type { Sourced } from './need.ts';

export const places = [
  'england',
  'scotland',
  'wales',
  'northern-ireland',
  'ireland',
  'eu',
  'germany',
  'belgium',
  'california',
  'colorado',
  'florida',
  'new-south-wales',
  'victoria',
] as const;
export type Place = (typeof places)[number];

/** What the rule does to a sale. */
export type LawEffect =
  | { readonly kind: 'buyer-age'; readonly years: number; readonly withGuardian: boolean }
  | { readonly kind: 'under-treatment'; readonly answer: 'blocked' | 'vet-advice' }
  | { readonly kind: 'species-ban'; readonly speciesIds: readonly string[] }
  | { readonly kind: 'species-ask'; readonly speciesIds: readonly string[] | null }
  | { readonly kind: 'annex'; readonly annex: 'A' | 'B' }
  | { readonly kind: 'both-licensed' }
  | { readonly kind: 'keep-records'; readonly years: number }
  | { readonly kind: 'written-information' }
  | { readonly kind: 'duty' };

export interface LawRule extends Sourced {
  readonly id: string;
  /** Where it holds; several when one text binds several places. */
  readonly places: readonly Place[];
  readonly title: string;
  /** What the rule asks, in our own words. */
  readonly say: string;
  readonly effect: LawEffect;
  /** Date of the text itself, as far as known. */
  readonly dateOfText: string | null;
  /** ISO date on which we last looked at the source. */
  readonly dateChecked: string;
  /** ISO date after which the rule shows amber. */
  readonly reviewBy: string;
  /** Seen at second hand (press, association) rather than in the text itself. */
  readonly secondHand: boolean;
  readonly decides: string;
}
