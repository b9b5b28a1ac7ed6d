// In which order kits are offered. First what holds, then what is not known to, then what fails. Among those that hold:
// thermostats that suit well before those that do at a pinch, then the lower cost over the years. Among the others: the
// better chance in the worse season, then the same. The order is our choice; chance comes first where there is doubt.
import type { Verdict } from '../../shared/verdict.ts';
import type { Bounds } from './tally.ts';

export interface RankKey {
  readonly verdict: Verdict;
  readonly chanceFrac: number;
  readonly fit: 'good' | 'allowed';
  readonly cost: number;
  /** Last resort, so that equal kits keep one order. */
  readonly id: string;
}

const verdictOrder: Readonly<Record<Verdict, number>> = { holds: 0, 'not-known': 1, fails: 2 };
const fitOrder = { good: 0, allowed: 1 } as const;

/** Negative when a comes first. */
export function compareKeys(a: RankKey, b: RankKey): number {
  const verdict = verdictOrder[a.verdict] - verdictOrder[b.verdict];
  if (verdict !== 0) return verdict;
  const chance = a.verdict === 'holds' ? 0 : b.chanceFrac - a.chanceFrac;
  if (chance !== 0) return chance;
  const fit = fitOrder[a.fit] - fitOrder[b.fit];
  if (fit !== 0) return fit;
  return a.cost - b.cost || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** @param early share of the first few versions, which alone orders kits that fail: they are not tried to the end */
export const rankKey = (
  kit: { readonly id: string; readonly fit: 'good' | 'allowed'; readonly cost: number },
  bounds: Bounds,
  earlyFrac: number,
): RankKey => ({
  verdict: bounds.verdict,
  chanceFrac: bounds.verdict === 'fails' ? earlyFrac : bounds.chanceFrac,
  fit: kit.fit,
  cost: kit.cost,
  id: kit.id,
});
