// What the sheet and its two workers say to each other. One worker answers steady states at once; the other takes
// its time over days and the ensemble and is ended when something newer is asked.
import type { ClimateNeeds, SourcedRange } from '../../husbandry/climate.ts';
import type { Source } from '../../husbandry/fact.ts';
import type { Caution } from '../../husbandry/fact-tables.ts';
import type { ReadMark } from '../../husbandry/need.ts';
import type { ShopValue } from '../../husbandry/shop-value.ts';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { DayAnswer, SteadyAnswer } from '../../physics/answer.ts';
import type { Enclosure, LifeStage } from '../../physics/enclosure.ts';
import type { PlanAnswer } from '../../planning/plan-answer.ts';
import type { Fault } from '../../shared/fault.ts';

/** What the sheet needs to know of one species. */
export interface SpeciesBrief {
  readonly id: string;
  readonly commonName: string;
  readonly scientificName: string;
  readonly adultLengthCm: SourcedRange | null;
  readonly climate: Readonly<Record<LifeStage, ClimateNeeds | null>>;
}

/** A space standard that can be chosen. */
export interface StandardBrief {
  readonly id: string;
  readonly name: string;
  /** Null when written for any snake. */
  readonly speciesIds: readonly string[] | null;
  readonly source: string;
  readonly read: ReadMark;
}

export interface FactsBrief {
  readonly standards: readonly StandardBrief[];
  readonly species: readonly SpeciesBrief[];
  readonly sources: Readonly<Record<string, Source>>;
  readonly cautions: readonly Caution[];
}

/** The room at one moment. */
export interface Conditions {
  readonly roomC: number;
  readonly roomRhPct: number;
  readonly sunWPerM2: number;
  readonly isDay: boolean;
}

export type SteadyRequest =
  | { readonly kind: 'facts'; readonly seq: number; readonly shopValues: readonly ShopValue[] }
  | {
      readonly kind: 'steady';
      readonly seq: number;
      readonly enclosure: Enclosure;
      readonly conditions: Conditions;
      readonly shopValues: readonly ShopValue[];
    };

export type SteadyReply =
  | { readonly kind: 'facts'; readonly seq: number; readonly facts: FactsBrief }
  | { readonly kind: 'steady'; readonly seq: number; readonly answer: SteadyAnswer; readonly tookMs: number }
  | { readonly kind: 'failed'; readonly seq: number; readonly say: string };

export interface PlanRequest {
  readonly enclosure: Enclosure;
  /** The standard that the person named; undefined leaves it to the shop. */
  readonly standardId: string | undefined;
  readonly shopValues: readonly ShopValue[];
  readonly members: number;
  readonly seed: number;
}

export type PlanReply =
  | { readonly kind: 'days'; readonly winter: DayAnswer; readonly summer: DayAnswer; readonly tookMs: number }
  | { readonly kind: 'plan'; readonly plan: PlanAnswer; readonly used: UsedShopValues; readonly tookMs: number }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] }
  | { readonly kind: 'failed'; readonly say: string };
