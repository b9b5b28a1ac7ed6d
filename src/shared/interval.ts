// Median and 90 % interval of a list of numbers, by linear interpolation between ordered values.

export interface Spread {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** The middle and the ends of the middle 90 %; NaN for an empty list. */
export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  return { low: shareValue(sorted, 0.05), median: shareValue(sorted, 0.5), high: shareValue(sorted, 0.95) };
}

/** Value below which a share p of ordered values lies. @param sorted ascending */
export function shareValue(sorted: readonly number[], p: number): number {
  if (sorted.length === 0) return Number.NaN;
  const x = p * (sorted.length - 1);
  const i = Math.floor(x);
  const next = sorted[Math.min(sorted.length - 1, i + 1)]!;
  return sorted[i]! + (x - i) * (next - sorted[i]!);
}
