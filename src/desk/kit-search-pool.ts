// A search for kits over the cores of this machine: a few workers kept ready, one search at a time.
// Leaves out: the search itself (planning/search) and who asks for it.
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Enclosure } from '../physics/enclosure.ts';
import { type DriveOptions, driveSearch, type SurfaceSolver } from '../planning/search/drive-search.ts';
import type { SearchTask } from '../planning/search/kit-search.ts';
import type { SearchAnswer } from '../planning/search/search-answer.ts';
import type { SearchInput } from '../planning/search/search-input.ts';
import { type SolveSetting, settingOf } from '../planning/search/solve-task.ts';
import type { MemberSurface } from '../planning/search/surface.ts';
import { programRoot } from '../records/root.ts';
import { compileLater } from './compile-later.ts';

export type PoolRequest =
  | { readonly kind: 'prepare'; readonly setting: SolveSetting }
  /** The enclosure comes with the first task of its arrangement. */
  | { readonly kind: 'solve'; readonly task: SearchTask; readonly enclosure: Enclosure | null };
export type PoolReply =
  | { readonly kind: 'ready' }
  | { readonly kind: 'solved'; readonly surfaces: readonly MemberSurface[] }
  | { readonly kind: 'failed'; readonly say: string };

export interface KitSearchPool {
  /** Null when cancelled. Rejects only on a fault of the program. */
  readonly search: (input: SearchInput, options?: DriveOptions) => Promise<SearchAnswer | null>;
  readonly close: () => Promise<void>;
}

/** More threads than this wait for each other's leavings (our choice). */
const mostWorkers = 4;

export function startKitSearchPool(count = Math.min(mostWorkers, availableParallelism())): KitSearchPool {
  compileLater();
  const workers = Array.from({ length: Math.max(1, count) }, newWorker);
  for (const worker of workers) worker.unref();
  let turn: Promise<unknown> = Promise.resolve();
  const search = async (input: SearchInput, options: DriveOptions): Promise<SearchAnswer | null> => {
    const solvers = workers.map((worker): SurfaceSolver => {
      const ready = ask(worker, { kind: 'prepare', setting: settingOf(input) });
      const handed = new Set<number>();
      return {
        solve: async (task, enclosure) => {
          await ready;
          const known = handed.has(task.arrangement);
          handed.add(task.arrangement);
          const reply = await ask(worker, { kind: 'solve', task, enclosure: known ? null : enclosure });
          return reply.kind === 'solved' ? reply.surfaces : [];
        },
      };
    });
    return driveSearch(input, solvers, options);
  };
  return {
    search: (input, options = {}) => {
      const mine = turn.then(() => search(input, options));
      turn = mine.catch(() => undefined);
      return mine;
    },
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** Replies come in the order of the requests, one request at a time. */
function ask(worker: Worker, request: PoolRequest): Promise<PoolReply> {
  return new Promise((done, fail) => {
    const settle = (end: () => void) => {
      worker.off('message', onMessage);
      worker.off('error', onError);
      worker.off('exit', onExit);
      worker.unref();
      end();
    };
    const onMessage = (reply: PoolReply) =>
      settle(() => (reply.kind === 'failed' ? fail(new Error(reply.say)) : done(reply)));
    const onError = (error: Error) => settle(() => fail(error));
    const onExit = (code: number) => settle(() => fail(new Error(`a search worker ended with ${code}`)));
    worker.ref();
    worker.once('message', onMessage);
    worker.once('error', onError);
    worker.once('exit', onExit);
    worker.postMessage(request);
  });
}

/** The built worker beside the built program, else the source, run by the same loader that runs us. */
function newWorker(): Worker {
  const here = fileURLToPath(import.meta.url);
  const built = join(programRoot(), 'dist', 'worker', 'kit-search.mjs');
  if (!here.endsWith('.ts') && existsSync(built)) return new Worker(built);
  const source = join(programRoot(), 'src', 'desk', 'kit-search-worker.ts');
  const start = `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(source)}); });`;
  return new Worker(start, { eval: true });
}
