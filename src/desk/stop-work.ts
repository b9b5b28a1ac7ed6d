// Work that somebody waits for at the counter and may stop. What is said after a stop is what the records say: whether the
// outcome was kept before the stop came, or nothing will be kept of it. Leaves out ending the computing (prover.ts, planner.ts).

import type { Db } from '../records/schema.ts';
import { type Ended, isStopped, keepUnlessStopped, stopWork } from '../records/work-ends.ts';
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
export async function keepOutcome(
  desk: Pick<DeskContext, 'db' | 'clock'>,
  { workId, signal }: Stoppable,
  keep: (tx: Db) => Promise<string>,
): Promise<Result<string>> {
  if (signal?.aborted) return bad([workStopped]);
  const kept = await keepUnlessStopped(desk.db, workId ?? null, desk.clock.now(), keep);
  return kept === null ? bad([workStopped]) : good(kept);
}

/** How soon a computing that was stopped by its name hears of it [ms] (our choice). */
const lookEveryMs = 500;

/** Computes until somebody stops it, by hanging up or by its name, through any process. Faults: "WORK_STOPPED". */
export async function untilStopped<T>(
  { db }: Pick<DeskContext, 'db'>,
  { workId, signal }: Stoppable,
  compute: (signal: AbortSignal) => Promise<Result<T>>,
): Promise<Result<T>> {
  const stop = new AbortController();
  const look = async (): Promise<void> => {
    if (workId !== undefined && (await isStopped(db, workId))) stop.abort();
  };
  const hangUp = (): void => stop.abort();
  signal?.addEventListener('abort', hangUp);
  await look();
  // A look that fails is no reason to stop; keeping the outcome asks once more.
  const timer = setInterval(() => void look().catch(() => undefined), lookEveryMs);
  try {
    if (signal?.aborted || stop.signal.aborted) return bad([workStopped]);
    const done = await compute(stop.signal);
    return !done.ok && stop.signal.aborted ? bad([workStopped]) : done;
  } finally {
    clearInterval(timer);
    signal?.removeEventListener('abort', hangUp);
  }
}

/** After "stopped" nothing of it is kept any more; "kept": the stop came too late. */
export async function stopWaiting({ db, clock }: DeskContext, workId: string): Promise<Ended> {
  return await stopWork(db, workId, clock.now());
}

export const workStopped: Fault = {
  code: 'WORK_STOPPED',
  field: '',
  got: 'stopped by whoever waited for it',
  allowed: '',
  say: 'This was stopped before it came to an answer; nothing of it was kept.',
  fix: 'Ask for it again.',
};
