// Is the animal fit, to be held, or for the vet, by what was seen nose to tail? And what changed since last time?
// Never a diagnosis: a sign leads to hold, isolate, vet soon or vet now. Leaves out mass and clocks (fitness.ts).
import type { Sourced } from '../husbandry/need.ts';
import type { Spoken } from './care-facts.ts';

/** How soon: note = tell, hold = no sale and look again, vet within a week, within a day, now. */
export const urgencies = ['note', 'hold', 'vet-week', 'vet-24h', 'vet-now'] as const;
export type Urgency = (typeof urgencies)[number];

export interface Sign extends Sourced {
  readonly id: string;
  readonly say: Spoken;
  readonly urgency: Urgency;
  /** Away from other animals until a vet has said otherwise. */
  readonly isolate?: boolean;
  /** Whoever takes the animal is told. */
  readonly disclose?: boolean;
  /** A clock that begins with this sign. */
  readonly starts?: 'mites' | 'slough' | 'regurgitation';
}

/** One stop of the hand; the order of the list is the order of the hand. */
export interface ExaminationStep extends Sourced {
  readonly id: string;
  /** Which drawing shows it. */
  readonly part: string;
  readonly title: Spoken;
  readonly look: Spoken;
  readonly normal: Spoken;
  readonly signs: readonly Sign[];
}

/** Signs seen at a step; empty = normal. A step that is missing was not looked at. */
export type Answers = Readonly<Record<string, readonly string[]>>;

export interface ExaminationBody {
  readonly answers: Answers;
  readonly massG: number | null;
  /** Outline of the cross-section chosen by eye, "" when not chosen. */
  readonly outline: string;
  readonly note: string;
}

export type ExaminationResult = 'fit' | 'hold' | 'vet' | 'unfinished';

export interface SeenSign {
  readonly stepId: string;
  readonly sign: Sign;
}

export interface ExaminationVerdict {
  readonly result: ExaminationResult;
  /** Most urgent first. */
  readonly seen: readonly SeenSign[];
  readonly urgency: Urgency | null;
  readonly isolate: boolean;
  readonly disclose: readonly SeenSign[];
  /** Steps nobody has looked at. */
  readonly open: readonly string[];
  /** Signs named in the answers that the list does not know (from another version of it). */
  readonly unknown: readonly string[];
}

const rank = (urgency: Urgency): number => urgencies.indexOf(urgency);

/** What was seen, as one verdict. A vet sign counts even when the rest is unfinished; nothing else does. */
export function examinationVerdict(steps: readonly ExaminationStep[], answers: Answers): ExaminationVerdict {
  const seen: SeenSign[] = [];
  const unknown: string[] = [];
  for (const [stepId, ids] of Object.entries(answers)) {
    const step = steps.find((one) => one.id === stepId);
    for (const id of ids) {
      const sign = step?.signs.find((one) => one.id === id);
      if (sign) seen.push({ stepId, sign });
      else unknown.push(`${stepId}.${id}`);
    }
  }
  seen.sort((a, b) => rank(b.sign.urgency) - rank(a.sign.urgency));
  const open = steps.filter((step) => answers[step.id] === undefined).map((step) => step.id);
  const urgency = seen[0]?.sign.urgency ?? null;
  return {
    result: resultOf(urgency, open.length > 0 || unknown.length > 0),
    seen,
    urgency,
    isolate: seen.some(({ sign }) => sign.isolate === true),
    disclose: seen.filter(({ sign }) => sign.disclose === true),
    open,
    unknown,
  };
}

function resultOf(urgency: Urgency | null, unfinished: boolean): ExaminationResult {
  if (urgency !== null && rank(urgency) >= rank('vet-week')) return 'vet';
  if (unfinished) return 'unfinished';
  return urgency === 'hold' ? 'hold' : 'fit';
}

export interface Comparison {
  readonly fresh: readonly string[];
  readonly still: readonly string[];
  readonly gone: readonly string[];
  /** Seen last time at a step that nobody has looked at now: not known. */
  readonly notLooked: readonly string[];
}

/** Signs as "step.sign", against the last examination. */
export function compareExaminations(before: Answers, now: Answers): Comparison {
  const flat = (answers: Answers): string[] =>
    Object.entries(answers).flatMap(([step, signs]) => signs.map((sign) => `${step}.${sign}`));
  const [old, fresh] = [flat(before), flat(now)];
  const looked = (id: string): boolean => now[id.slice(0, id.indexOf('.'))] !== undefined;
  return {
    fresh: fresh.filter((id) => !old.includes(id)),
    still: fresh.filter((id) => old.includes(id)),
    gone: old.filter((id) => looked(id) && !fresh.includes(id)),
    notLooked: old.filter((id) => !looked(id)),
  };
}
