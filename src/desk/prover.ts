// Who computes proofs so that the counter never waits: one worker, a short queue, "busy" beyond it.
// Leaves out the computing itself (proof-job.ts).
import type { Worker } from 'node:worker_threads';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import { bad, type Result } from '../shared/result.ts';
import { ownWorker } from './own-worker.ts';
import type { ProofJob } from './proof-job.ts';
import { readingFaults } from './reading-faults.ts';

export interface Prover {
  /** @param signal  whoever waits may stop it; Fault "PROOF_STOPPED" */
  readonly prove: (job: ProofJob, signal?: AbortSignal) => Promise<Result<ProofAnswer>>;
  readonly close: () => Promise<void>;
}

/** "failed" is a fault of the program, not of the input. */
export type ProofReply = { readonly result: Result<ProofAnswer> } | { readonly failed: string };

/** Longer than anybody waits at a counter (our choice). */
const longestQueue = 8;
/** A proof takes seconds; one that takes minutes is stuck (our choice). */
const patienceMs = 120_000;

export function startProver(): Prover {
  let worker: Worker | null = null;
  let waiting = 0;
  let turn: Promise<unknown> = Promise.resolve();

  const stop = async (): Promise<void> => {
    const old = worker;
    worker = null;
    await old?.terminate();
  };
  const one = (job: ProofJob, signal?: AbortSignal): Promise<Result<ProofAnswer>> =>
    new Promise((done, fail) => {
      if (signal?.aborted) return done(bad([readingFaults.stopped()]));
      worker ??= ownWorker('proof');
      const mine = worker;
      mine.unref();
      const timer = setTimeout(() => end(new Error(`a proof took longer than ${patienceMs / 1000} s`)), patienceMs);
      const end = (error: Error): void => {
        clear();
        void stop();
        fail(error);
      };
      const onMessage = (reply: ProofReply): void => {
        clear();
        if ('failed' in reply) fail(new Error(reply.failed));
        else done(reply.result);
      };
      const onExit = (code: number): void => end(new Error(`the proving worker ended with ${code}`));
      // A worker cannot be asked to leave off; the next proof gets a new one.
      const onAbort = (): void => {
        clear();
        void stop();
        done(bad([readingFaults.stopped()]));
      };
      signal?.addEventListener('abort', onAbort);
      const clear = (): void => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', onAbort);
        mine.off('message', onMessage).off('error', end).off('exit', onExit);
      };
      mine.on('message', onMessage).on('error', end).on('exit', onExit);
      mine.postMessage(job);
    });

  return {
    prove: async (job, signal) => {
      if (waiting >= longestQueue) return bad([readingFaults.busy(waiting)]);
      waiting++;
      const mine = turn.then(() => one(job, signal));
      turn = mine.catch(() => undefined);
      try {
        return await mine;
      } finally {
        waiting--;
      }
    },
    close: stop,
  };
}
