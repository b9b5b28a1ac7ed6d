// May this animal go? Every open question of its own body and record as one finding: clear, hold, vet or not known.
// Leaves out the home, the buyer and the rest of the law (release). Not known holds the animal as hold does.
import type { Species } from '../husbandry/fact.ts';
import type { LawRule, Place } from '../husbandry/law-rule.ts';
import { daysBetween, type IsoDate } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, eventsOf, lastOf } from './event.ts';
import { examinationVerdict } from './examination.ts';
import { nextFeed } from './feeding.ts';
import { massFinding } from './mass-series.ts';
import { miteWatch, quarantineState, treatmentState } from './quarantine.ts';
import { type Reason, reason } from './reason.ts';
import { sloughState } from './slough.ts';

export type FindingAnswer = 'clear' | 'hold' | 'vet' | 'not-known';

export interface FitnessFinding {
  readonly id: 'examination' | 'mass' | 'feeding' | 'slough' | 'quarantine' | 'mites' | 'treatment' | 'settled';
  readonly answer: FindingAnswer;
  readonly reasons: readonly Reason[];
}

export type Fitness = 'fit' | 'hold' | 'vet' | 'gone';

export interface FitnessAnswer {
  readonly answer: Fitness;
  /** Worst first. */
  readonly findings: readonly FitnessFinding[];
}

export interface FitnessInput {
  readonly species: Species;
  readonly events: readonly AnimalEvent[];
  readonly facts: CareFacts;
  /** Rules of law of every place. */
  readonly law: readonly LawRule[];
  readonly place: Place;
  /** Day on which it came here. */
  readonly arrivedOn: IsoDate | null;
  readonly today: IsoDate;
}

const order: readonly FindingAnswer[] = ['vet', 'hold', 'not-known', 'clear'];

export function fitness(input: FitnessInput): FitnessAnswer {
  if (isGone(input.events, input.today)) return { answer: 'gone', findings: [] };
  const findings = [
    examined(input),
    weighed(input),
    fed(input),
    sloughed(input),
    quarantined(input),
    mites(input),
    treated(input),
    settled(input),
  ].sort((a, b) => order.indexOf(a.answer) - order.indexOf(b.answer));
  const worst = findings[0]?.answer ?? 'not-known';
  return { answer: worst === 'vet' ? 'vet' : worst === 'clear' ? 'fit' : 'hold', findings };
}

/** Sold, rehomed or dead, and not returned since. */
export function isGone(events: readonly AnimalEvent[], today: IsoDate): boolean {
  if (eventsOf(events, 'death').some((event) => event.on <= today)) return true;
  const last = eventsOf(events, 'sale')
    .filter((event) => event.on <= today)
    .at(-1);
  return last !== undefined && last.body.outcome !== 'returned';
}

type Finding = (input: FitnessInput) => FitnessFinding;

const examined: Finding = ({ events, facts, today }) => {
  const last = lastOf(events, 'examination');
  if (last === null) return { id: 'examination', answer: 'not-known', reasons: [reason('exam.none')] };
  const verdict = examinationVerdict(facts.examination, last.body.answers);
  const blanks = { on: last.on, n: verdict.seen.length };
  if (verdict.result === 'vet') return { id: 'examination', answer: 'vet', reasons: [reason('exam.vet', blanks)] };
  if (verdict.result === 'hold') return { id: 'examination', answer: 'hold', reasons: [reason('exam.hold', blanks)] };
  if (verdict.result === 'unfinished')
    return { id: 'examination', answer: 'not-known', reasons: [reason('exam.unfinished', blanks)] };
  const days = numberOf(facts.quarantine, 'examinationValidDays');
  const old = daysBetween(last.on, today) > days;
  return old
    ? { id: 'examination', answer: 'not-known', reasons: [reason('exam.old', { on: last.on, days })] }
    : { id: 'examination', answer: 'clear', reasons: [reason('exam.fit', blanks)] };
};

const weighed: Finding = ({ events, facts, today }) => {
  const found = massFinding(events, facts, today);
  const answer = found.verdict === 'fails' ? 'vet' : found.verdict === 'holds' ? 'clear' : 'not-known';
  return { id: 'mass', answer, reasons: found.reasons };
};

