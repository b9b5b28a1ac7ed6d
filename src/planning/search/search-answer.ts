// What a search answers: the kits in order, each with what it does and costs; why cheaper ones fell out; what was refused
// and what was not tried to the end; and when nothing holds, that it is so.
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import type { WholeLifeCost } from '../cost/whole-life-cost.ts';
import type { DialCard } from '../dial/dial-card.ts';
import type { BoxChange } from '../kit/box-variant.ts';
import type { HeaterSpot } from '../kit/heater-spot.ts';
import type { Refusal } from '../kit/kit-candidates.ts';
import type { KitHeart } from '../kit/kit-enclosure.ts';
import type { KitPart } from '../kit/kit-part.ts';
import type { Interval } from '../plan-answer.ts';
import type { SearchWork } from './kit-search.ts';

export interface WeakestNeed {
  readonly id: string;
  readonly title: string;
  /** Share of the versions tried in which it holds. */
  readonly shareHolding: number;
  /** Middle of the versions: how far from the limit [K, or points of humidity]; negative = missed. */
  readonly margin: number;
  readonly unit: 'K' | '%';
}

export interface KitChoice {
  readonly id: string;
  readonly name: string;
  readonly boxId: string;
  readonly changes: readonly BoxChange[];
  readonly spot: HeaterSpot;
  readonly verdict: Verdict;
  /** Share of the versions in which every need of climate holds in the worst season. */
  readonly chanceFrac: number;
  readonly weakest: WeakestNeed;
  readonly needs: readonly NeedVerdict[];
  readonly fit: 'good' | 'allowed';
  readonly heart: KitHeart;
  readonly parts: readonly KitPart[];
  readonly dial: DialCard;
  readonly cost: WholeLifeCost;
  readonly kWhPerYear: Interval;
  /** Of the best-estimate version, which the cost of the power is worked out from. */
  readonly kWhPerYearBest: number;
  /** Share of its power in use on the winter day and on the coldest night. */
  readonly dayDutyFrac: Interval;
  readonly nightDutyFrac: Interval;
  /** Power that would hold the wanted basking surface on the winter day [W]; beyond the heater's own when it is too weak. */
  readonly neededW: Interval;
  /** The home with this kit in it, dials set: ready to be planned, rehearsed and drawn. */
  readonly enclosure: Enclosure;
  /** Versions tried, and whether more could change the verdict. */
  readonly versions: number;
  readonly certain: boolean;
}

/** A kit that would have cost less than the first choice. */
export interface FellOut {
  readonly name: string;
  readonly heart: KitHeart;
  readonly boxId: string;
  readonly changes: readonly BoxChange[];
  readonly spot: HeaterSpot;
  readonly cost: number;
  readonly verdict: Verdict;
  /** In English. */
  readonly why: string;
  /** The need that does not hold; null: only its thermostat suits the heater at a pinch. */
  readonly need: NeedVerdict | null;
  readonly versions: number;
}

export interface SearchAnswer {
  /** false while versions are still being tried. */
  readonly settled: boolean;
  readonly choices: readonly KitChoice[];
  readonly fellOut: readonly FellOut[];
  readonly fellOutCount: number;
  readonly kitsTried: number;
  readonly refusals: readonly Refusal[];
  readonly kitsRefused: number;
  /** Set when no kit holds: why, in one sentence a person can act on. */
  readonly none: string | null;
  /** The need that the nearest kit fails, or is not sure of; null when one holds or none may be used. */
  readonly noneNeed: NeedVerdict | null;
  /** Needs of the home that no kit changes and that do not hold. */
  readonly homeNeeds: readonly NeedVerdict[];
  readonly currency: string;
  readonly pricesInvented: boolean;
  readonly tariffPerKWh: number;
  readonly years: number;
  readonly members: number;
  readonly seed: number;
  /** Versions solved, and those that were not needed because nothing could have changed. */
  readonly work: SearchWork & { readonly skipped: number };
}

export interface SearchProgress {
  readonly doneFrac: number;
  /** Null until there is something to show. */
  readonly answer: SearchAnswer | null;
}
