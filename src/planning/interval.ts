// Median and 90 % interval of a list of numbers, by linear interpolation between ordered values.
import type { Interval } from './plan-answer.ts';

export function intervalOf(values: readonly number[]): Interval {
  const sorted = [...values].sort((a, b) => a - b);
  return { low: at(sorted, 0.05), median: at(sorted, 0.5), high: at(sorted, 0.95) };
}

function at(sorted: readonly number[], p: number): number {
  if (sorted.length === 0) return Number.NaN;
  const x = p * (sorted.length - 1);
  const i = Math.floor(x);
  const next = sorted[Math.min(sorted.length - 1, i + 1)]!;
  return sorted[i]! + (x - i) * (next - sorted[i]!);
}
