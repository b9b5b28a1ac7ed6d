// Work that somebody waits for at the counter and may stop. What is said after a stop is what the records say: whether the
// outcome was kept before the stop came, or nothing will be kept of it. Leaves out ending the computing (prover.ts, planner.ts).

import type { Db } from '../records/schema.ts';
import { keepUnlessStopped, stopWork, type WorkEnd } from '../records/work-ends.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';

/** How somebody who waits can be told from others, and that they left. */
export interface Stoppable {
  /** Chosen by whoever waits; a stop names it. */
  readonly workId?: string | undefined;
  /** Aborted when whoever waits has hung up. */
  readonly signal?: AbortSignal | undefined;
}

/** Faults: "WORK_STOPPED". */
export async function keepOutcome<T>(
  desk: Pick<DeskContext, 'db' | 'clock'>,
  { workId, signal }: Stoppable,
  keep: (tx: Db) => Promise<T>,
): Promise<Result<T>> {
  if (signal?.aborted) return bad([workStopped]);
  const kept = await keepUnlessStopped(desk.db, workId ?? null, desk.clock.now(), async (tx) => ({
    value: await keep(tx),
  }));
  return kept === null ? bad([workStopped]) : good(kept.value);
}

/** After "stopped" nothing of it is kept any more; "kept": the stop came too late. */
export async function stopWaiting({ db, clock }: DeskContext, workId: string): Promise<{ readonly ended: WorkEnd }> {
  return { ended: await stopWork(db, workId, clock.now()) };
}

export const workStopped: Fault = {
  code: 'WORK_STOPPED',
  field: '',
  got: 'stopped by whoever waited for it',
  allowed: '',
  say: 'This was stopped before it came to an answer; nothing of it was kept.',
  fix: 'Ask for it again.',
};
