// The worker's side of kit-search-pool.ts: draws the versions of a search once, then solves the pieces it is sent.
import { parentPort } from 'node:worker_threads';
import { type TaskSolver, taskSolver } from '../planning/search/solve-task.ts';
import type { PoolReply, PoolRequest } from './kit-search-pool.ts';

const port = parentPort;
if (port === null) throw new Error('kit-search-worker runs only as a worker');

let solver: TaskSolver | null = null;

port.on('message', (request: PoolRequest) => {
  const answer = (reply: PoolReply): void => port.postMessage(reply);
  try {
    if (request.kind === 'prepare') {
      solver = taskSolver(request.setting);
      answer({ kind: 'ready' });
      return;
    }
    if (solver === null) throw new Error('a task came before its search');
    answer({ kind: 'solved', surfaces: solver(request.task, request.enclosure) });
  } catch (error) {
    answer({ kind: 'failed', say: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
