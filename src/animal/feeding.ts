// Which prey, how much of it and when next? Also: what do refusals and a meal brought up mean for the next one?
// Leaves out the prey stock of the shop (prey-stock.ts) and thawing.
import type { Fact, Species } from '../husbandry/fact.ts';
import type { Prey } from '../husbandry/fact-tables.ts';
import { factOf, rangeOf, rangeOfFact } from '../husbandry/species-facts.ts';
import type { LifeStage } from '../physics/enclosure.ts';
import { addDays, daysBetween, type IsoDate, monthOf } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, eventsOf } from './event.ts';
import { type Reason, reason } from './reason.ts';
import { sloughState } from './slough.ts';

export interface PreyChoice {
  readonly preyId: string;
  readonly count: number;
  readonly lowG: number;
  readonly highG: number;
}

export interface MealAdvice {
  /** Mass of one meal [g]. */
  readonly lowG: number;
  readonly highG: number;
  /** Share and its source, as the species record holds it. */
  readonly share: Fact;
  /** Prey of the shelf that fits, least number of pieces first. */
  readonly prey: readonly PreyChoice[];
  /** Widest prey [mm], null when the head width is not known. */
  readonly widestMm: number | null;
}

/** Meal for an animal of this mass. Null when the species record has no share for the stage.
 *  @param massG [g]  @param mealFrac share of a usual meal, 1 = whole */
export function mealAdvice(
  species: Species,
  stage: LifeStage,
  massG: number,
  prey: readonly Prey[],
  facts: CareFacts,
  mealFrac = 1,
): MealAdvice | null {
  const share = rangeOf(species, stage, 'preySharePct');
  const fact = factOf(species, stage, 'preySharePct');
  if (!share || !fact) return null;
  const lowG = (massG * share.low * mealFrac) / 100;
  const highG = (massG * share.high * mealFrac) / 100;
  const head = rangeOf(species, stage, 'headWidthMm');
  const widestMm = head ? head.high * numberOf(facts.feeding, 'preyWidthShareFrac') : null;
  const eaten = preyOf(species.id, prey, facts);
  return { lowG, highG, share: fact, prey: preyThatFits(eaten, lowG, highG), widestMm };
}

/** Prey of the kinds that this species is offered. Source: data/feeding.json, common practice. */
function preyOf(speciesId: string, prey: readonly Prey[], facts: CareFacts): readonly Prey[] {
  const fact = facts.feeding[`preyKinds.${speciesId}`] ?? facts.feeding.preyKinds;
  const kinds = fact?.values ?? [];
  return prey.filter((one) => kinds.includes(one.animal));
}

/** Up to four pieces (our choice): more means that a larger class should be bought. */
export function preyThatFits(prey: readonly Prey[], lowG: number, highG: number): readonly PreyChoice[] {
  const fits = prey.flatMap((row): readonly PreyChoice[] => {
    const mass = rangeOfFact(row.massG);
    if (!mass) return [];
    for (let count = 1; count <= 4; count++) {
      if (mass.low * count <= highG && mass.high * count >= lowG)
        return [{ preyId: row.id, count, lowG: mass.low * count, highG: mass.high * count }];
    }
    return [];
  });
  return fits.sort((a, b) => a.count - b.count || a.lowG - b.lowG);
}

export type FeedingState = 'due' | 'overdue' | 'later' | 'wait' | 'not-known';

export interface NextFeed {
  readonly state: FeedingState;
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
  /** Share of a usual meal, smaller after one was brought up. */
  readonly mealFrac: number;
  readonly refusalsInARow: number;
  /** Two meals brought up within the time of the rule. */
  readonly broughtUpTwice: boolean;
  readonly reasons: readonly Reason[];
}

export interface FeedingSituation {
  readonly species: Species;
  readonly stage: LifeStage | null;
  readonly events: readonly AnimalEvent[];
  readonly facts: CareFacts;
  /** Day on which it came to where it is now. */
  readonly movedOn: IsoDate | null;
  readonly today: IsoDate;
  readonly southern: boolean;
}

