// The worker's side of kit-search-pool.ts: draws the versions of a search once, then solves the pieces it is sent.
import { parentPort } from 'node:worker_threads';
import { judgeHome } from '../planning/search/judge-home.ts';
import { type SolveSetting, type TaskSolver, taskSolver } from '../planning/search/solve-task.ts';
import type { PoolLetter, PoolReply, PoolRequest } from './kit-search-pool.ts';

const port = parentPort;
if (port === null) throw new Error('kit-search-worker runs only as a worker');

let solver: TaskSolver | null = null;
let setting: SolveSetting | null = null;

port.on('message', ({ seq, say: request }: PoolLetter<PoolRequest>) => {
  const answer = (say: PoolReply): void => port.postMessage({ seq, say } satisfies PoolLetter<PoolReply>);
  try {
    if (request.kind === 'prepare') {
      setting = request.setting;
      solver = taskSolver(setting);
      return answer({ to: 'prepare' });
    }
    if (solver === null || setting === null) throw new Error('a task came before its search');
    if (request.kind === 'judge') answer({ to: 'judge', judged: judgeHome(request.home, setting) });
    else answer({ to: 'solve', surfaces: solver(request.task, request.enclosure) });
  } catch (error) {
    answer({ to: null, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
