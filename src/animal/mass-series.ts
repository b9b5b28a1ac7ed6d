// Is the animal losing mass against its own series? The own series goes before any table.
// Leaves out length (scaled-mass-index.ts) and other animals (size-check.ts).
import type { Verdict } from '../shared/verdict.ts';
import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, eventsOf } from './event.ts';
import { type Reason, reason } from './reason.ts';

export interface MassPoint {
  readonly on: IsoDate;
  readonly massG: number;
}

export interface MassFinding {
  /** holds = no loss; fails = the loss alarm; not-known = too little to judge by, or a time in which loss is expected. */
  readonly verdict: Verdict;
  readonly watch: boolean;
  readonly lossPct: number | null;
  readonly last: MassPoint | null;
  readonly best: MassPoint | null;
  readonly reasons: readonly Reason[];
}

/** Masses from weighings and examinations, oldest first. */
export function massSeries(events: readonly AnimalEvent[]): readonly MassPoint[] {
  const weighed = eventsOf(events, 'weighing').map(({ at, on, body }) => ({ at, on, massG: body.massG }));
  const examined = eventsOf(events, 'examination').flatMap(({ at, on, body }) =>
    body.massG === null ? [] : [{ at, on, massG: body.massG }],
  );
  return [...weighed, ...examined].sort((a, b) => (a.at < b.at ? -1 : 1)).map(({ on, massG }) => ({ on, massG }));
}

/** The reason for which a loss is expected on that day: winter rest, laying, birth; null when there is none. */
export function restOn(events: readonly AnimalEvent[], on: IsoDate): 'winter' | 'laying' | 'birth' | null {
  const until = eventsOf(events, 'rest').filter((event) => event.on <= on);
  const last = until.at(-1);
  return last && last.body.step === 'start' ? last.body.why : null;
}

/** Own best of the window against the last mass. */
export function massFinding(events: readonly AnimalEvent[], facts: CareFacts, today: IsoDate): MassFinding {
  const series = massSeries(events).filter((point) => point.on <= today);
  const last = series.at(-1) ?? null;
  const from = last ? addDays(last.on, -numberOf(facts.condition, 'windowDays')) : today;
  const best = series
    .filter((point) => point.on >= from)
    .reduce<MassPoint | null>((a, b) => (a && a.massG >= b.massG ? a : b), null);
  if (last === null || best === null || series.length < 2)
    return { verdict: 'not-known', watch: false, lossPct: null, last, best, reasons: [reason('mass.tooFew')] };
  const lossPct = ((best.massG - last.massG) * 100) / best.massG;
  const blanks = { pct: lossPct.toFixed(1), best: best.massG, bestOn: best.on, last: last.massG, lastOn: last.on };
  const base = { lossPct, last, best };
  const resting = restOn(events, last.on);
  const alarm = lossPct >= numberOf(facts.condition, 'lossAlarmPct');
  if (alarm && resting !== null)
    return { ...base, verdict: 'not-known', watch: true, reasons: [reason(`mass.rest.${resting}`, blanks)] };
  if (alarm) return { ...base, verdict: 'fails', watch: true, reasons: [reason('mass.alarm', blanks)] };
  const watch = lossPct >= numberOf(facts.condition, 'lossWatchPct');
  return { ...base, verdict: 'holds', watch, reasons: [reason(watch ? 'mass.watch' : 'mass.steady', blanks)] };
}

/** Day on which it should be weighed next. */
export function nextWeighing(
  events: readonly AnimalEvent[],
  facts: CareFacts,
  growing: boolean,
  today: IsoDate,
): { readonly on: IsoDate; readonly overdue: boolean } {
  const last = massSeries(events).at(-1);
  const finding = massFinding(events, facts, today);
  const refused = eventsOf(events, 'feeding').at(-1)?.body.outcome === 'refused';
  const usual = numberOf(facts.feeding, growing ? 'weighYoungDays' : 'weighAdultDays');
  const days = finding.watch || refused ? Math.min(usual, numberOf(facts.feeding, 'refusalWeighDays')) : usual;
  const on = last ? addDays(last.on, days) : today;
  return { on, overdue: daysBetween(on, today) > 0 };
}
