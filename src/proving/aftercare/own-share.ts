// How many of the shop's own animals died or came back, of how many, and how sure is that share?
import { numberOf } from '../../animal/care-facts.ts';
import type { FactTable } from '../../husbandry/fact.ts';

export interface OwnShare {
  readonly count: number;
  /** Released animals that were heard of again: only they can be counted. */
  readonly followed: number;
  readonly released: number;
  /** Null when there are too few to say. */
  readonly share: { readonly middle: number; readonly low: number; readonly high: number } | null;
  readonly fewest: number;
}

/** 95 % of a normal distribution lie within so many standard deviations. */
const z = 1.959964;

/** Interval of a share, 95 %.
 *  @param count of 0..of  @returns 0..1  Source: WILSON1927 (from memory). Checks: own-share.test.ts. */
export function wilsonInterval(count: number, of: number): { readonly low: number; readonly high: number } {
  const p = count / of;
  const square = (z * z) / of;
  const middle = (p + square / 2) / (1 + square);
  const half = (z * Math.sqrt((p * (1 - p)) / of + square / (4 * of))) / (1 + square);
  return { low: count === 0 ? 0 : middle - half, high: count === of ? 1 : middle + half };
}

export function ownShare(count: number, followed: number, released: number, facts: FactTable): OwnShare {
  const fewest = numberOf(facts, 'fewestFollowedCount');
  const base = { count, followed, released, fewest };
  if (followed < fewest) return { ...base, share: null };
  return { ...base, share: { middle: count / followed, ...wilsonInterval(count, followed) } };
}
