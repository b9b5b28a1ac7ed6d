// The worker's side of kit-search-pool.ts: prepares a search once, then solves the pieces it is sent.
import { parentPort } from 'node:worker_threads';
import { prepareSearch } from '../planning/search/prepare-search.ts';
import type { PoolReply, PoolRequest } from './kit-search-pool.ts';

const port = parentPort;
if (port === null) throw new Error('kit-search-worker runs only as a worker');

let prepared: ReturnType<typeof prepareSearch> | null = null;

port.on('message', (request: PoolRequest) => {
  const answer = (reply: PoolReply): void => port.postMessage(reply);
  try {
    if (request.kind === 'prepare') {
      prepared = prepareSearch(request.input);
      answer({ kind: 'ready' });
      return;
    }
    if (prepared === null) throw new Error('a task came before its search');
    answer({ kind: 'solved', surfaces: prepared.solve(request.task) });
  } catch (error) {
    answer({ kind: 'failed', say: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
