// What a shop's own value is: where it stands, its parts, what was shipped there, who set it, when and why.
// Leaves out laying it over the facts (overlay.ts) and keeping it (records/overlays.ts).

/** Parts of a fact by name: low and high, value, or values. */
export type ShopParts = Readonly<Record<string, number | string | null | readonly (number | string)[]>>;

export interface ShopValue {
  /** Dotted path as people write it, e.g. "species.corn.all.rhPct", "substrates.peat.moisture", "policy.standardId". */
  readonly path: string;
  readonly value: ShopParts;
  /** The same parts as they were shipped when it was set. */
  readonly was: ShopParts;
  readonly by: string;
  /** ISO time. */
  readonly at: string;
  readonly why: string;
}

/** The mark that a number carries from the place where a shop overruled it up to the screen. */
export type OwnMark = Pick<ShopValue, 'path' | 'value' | 'was' | 'by' | 'at' | 'why'>;

/** Path of the space standard that a branch goes by when nobody names another. */
export const standardPolicy = 'policy.standardId';