const fed: Finding = ({ species, events, facts, today }) => {
  const feed = nextFeed({ species, stage: null, events, facts, movedOn: null, today, southern: false });
  if (feed.broughtUpTwice) return { id: 'feeding', answer: 'vet', reasons: [reason('feed.upTwice')] };
  if (feed.mealFrac < 1) return { id: 'feeding', answer: 'hold', reasons: [reason('feed.notSinceUp')] };
  if (feed.refusalsInARow >= numberOf(facts.feeding, 'refusalsToCheckCount'))
    return { id: 'feeding', answer: 'hold', reasons: [reason('feed.refused', { n: feed.refusalsInARow })] };
  const taken = eventsOf(events, 'feeding').filter((event) => event.body.outcome === 'taken' && event.on <= today);
  const wanted = numberOf(facts.feeding, 'mealsBeforeSaleCount');
  const blanks = { n: taken.length, wanted };
  return taken.length < wanted
    ? { id: 'feeding', answer: 'not-known', reasons: [reason('feed.fewMeals', blanks)] }
    : { id: 'feeding', answer: 'clear', reasons: [reason('feed.feeds', { on: taken.at(-1)?.on ?? '' })] };
};

const sloughed: Finding = ({ events, facts, today }) => {
  const slough = sloughState(events, facts, today);
  const since = slough.since ?? today;
  if (slough.state === 'under-way')
    return { id: 'slough', answer: 'hold', reasons: [reason('slough.underWay', { since })] };
  if (slough.state === 'pieces') return { id: 'slough', answer: 'hold', reasons: [reason('slough.pieces', { since })] };
  if (slough.state === 'just-off')
    return { id: 'slough', answer: 'hold', reasons: [reason('slough.justOff', { since })] };
  return { id: 'slough', answer: 'clear', reasons: [reason('slough.none')] };
};

const quarantined: Finding = ({ events, today }) => {
  const q = quarantineState(events, today);
  if (!q.running) return { id: 'quarantine', answer: 'clear', reasons: [reason('quarantine.none')] };
  const blanks = { done: q.daysDone, wanted: q.daysWanted, overOn: q.overOn ?? '', open: q.testsOpen.join(', ') };
  if (q.mayEnd) return { id: 'quarantine', answer: 'hold', reasons: [reason('quarantine.mayEnd', blanks)] };
  const reasons: Reason[] = [];
  if (q.clearBy !== 'tests' && q.daysDone < q.daysWanted) reasons.push(reason('quarantine.days', blanks));
  if (q.clearBy !== 'time')
    reasons.push(q.testsWanted.length === 0 ? reason('quarantine.noTests') : reason('quarantine.tests', blanks));
  return { id: 'quarantine', answer: 'hold', reasons };
};

const mites: Finding = ({ events, facts, today }) => {
  const watch = miteWatch(events, facts, today);
  const blanks = { on: watch.lastSeenOn ?? '', overOn: watch.overOn ?? '', left: watch.daysLeft };
  return watch.watching
    ? { id: 'mites', answer: 'hold', reasons: [reason('mites.watch', blanks)] }
    : { id: 'mites', answer: 'clear', reasons: [reason(watch.lastSeenOn ? 'mites.over' : 'mites.none', blanks)] };
};

const treated: Finding = ({ events, law, place, today }) => {
  const { running } = treatmentState(events, today);
  if (running.length === 0) return { id: 'treatment', answer: 'clear', reasons: [reason('treatment.none')] };
  const since = running[0]?.since ?? today;
  const rule = law.find((one) => one.effect.kind === 'under-treatment' && one.places.includes(place));
  const answer = rule?.effect.kind === 'under-treatment' ? rule.effect.answer : null;
  const key =
    answer === 'blocked' ? 'treatment.blocked' : answer === 'vet-advice' ? 'treatment.vetAdvice' : 'treatment.noRule';
  return { id: 'treatment', answer: 'hold', reasons: [reason(key, { since, n: running.length })] };
};

const settled: Finding = ({ facts, arrivedOn, today }) => {
  if (arrivedOn === null) return { id: 'settled', answer: 'not-known', reasons: [reason('settled.unknown')] };
  const wanted = numberOf(facts.quarantine, 'settleBeforeSaleDays');
  const days = daysBetween(arrivedOn, today);
  return days < wanted
    ? { id: 'settled', answer: 'hold', reasons: [reason('settled.tooShort', { days, wanted })] }
    : { id: 'settled', answer: 'clear', reasons: [reason('settled.enough', { days })] };
};
