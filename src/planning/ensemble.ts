// Many possible versions of one box: parameter sets drawn from the priors, the same for the same seed.
// Latin hypercube, so that a few members already cover every parameter's range. Leaves out correlations.
import { type Prior, type Priors, quantile } from '../physics/priors.ts';
import { bestParameters, type ParameterName, type Parameters, parameterNames } from '../physics/simulate.ts';
import { seededUniform } from '../shared/seeded.ts';

export { normalQuantile, type Prior, type Priors, quantile } from '../physics/priors.ts';

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
