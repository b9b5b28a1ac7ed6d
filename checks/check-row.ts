// What one comparison with the outside world is, and when it passes.

/** published: a printed value; measured: a reading of a real thing; cross: another program's answer;
 *  two-methods: our closed form against a second way to the same number; self-consistency: sums, balances, grids;
 *  common-practice: what the trade reports, without a source;
 *  unit-agreement: two codes agree on a formula, which does not show that the formula is right. */
export const checkKinds = [
  'published',
  'measured',
  'cross',
  'two-methods',
  'self-consistency',
  'common-practice',
  'unit-agreement',
] as const;
export type CheckKind = (typeof checkKinds)[number];

/** How the expected value was come by. */
export type Provenance = 'read' | 'memory' | 'derived';

/** Passes when |ours - expected| <= max(abs, rel |expected|). */
export interface Tolerance {
  readonly abs?: number;
  readonly rel?: number;
}

export interface CheckRow {
  /** Stable id, e.g. "P-030". Several rows may share one id; `quantity` tells them apart. */
  readonly id: string;
  readonly title: string;
  readonly quantity: string;
  readonly kind: CheckKind;
  /** Key of checks/sources.json, and where in it. */
  readonly source: string;
  readonly at: string;
  readonly provenance: Provenance;
  /** A value, or a band that ours must fall into. Never from our own code. */
  readonly expected: number | { readonly low: number; readonly high: number };
  readonly ours: number;
  readonly unit: string;
  readonly tolerance: Tolerance;
  /** Why the tolerance is what it is. */
  readonly why: string;
}

/** A disagreement that was looked into and is left standing; printed with its reason on every run. */
export interface KnownDisagreement {
  readonly id: string;
  readonly quantity: string;
  readonly reason: string;
}

export type CheckVerdict = 'agrees' | 'disagrees' | 'known disagreement';

export interface JudgedRow extends CheckRow {
  readonly verdict: CheckVerdict;
  readonly limits: { readonly low: number; readonly high: number };
  readonly reason?: string;
}

/** Lowest and highest value that passes. */
export function limitsOf(row: CheckRow): { low: number; high: number } {
  const band = typeof row.expected === 'number' ? { low: row.expected, high: row.expected } : row.expected;
  const reach = (value: number) => Math.max(row.tolerance.abs ?? 0, (row.tolerance.rel ?? 0) * Math.abs(value));
  return { low: band.low - reach(band.low), high: band.high + reach(band.high) };
}

/** Verdict of one row. A value that is no number disagrees; a listed disagreement that has healed is reported as agreeing. */
export function judge(row: CheckRow, known: readonly KnownDisagreement[]): JudgedRow {
  const limits = limitsOf(row);
  if (row.ours >= limits.low && row.ours <= limits.high) return { ...row, verdict: 'agrees', limits };
  const listed = known.find((one) => one.id === row.id && one.quantity === row.quantity);
  return listed
    ? { ...row, verdict: 'known disagreement', limits, reason: listed.reason }
    : { ...row, verdict: 'disagrees', limits };
}
