// The worker's side of planner.ts: takes a job, answers with its result. Facts are read once in its life.
import { parentPort } from 'node:worker_threads';
import { isPackJob, type PackJob, runPackJob } from './pack/pack-job.ts';
import { type PlanJob, runPlanJob } from './plan-job.ts';
import type { PlanReply } from './planner.ts';

const port = parentPort;
if (port === null) throw new Error('plan-worker runs only as a worker');

port.on('message', (job: PlanJob | PackJob) => {
  const answer = (reply: PlanReply): void => port.postMessage(reply);
  try {
    answer({ result: isPackJob(job) ? runPackJob(job) : runPlanJob(job) });
  } catch (error) {
    answer({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
