// What is one task of aftercare, and is it done, due or overdue today?
// Leaves out which tasks there are (tasks.ts) and their words (words/).
import type { IsoDate } from '../../animal/calendar.ts';

export const taskKinds = [
  'call-first',
  'call-week',
  'call-meal',
  'weigh',
  'prove-home',
  'prove-cold',
  'prove-heat',
  'renew-heater',
  'check-instrument',
  'move-up',
] as const;
export type TaskKind = (typeof taskKinds)[number];

/** What is asked of the keeper. */
export const questions = [
  'well',
  'ate',
  'readings',
  'massG',
  'droppings',
  'day-of-readings',
  'fitted',
  'checked',
  'box',
] as const;
export type Question = (typeof questions)[number];

export interface AftercareTask {
  /** The same for the same task whenever the tasks are made anew; what comes again carries what it counts from, e.g.
   *  "call-first" or "renew-heater:lamp:2026-09-01". */
  readonly key: string;
  readonly kind: TaskKind;
  /** Earliest and latest day; the same day twice where it is one day. */
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** Figures behind the words of words/, by the name of their blank. */
  readonly blanks: Readonly<Record<string, string | number>>;
  readonly ask: readonly Question[];
  /** Keys of data/sources.json. */
  readonly sources: readonly string[];
}

export type TaskState = 'done' | 'later' | 'due' | 'overdue';

/** @param doneKeys keys of the tasks that were answered */
export function taskState(task: AftercareTask, doneKeys: ReadonlySet<string>, today: IsoDate): TaskState {
  if (doneKeys.has(task.key)) return 'done';
  if (today < task.from) return 'later';
  return today <= task.to ? 'due' : 'overdue';
}
