// What a keeper answered: can it be so, does it settle the task, and does anything in it ask for a second look?
// Leaves out what to do then: that is triage (animal/triage.ts), which looks at the enclosure first, then sends to the vet.
import { type IsoDate, isIsoDate } from '../../animal/calendar.ts';
import { type CareFacts, numberOf } from '../../animal/care-facts.ts';
import { readingIsWrong } from '../../animal/triage.ts';
import type { Species } from '../../husbandry/fact.ts';
import type { LifeStage } from '../../physics/enclosure.ts';
import type { Fault } from '../../shared/fault.ts';
import type { TaskKind } from './task.ts';

export type HowItIs = 'well' | 'not-well' | 'died';
export type HowItAte = 'taken' | 'refused' | 'brought-up' | 'not-offered';
export type HowDroppings = 'seen' | 'none' | 'odd';

/** What was said; whatever was not said is not there. */
export interface AftercareAnswers {
  readonly well?: HowItIs;
  /** Red flags of data/triage.json that were seen. */
  readonly flags?: readonly string[];
  readonly ate?: HowItAte;
  readonly mealOn?: IsoDate;
  readonly baskingSurfaceC?: number;
  readonly warmAirC?: number;
  readonly coolAirC?: number;
  readonly massG?: number;
  readonly droppings?: HowDroppings;
  readonly readingsSent?: boolean;
  readonly fittedOn?: IsoDate;
  /** What the instrument showed in melting ice, which is at 0 degC. */
  readonly iceShownC?: number;
  readonly lengthCm?: number;
  readonly note?: string;
}

export const answeredReadings = ['baskingSurfaceC', 'warmAirC', 'coolAirC'] as const;

type Limits = readonly [low: number, high: number];
/** What can be typed at all; our choice, as wide as sense allows. */
export const answerLimits = {
  baskingSurfaceC: [-5, 80],
  warmAirC: [-5, 60],
  coolAirC: [-5, 60],
  massG: [1, 60_000],
  iceShownC: [-15, 25],
  lengthCm: [5, 900],
} as const satisfies Readonly<Record<string, Limits>>;

const words: Readonly<Record<string, readonly string[]>> = {
  well: ['well', 'not-well', 'died'],
  ate: ['taken', 'refused', 'brought-up', 'not-offered'],
  droppings: ['seen', 'none', 'odd'],
};
const longestNote = 2000;

const fault = (field: string, got: unknown, allowed: string, say: string): Fault => ({
  code: 'AFTERCARE_ANSWER',
  field,
  got: String(got).slice(0, 80),
  allowed,
  say,
  fix: 'Correct it, or leave it out.',
});

/** Everything that cannot be so, at once.
 *  @param flagIds red flags that are known  @param from day of the release  @param latest latest day that may be written */
export function answerFaults(
  raw: Readonly<Record<string, unknown>>,
  { flagIds, from, latest }: { readonly flagIds: readonly string[]; readonly from: IsoDate; readonly latest: IsoDate },
): readonly Fault[] {
  const faults: Fault[] = [];
  const said = Object.entries(raw).filter(([, value]) => value !== undefined);
  if (said.every(([key]) => key === 'note'))
    faults.push(fault('answers', 'nothing', 'at least one answer', 'Nothing was answered.'));
  for (const [key, value] of said) {
    const limits = Object.hasOwn(answerLimits, key) ? answerLimits[key as keyof typeof answerLimits] : null;
    const field = `answers.${key}`;
    if (words[key]) {
      if (!words[key].includes(value as string))
        faults.push(fault(field, value, words[key].join(', '), 'This answer is not one of those asked for.'));
    } else if (limits) {
      if (typeof value !== 'number' || !(value >= limits[0] && value <= limits[1]))
        faults.push(fault(field, value, `${limits[0]} to ${limits[1]}`, 'This number cannot be.'));
    } else if (key === 'mealOn' || key === 'fittedOn') {
      if (typeof value !== 'string' || !isIsoDate(value) || value < from || value > latest)
        faults.push(
          fault(field, value, `a day from ${from} to ${latest}`, 'This day lies before the release or ahead.'),
        );
    } else if (key === 'readingsSent') {
      if (typeof value !== 'boolean') faults.push(fault(field, value, 'true or false', 'This is neither yes nor no.'));
    } else if (key === 'flags') {
      const known = Array.isArray(value) && value.every((one) => flagIds.includes(one as string));
      if (!known) faults.push(fault(field, value, flagIds.join(', '), 'A sign that is not on the list.'));
    } else if (key === 'note') {
      if (typeof value !== 'string' || value.length > longestNote)
        faults.push(fault(field, 'a long text', `at most ${longestNote} characters`, 'The note is too long.'));
    } else faults.push(fault(field, key, 'the questions of the task', 'This was not asked.'));
  }
  return faults;
}

