// What an animal needs of its home, and what a verdict on one need looks like.
import type { Verdict } from '../shared/verdict.ts';
import type { ToldNeed } from './coded.ts';
import type { OwnMark } from './shop-value.ts';

/** How a number was come by. "memory" covers common practice; both must be shown as such. */
export type ReadMark = 'page' | 'memory' | 'measured';

/** A sourced number or range of data/: unit in the key that holds it. */
export interface Sourced {
  readonly value?: number | string | readonly string[] | null;
  readonly low?: number;
  readonly high?: number;
  /** Key of data/sources.json. */
  readonly source: string;
  /** Where in the source: page, table, section; "" when the whole is meant. */
  readonly at: string;
  readonly read: ReadMark;
  readonly note?: string;
  /** Set when a shop's own value stands here in place of the source's. */
  readonly own?: OwnMark;
}

/** One answered need. Every number in it carries its unit in words or in the name. */
export interface NeedVerdict {
  /** Stable id, e.g. "basking-surface-winter". */
  readonly id: string;
  /** heat | moisture | space | safety | security | comfort. */
  readonly group: 'heat' | 'moisture' | 'space' | 'safety' | 'security' | 'comfort';
  readonly title: string;
  readonly verdict: Verdict;
  /** What is wanted, e.g. "30 to 32 °C". */
  readonly wanted: string;
  /** What the model says or what was entered, e.g. "28.4 °C (27.1 to 29.9)". */
  readonly found: string;
  /** Plain reasons, most telling first; never empty. */
  readonly reasons: readonly string[];
  /** What to do; empty when it holds. */
  readonly fixes: readonly string[];
  /** Which reading would settle a "not known". */
  readonly settledBy?: string;
  /** Share of the ensemble that holds, 0..1, when the need was judged by simulation. */
  readonly shareHolding?: number;
  /** The same without a language. */
  readonly told?: ToldNeed;
  readonly source: string;
  readonly read: ReadMark;
  /** Set when the shop's own value decided in place of the source's. */
  readonly own?: OwnMark;
}
