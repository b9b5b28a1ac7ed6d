// What a plan answers: the verdict on every need with its reasons, the two worst days, the dial and the power used.
import type { Told } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import type { DayAnswer, PlaceId, SteadyAnswer } from '../physics/answer.ts';
import type { RoomDay } from '../physics/enclosure.ts';
import type { Fault } from '../shared/fault.ts';
import type { Verdict } from '../shared/verdict.ts';

/** Median and 90 % interval over the ensemble. */
export interface Interval {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

export interface SeasonAnswer {
  readonly roomDay: RoomDay;
  /** The whole day, best-estimate parameters. */
  readonly day: DayAnswer;
  /** Share of the floor within the wanted band in each row of that day, 0..1. */
  readonly floorWantedFrac: readonly number[];
  /** The cold end of that day, night set points; and its warm end, day set points. */
  readonly night: SteadyAnswer;
  readonly noon: SteadyAnswer;
  readonly nightInterval: Readonly<Partial<Record<PlaceId, Interval>>>;
  readonly noonInterval: Readonly<Partial<Record<PlaceId, Interval>>>;
}

/** Halfway between winter and summer, where a heater that is flat out in winter may reach its aim. */
export interface MidSeasonAnswer {
  readonly noon: SteadyAnswer;
  readonly night: SteadyAnswer;
  readonly noonInterval: Readonly<Partial<Record<PlaceId, Interval>>>;
  readonly nightInterval: Readonly<Partial<Record<PlaceId, Interval>>>;
}

/** What is sprayed in a day, and what a floor that is wet all over dries: what is left stays. */
export interface SprayAnswer {
  readonly sprayedGPerDay: number;
  readonly driesWinterGPerDay: Interval;
  readonly driesSummerGPerDay: Interval;
}

export interface DialAdvice {
  readonly thermostatId: string;
  readonly setDayC: number;
  readonly setNightC: number;
  /** Where the dial should stand for the wanted basking surface; null when no setting reaches it. */
  readonly advisedDayC: Interval | null;
  /** Whether the heater, flat out, reaches the wanted basking surface at all. */
  readonly reachesWanted: boolean;
  readonly expectBaskingC: Interval;
  readonly expectProbeC: Interval;
  readonly say: string;
  /** The same without a language; absent in answers kept from before. */
  readonly told?: Told;
}

export interface PlanAnswer {
  readonly verdict: Verdict;
  readonly headline: string;
  readonly needs: readonly NeedVerdict[];
  readonly winter: SeasonAnswer;
  readonly summer: SeasonAnswer;
  /** Not there in plans that were kept before mid-season was judged. */
  readonly mid?: MidSeasonAnswer;
  /** Null where nobody sprays; not there in plans that were kept before it was judged. */
  readonly spray?: SprayAnswer | null;
  readonly dial: readonly DialAdvice[];
  readonly kWhPerDayWinter: number;
  readonly kWhPerDaySummer: number;
  readonly kWhPerYear: Interval;
  readonly members: number;
  readonly seed: number;
  readonly notes: readonly Fault[];
}
