// The worker's side of prover.ts: takes a job, answers with its result.
import { parentPort } from 'node:worker_threads';
import { type ProofJob, runProofJob } from './proof-job.ts';
import type { ProofReply } from './prover.ts';

const port = parentPort;
if (port === null) throw new Error('proof-worker runs only as a worker');

port.on('message', (job: ProofJob) => {
  const answer = (reply: ProofReply): void => port.postMessage(reply);
  try {
    answer({ result: runProofJob(job) });
  } catch (error) {
    answer({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
