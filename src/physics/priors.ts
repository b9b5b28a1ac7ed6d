// What is believed about an uncertain quantity before any reading: its range, its shape, its source.
// Rows of data/priors.json. Leaves out how beliefs are drawn (planning) and how readings change them (proving).
import { erf } from './formulas/error-function.ts';
import type { ParameterName } from './parameters.ts';

/** One row of data/priors.json. low and high hold 90 % of the belief. */
export interface Prior {
  readonly name: ParameterName;
  readonly shape: 'normal' | 'lognormal' | 'uniform';
  readonly best: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly at: string;
  readonly read: string;
  readonly why: string;
}

export type Priors = readonly Prior[];

/** Standard deviations between the middle of a belief and either end of its 90 % range. */
const ninetyPctSd = 1.645;
/** Normal shapes are cut here, so that no drawn value is absurd; our choice. */
const mostSd = 2.5;

/** Value of a prior at a standard normal score: 0 is the middle of the belief, +-1.645 the ends of its 90 % range. */
export function priorValueAt(prior: Prior, score: number): number {
  return prior.shape === 'uniform' ? quantile(prior, normalShare(score)) : normalShape(prior, score);
}

/** Share of a standard normal belief below a score. Source: ABRAMOWITZ 26.2.29. */
export const normalShare = (score: number): number => 0.5 * (1 + erf(score / Math.SQRT2));

/** Value of a prior below which a share p of the belief lies, p in (0, 1). */
export function quantile(prior: Prior, p: number): number {
  if (prior.shape !== 'uniform') return normalShape(prior, normalQuantile(p));
  const width = (prior.high - prior.low) / 0.9;
  const middle = (prior.high + prior.low) / 2;
  return middle + (p - 0.5) * width;
}

function normalShape(prior: Prior, sd: number): number {
  const z = Math.max(-mostSd, Math.min(mostSd, sd));
  if (prior.shape === 'lognormal') {
    const up = Math.log(prior.high / prior.best) / ninetyPctSd;
    const down = Math.log(prior.best / prior.low) / ninetyPctSd;
    return prior.best * Math.exp(z * (z > 0 ? up : down));
  }
  return prior.best + z * ((z > 0 ? prior.high - prior.best : prior.best - prior.low) / ninetyPctSd);
}

/** Standard normal quantile by rational fit in three pieces, relative error about 1e-9. Source: ACKLAM (memory). */
export function normalQuantile(p: number): number {
  const a = [
    -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239,
  ];
  const b = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572];
  const c = [
    -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ];
  const d = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416];
  const q = Math.max(1e-12, Math.min(1 - 1e-12, p));
  const poly = (k: readonly number[], x: number) => k.reduce((s, v) => s * x + v, 0);
  if (q < 0.02425 || q > 1 - 0.02425) {
    const t = Math.sqrt(-2 * Math.log(q < 0.5 ? q : 1 - q));
    const v = poly(c, t) / (poly(d, t) * t + 1);
    return q < 0.5 ? v : -v;
  }
  const r = q - 0.5;
  return (poly(a, r * r) * r) / (poly(b, r * r) * r * r + 1);
}