/** When it is fed next, and what stands against it. Reasons against come first. */
export function nextFeed(situation: FeedingSituation): NextFeed {
  const { events, facts, today } = situation;
  const feedings = eventsOf(events, 'feeding').filter((event) => event.on <= today);
  const refusals = refusalsInARow(feedings.map((event) => event.body.outcome));
  const ups = feedings.filter((event) => event.body.outcome === 'regurgitated').map((event) => event.on);
  const twiceDays = numberOf(facts.feeding, 'regurgitationTwiceDays');
  const [lastUp, upBefore] = [ups.at(-1), ups.at(-2)];
  const broughtUpTwice =
    lastUp !== undefined &&
    upBefore !== undefined &&
    daysBetween(upBefore, lastUp) <= twiceDays &&
    daysBetween(lastUp, today) <= twiceDays;
  const reasons: Reason[] = [];
  let waitUntil: IsoDate | null = null;
  const wait = (until: IsoDate, why: Reason) => {
    if (until <= today) return;
    if (waitUntil === null || until > waitUntil) waitUntil = until;
    reasons.push(why);
  };
  if (lastUp !== undefined) {
    const until = addDays(lastUp, numberOf(facts.feeding, 'regurgitationRestDays'));
    wait(until, reason('feed.afterUp', { until }));
  }
  if (situation.movedOn !== null) {
    const until = addDays(situation.movedOn, numberOf(facts.feeding, 'restAfterMoveDays'));
    wait(until, reason('feed.afterMove', { until }));
  }
  const slough = sloughState(events, facts, today);
  if (slough.state === 'under-way') reasons.push(reason('feed.slough', { since: slough.since ?? today }));
  if (refusals >= numberOf(facts.feeding, 'refusalsToCheckCount'))
    reasons.push(reason('feed.refused', { n: refusals }));
  if (refusals > 0 && isWinter(situation)) reasons.push(reason('feed.winter'));
  if (broughtUpTwice) reasons.unshift(reason('feed.upTwice'));
  const keptSince = feedings.filter(
    (event) => event.body.outcome === 'taken' && (lastUp === undefined || event.on > lastUp),
  );
  const mealFrac =
    lastUp !== undefined && keptSince.length === 0 ? numberOf(facts.feeding, 'regurgitationMealFrac') : 1;
  const window = feedWindow(situation, feedings.findLast((event) => event.body.outcome === 'taken')?.on ?? null);
  const base = { mealFrac, refusalsInARow: refusals, broughtUpTwice };
  if (broughtUpTwice) return { ...base, state: 'wait', from: null, to: null, reasons };
  if (waitUntil !== null) return { ...base, state: 'wait', from: waitUntil, to: null, reasons };
  if (slough.state === 'under-way') return { ...base, state: 'wait', from: null, to: null, reasons };
  if (window === null)
    return { ...base, state: 'not-known', from: null, to: null, reasons: [...reasons, reason('feed.noStage')] };
  const state = today < window.from ? 'later' : today > window.to ? 'overdue' : 'due';
  return { ...base, state, ...window, reasons };
}

function refusalsInARow(outcomes: readonly string[]): number {
  const eaten = outcomes.findLastIndex((outcome) => outcome !== 'refused');
  return outcomes.length - 1 - eaten;
}

/** Interval of stage and species after the last meal kept; today when there was none. */
function feedWindow(s: FeedingSituation, lastTaken: IsoDate | null): { from: IsoDate; to: IsoDate } | null {
  const interval = s.stage === null ? null : rangeOf(s.species, s.stage, 'feedIntervalDays');
  if (interval === null) return null;
  if (lastTaken === null) return { from: s.today, to: addDays(s.today, interval.high) };
  return { from: addDays(lastTaken, interval.low), to: addDays(lastTaken, interval.high) };
}

function isWinter({ facts, today, southern }: FeedingSituation): boolean {
  const months = (facts.feeding.winterMonths?.values ?? []).map(Number);
  const month = southern ? ((monthOf(today) + 5) % 12) + 1 : monthOf(today);
  return months.includes(month);
}
