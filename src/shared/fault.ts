// What a bad input, a broken limit or an untrustworthy row looks like everywhere in the program.
// A bad *answer* (the box is too cold) is a verdict, not a fault.

/** One thing that is wrong, said so that the reader can mend it. */
export interface Fault {
  /** Stable code, listed in docs/errors.md, e.g. "ENC_RANGE". */
  readonly code: string;
  /** Dotted path of the field, e.g. "heaters[0].powerW"; "" for the whole input. */
  readonly field: string;
  /** What came, as it would be shown to a person. */
  readonly got: string;
  /** What is allowed, in words or as a range with its unit. */
  readonly allowed: string;
  /** One sentence: what is wrong. */
  readonly say: string;
  /** One sentence: what to do about it. */
  readonly fix: string;
  /** Key of data/sources.json when a published rule stands behind the limit. */
  readonly source?: string;
}
