// Many possible versions of one box: parameter sets drawn from the priors, the same for the same seed.
// Latin hypercube, so that a few members already cover every parameter's range. Leaves out correlations.
import { bestParameters, type ParameterName, type Parameters, parameterNames } from '../physics/simulate.ts';
import { seededUniform } from '../shared/seeded.ts';

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

/** Draw members; the first is always the best estimate.
 *  @param members 1..1024  @param seed any integer  */
export function drawMembers(priors: Priors, members: number, seed: number): Parameters[] {
  const uniform = seededUniform(seed);
  const rows = new Map(priors.map((p) => [p.name, p]));
  const draws = members - 1;
  const columns = new Map<ParameterName, number[]>();
  for (const name of parameterNames) {
    const order = Array.from({ length: draws }, (_, i) => i);
    for (let i = draws - 1; i > 0; i--) {
      const j = Math.floor(uniform() * (i + 1));
      [order[i], order[j]] = [order[j]!, order[i]!];
    }
    columns.set(
      name,
      order.map((o) => (o + uniform()) / draws),
    );
  }
  return Array.from({ length: members }, (_, m) => {
    if (m === 0) return bestOf(rows);
    const set: Record<string, number> = { ...bestParameters };
    for (const name of parameterNames) {
      const row = rows.get(name);
      if (row) set[name] = quantile(row, columns.get(name)![m - 1]!);
    }
    return set as unknown as Parameters;
  });
}

function bestOf(rows: ReadonlyMap<ParameterName, Prior>): Parameters {
  const set: Record<string, number> = { ...bestParameters };
  for (const [name, row] of rows) set[name] = row.best;
  return set as unknown as Parameters;
}

/** Value of a prior below which a share p of the belief lies. The 90 % range sets its width; normal shapes are cut at
 *  two and a half standard deviations, so that no member is absurd. */
export function quantile(prior: Prior, p: number): number {
  if (prior.shape === 'uniform') {
    const width = (prior.high - prior.low) / 0.9;
    const middle = (prior.high + prior.low) / 2;
    return middle + (p - 0.5) * width;
  }
  const z = Math.max(-2.5, Math.min(2.5, normalQuantile(p)));
  if (prior.shape === 'lognormal') {
    const up = Math.log(prior.high / prior.best) / 1.645;
    const down = Math.log(prior.best / prior.low) / 1.645;
    return prior.best * Math.exp(z * (z > 0 ? up : down));
  }
  return prior.best + z * ((z > 0 ? prior.high - prior.best : prior.best - prior.low) / 1.645);
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