/** Whether the task is done by what was said; else it was heard of, and stays. */
export function settles(kind: TaskKind, said: AftercareAnswers): boolean {
  if (said.well === 'died') return true;
  if (kind === 'call-first' || kind === 'call-week') return said.well !== undefined;
  if (kind === 'call-meal') return said.well !== undefined && said.ate !== undefined && said.ate !== 'not-offered';
  if (kind === 'weigh') return said.massG !== undefined;
  if (kind === 'renew-heater') return said.fittedOn !== undefined;
  if (kind === 'check-instrument') return said.iceShownC !== undefined;
  if (kind === 'move-up') return said.lengthCm !== undefined;
  return said.readingsSent === true;
}

export type ConcernId =
  | 'died'
  | 'flags'
  | 'not-well'
  | 'not-eating'
  | 'brought-up'
  | 'droppings'
  | 'reading'
  | 'mass-loss'
  | 'instrument-off';

export interface Concern {
  readonly id: ConcernId;
  /** now: today, before anything else; look: at the next chance. */
  readonly urgency: 'now' | 'look';
  /** The complaint of data/triage.json that it is, where it is one. */
  readonly complaintId: string | null;
  readonly blanks: Readonly<Record<string, string | number>>;
}

/** Limits of data/ that concerns are judged by; handed so that a phone without the tables can judge too. */
export interface ConcernLimits {
  readonly lossWatchPct: number;
  readonly lossAlarmPct: number;
  readonly instrumentOffK: number;
}

export const concernLimits = (care: CareFacts): ConcernLimits => ({
  lossWatchPct: numberOf(care.condition, 'lossWatchPct'),
  lossAlarmPct: numberOf(care.condition, 'lossAlarmPct'),
  instrumentOffK: numberOf(care.aftercare, 'instrumentOffK'),
});

export interface Told {
  readonly species: Species;
  readonly stage: LifeStage;
  /** Last mass known before [g]; null when never weighed. */
  readonly lastMassG: number | null;
}

/** What in the answers asks for a second look, most urgent first. A judgement of numbers and words, never a diagnosis. */
export function concernsOf(said: AftercareAnswers, told: Told, limits: ConcernLimits): readonly Concern[] {
  const found: Concern[] = [];
  const add = (id: ConcernId, urgency: Concern['urgency'], complaintId: string | null = null, blanks = {}) =>
    found.push({ id, urgency, complaintId, blanks });
  if (said.well === 'died') add('died', 'now');
  if (said.flags && said.flags.length > 0) add('flags', 'now', null, { n: said.flags.length });
  else if (said.well === 'not-well') add('not-well', 'now');
  if (said.ate === 'brought-up') add('brought-up', 'now', 'brought-up');
  const lossPct = lossOf(said, told);
  if (lossPct !== null && lossPct >= limits.lossWatchPct)
    add('mass-loss', lossPct >= limits.lossAlarmPct ? 'now' : 'look', null, {
      pct: Math.round(lossPct * 10) / 10,
    });
  for (const key of wrongReadings(said, told)) add('reading', 'look', null, { key, valueC: said[key] as number });
  if (said.ate === 'refused') add('not-eating', 'look', 'not-eating');
  if (said.droppings === 'odd') add('droppings', 'look', 'droppings');
  const off = said.iceShownC;
  if (off !== undefined && Math.abs(off) > limits.instrumentOffK) add('instrument-off', 'look', null, { offK: off });
  return found.sort((a, b) => (a.urgency === b.urgency ? 0 : a.urgency === 'now' ? -1 : 1));
}

/** Share of its mass that it lost since it was last weighed [%]; null when one of the two is not known. */
export function lossOf(said: AftercareAnswers, { lastMassG }: Pick<Told, 'lastMassG'>): number | null {
  if (said.massG === undefined || lastMassG === null || lastMassG <= 0) return null;
  return (100 * (lastMassG - said.massG)) / lastMassG;
}

const wrongReadings = (said: AftercareAnswers, { species, stage }: Told) =>
  answeredReadings.filter((key) => {
    const value = said[key];
    return value !== undefined && readingIsWrong(species, stage, key, value);
  });

/** The readings that were told, by key of the species record, for triage. */
export const readingsTold = (said: AftercareAnswers): Readonly<Record<string, number>> =>
  Object.fromEntries(
    answeredReadings.flatMap((key) => {
      const value = said[key];
      return value === undefined ? [] : [[key, value]];
    }),
  );
