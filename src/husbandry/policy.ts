// How a branch may set itself up: rows of data/policies.json with what is usual, what is possible, and where it counts.
// Leaves out who may set one (desk/set-overlay.ts).
import type { Fact } from './fact.ts';
import { type CheckContext, dataFault, sourceFaults } from './fact-check.ts';
import type { Rows } from './facts-kit.ts';
import { wordFaults } from './facts-tables.ts';
import type { Sourced } from './need.ts';

export type PolicyUse = 'plan' | 'proof';

export interface Policy extends Sourced {
  readonly id: string;
  readonly title: string;
  /** number: low to high, in the unit named; standard: an id of standards.json. */
  readonly kind: 'number' | 'standard';
  readonly unit: string;
  readonly leastAllowed: number | null;
  readonly mostAllowed: number | null;
  readonly whole: boolean;
  readonly usedIn: readonly PolicyUse[];
}

type Row = Readonly<Record<string, unknown>>;

export function policyFrom(ctx: CheckContext, at: string, row: Row): Rows<Policy> {
  const faults = [
    ...wordFaults(ctx, at, row, ['title'], { kind: ['number', 'standard'], usedIn: ['plan', 'proof'] }),
    ...sourceFaults(ctx, at, row),
  ];
  const { leastAllowed: least, mostAllowed: most, value } = row;
  const isNumber = row.kind === 'number';
  const inOrder = typeof least === 'number' && typeof most === 'number' && least < most;
  if (isNumber && !inOrder)
    faults.push(dataFault(ctx, at, 'DATA_FORM', least, 'leastAllowed below mostAllowed', 'The limits are missing.'));
  if (isNumber && inOrder && !(typeof value === 'number' && value >= least && value <= most))
    faults.push(dataFault(ctx, at, 'DATA_RANGE', value, `${least} to ${most}`, 'The usual value cannot be.'));
  if (isNumber && typeof row.unit !== 'string')
    faults.push(dataFault(ctx, `${at}.unit`, 'DATA_UNIT', row.unit, 'a unit', 'The policy names no unit.'));
  if (typeof row.whole !== 'boolean')
    faults.push(dataFault(ctx, `${at}.whole`, 'DATA_FORM', row.whole, 'true or false', 'Whole or not is missing.'));
  return { rows: faults.length > 0 ? [] : [row as unknown as Policy], faults };
}

/** What is wrong with a value for this policy, as a text of what is allowed; null when nothing is. */
export function policyRefusal(policy: Policy, value: unknown, standardIds: readonly string[]): string | null {
  if (policy.kind === 'standard') return standardIds.includes(String(value)) ? null : standardIds.join(', ');
  const { leastAllowed: least, mostAllowed: most, whole, unit } = policy;
  const fits =
    typeof value === 'number' &&
    value >= (least ?? value) &&
    value <= (most ?? value) &&
    (!whole || Number.isInteger(value));
  return fits ? null : `${whole ? 'a whole number ' : ''}from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}`;
}

/** The number of a policy with its basis; the fallback when the row is missing. */
export function policyFact(policies: Readonly<Record<string, Policy>>, id: string, fallback: number) {
  const row = policies[id];
  const value = typeof row?.value === 'number' ? row.value : fallback;
  const basis: Pick<Fact, 'source' | 'read' | 'own'> = row ?? { source: 'OUR-CHOICE', read: 'memory' };
  return { value, basis };
}
