// Who computes plans so that the counter never waits? A few workers that each take one plan at a time, and a short
// queue; beyond that "busy" is said at once. Leaves out the computing itself (plan-job.ts).
import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import type { PlanAnswer } from '../planning/plan-answer.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, type Result } from '../shared/result.ts';
import { ownWorker } from './own-worker.ts';
import type { PackFigures, PackJob } from './pack/pack-job.ts';
import type { PlanJob } from './plan-job.ts';
import { workStopped } from './stop-work.ts';

export interface Planner {
  /** @param signal  whoever waits may stop it; Fault "WORK_STOPPED" */
  readonly plan: (job: PlanJob, signal?: AbortSignal) => Promise<Result<PlanAnswer>>;
  /** The figures of a pack: the plan, and what a power cut, a heat wave and a cold snap do to this very box. */
  readonly pack: (job: PackJob, signal?: AbortSignal) => Promise<Result<PackFigures>>;
  /** Plans that wait for a worker. */
  readonly waiting: () => number;
  /** Whether the next one would be told to come back later. */
  readonly isFull: () => boolean;
  readonly close: () => Promise<void>;
}

/** What a worker sends back; "failed" is a fault of the program, not of the input. */
export type PlanReply = { readonly result: Result<PlanAnswer | PackFigures> } | { readonly failed: string };

interface Waiting {
  readonly job: PlanJob | PackJob;
  readonly done: (result: Result<PlanAnswer | PackFigures>) => void;
  readonly fail: (error: Error) => void;
}

/** One core stays free for the pages and the database. */
const usualWorkers = Math.max(1, availableParallelism() - 1);
/** Longer than anybody waits at a counter (our choice). */
const longestQueue = 16;
/** A plan takes seconds; one that takes minutes is stuck (our choice). */
const patienceMs = 120_000;

interface Seat {
  readonly worker: Worker;
  /** The plan it is at work on. */
  current: Waiting | null;
  timer: NodeJS.Timeout | undefined;
}

export function startPlanner(workers = usualWorkers): Planner {
  const queue: Waiting[] = [];
  const seats = new Set<Seat>();
  let closed = false;

  const next = (): void => {
    while (queue.length > 0 && !closed) {
      const seat = [...seats].find((one) => one.current === null) ?? (seats.size < workers ? opened() : undefined);
      if (seat === undefined) return;
      const waiting = queue.shift() as Waiting;
      seat.current = waiting;
      seat.timer = setTimeout(() => lose(seat, `a plan took longer than ${patienceMs / 1000} s`), patienceMs);
      seat.worker.postMessage(waiting.job);
    }
  };
  const opened = (): Seat => {
    const seat: Seat = { worker: ownWorker('plan'), current: null, timer: undefined };
    seats.add(seat);
    seat.worker.unref();
    seat.worker.on('message', (reply: PlanReply) => {
      const done = release(seat);
      if ('failed' in reply) done?.fail(new Error(reply.failed));
      else done?.done(reply.result);
      next();
    });
    seat.worker.on('error', (error) => lose(seat, String(error)));
    seat.worker.on('exit', (code) => lose(seat, `the planning worker ended with ${code}`));
    return seat;
  };
  /** A worker that broke or hangs is replaced; its plan fails, the others go on. */
  const lose = (seat: Seat, why: string): void => {
    seats.delete(seat);
    release(seat)?.fail(new Error(why));
    void seat.worker.terminate();
    next();
  };

  /** It leaves the queue; a worker that is at it cannot be asked to leave off, and the next plan gets a new one. */
  const leave = (waiting: Waiting): void => {
    const place = queue.indexOf(waiting);
    if (place >= 0) queue.splice(place, 1);
    const seat = [...seats].find((one) => one.current === waiting);
    waiting.done(bad([workStopped]));
    if (seat !== undefined) lose(seat, 'stopped');
  };

  const work = async (job: PlanJob | PackJob, signal?: AbortSignal): Promise<Result<PlanAnswer | PackFigures>> => {
    if (closed || queue.length >= longestQueue) return bad([busy(queue.length)]);
    if (signal?.aborted) return bad([workStopped]);
    let stop = (): void => undefined;
    try {
      return await new Promise((done, fail) => {
        const waiting = { job, done, fail };
        stop = () => leave(waiting);
        signal?.addEventListener('abort', stop);
        queue.push(waiting);
        next();
      });
    } finally {
      signal?.removeEventListener('abort', stop);
    }
  };

  return {
    plan: async (job, signal) => (await work(job, signal)) as Result<PlanAnswer>,
    pack: async (job, signal) => (await work(job, signal)) as Result<PackFigures>,
    waiting: () => queue.length,
    isFull: () => closed || queue.length >= longestQueue,
    close: async () => {
      closed = true;
      for (const waiting of queue.splice(0)) waiting.done(bad([busy(0)]));
      await Promise.all([...seats].map((seat) => seat.worker.terminate()));
    },
  };
}

function release(seat: Seat): Waiting | null {
  clearTimeout(seat.timer);
  const waiting = seat.current;
  seat.current = null;
  return waiting;
}

function busy(waiting: number): Fault {
  return {
    code: 'PLAN_BUSY',
    field: '',
    got: `${waiting} plans waiting`,
    allowed: `at most ${longestQueue} waiting`,
    say: 'Too many plans are being computed at this moment.',
    fix: 'Try again in a few seconds.',
  };
}
