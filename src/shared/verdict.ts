// The three answers that the program gives about a need, in one place.

/** holds / fails / not known; "not-known" is an honest answer and always says what would settle it. */
export type Verdict = 'holds' | 'fails' | 'not-known';

/** The worst of several verdicts: one failure fails all, one unknown leaves the whole unknown. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fails')) return 'fails';
  if (verdicts.includes('not-known')) return 'not-known';
  return verdicts.length === 0 ? 'not-known' : 'holds';
}

/** A need holds when at least 90 % of the ensemble holds and fails when at most 10 % does (our choice). */
export const ensembleBounds = { holdsFrac: 0.9, failsFrac: 0.1 } as const;

export function verdictFromShare(shareHolding: number): Verdict {
  if (shareHolding >= ensembleBounds.holdsFrac) return 'holds';
  if (shareHolding <= ensembleBounds.failsFrac) return 'fails';
  return 'not-known';
}
