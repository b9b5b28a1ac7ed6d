// In which order kits are offered. First what holds, then what is not known to, then what fails. Among those that hold:
// those whose needs all hold together in nine versions of ten, then thermostats that suit well before those that do at a pinch, then the lower cost over the years. Among the others: the
// better chance in the worst season, then the same; what fails, by how far it misses. The order is our choice.
import { ensembleBounds, type Verdict } from '../../shared/verdict.ts';
import type { Bounds } from './tally.ts';

export interface RankKey {
  readonly verdict: Verdict;
  readonly chanceFrac: number;
  /** Of kits that fail: by how much, in judged spreads. */
  readonly shortfall: number;
  readonly fit: 'good' | 'allowed';
  readonly cost: number;
  /** Last resort, so that equal kits keep one order. */
  readonly id: string;
}

const verdictOrder: Readonly<Record<Verdict, number>> = { holds: 0, 'not-known': 1, fails: 2 };
const fitOrder = { good: 0, allowed: 1 } as const;

/** Every need may hold in nine versions of ten, and yet not all of them in the same nine. */
const isSure = (key: RankKey): boolean => key.chanceFrac >= ensembleBounds.holdsFrac;

/** Negative when a comes first. */
export function compareKeys(a: RankKey, b: RankKey): number {
  const verdict = verdictOrder[a.verdict] - verdictOrder[b.verdict];
  if (verdict !== 0) return verdict;
  const sure = a.verdict === 'holds' ? Number(isSure(b)) - Number(isSure(a)) : 0;
  if (sure !== 0) return sure;
  const chance = a.verdict === 'not-known' ? b.chanceFrac - a.chanceFrac : 0;
  if (chance !== 0) return chance;
  const miss = a.verdict === 'fails' ? a.shortfall - b.shortfall : 0;
  if (Math.abs(miss) > 1e-9) return miss;
  const fit = fitOrder[a.fit] - fitOrder[b.fit];
  if (fit !== 0) return fit;
  return a.cost - b.cost || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** @param shortfall of the best-estimate version, which alone orders kits that fail: they are not tried to the end */
export const rankKey = (
  kit: { readonly id: string; readonly fit: 'good' | 'allowed'; readonly cost: number },
  bounds: Bounds,
  shortfall: number,
): RankKey => ({
  verdict: bounds.verdict,
  chanceFrac: bounds.chanceFrac,
  shortfall,
  fit: kit.fit,
  cost: kit.cost,
  id: kit.id,
});
