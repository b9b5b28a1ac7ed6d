// A search for kits over the cores of this machine: a few workers kept ready, one search at a time.
// Leaves out: the search itself (planning/search) and who asks for it.
import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import type { Worker } from 'node:worker_threads';
import type { Enclosure } from '../physics/enclosure.ts';
import { type DriveOptions, driveSearch, type SurfaceSolver } from '../planning/search/drive-search.ts';
import type { HelpInput } from '../planning/search/help-changes.ts';
import type { AskedHome, JudgedHome } from '../planning/search/judge-home.ts';
import type { SearchTask } from '../planning/search/kit-search.ts';
import type { SearchAnswer } from '../planning/search/search-answer.ts';
import type { SearchInput } from '../planning/search/search-input.ts';
import { type SolveSetting, settingOf } from '../planning/search/solve-task.ts';
import { type HomeSolver, spreadHomes } from '../planning/search/spread-homes.ts';
import type { MemberSurface } from '../planning/search/surface.ts';
import { type HelpingChange, whatHelps } from '../planning/search/what-helps.ts';
import { compileLater } from './compile-later.ts';
import { ownWorker } from './own-worker.ts';

/** What a worker is told: the replies bear the number of their request. */
export interface PoolLetter<T> {
  readonly seq: number;
  readonly say: T;
}
export type PoolRequest =
  | { readonly kind: 'prepare'; readonly setting: SolveSetting }
  /** The enclosure comes with the first task of its arrangement. */
  | { readonly kind: 'solve'; readonly task: SearchTask; readonly enclosure: Enclosure | null }
  | { readonly kind: 'judge'; readonly home: AskedHome };
/** `to` is the kind of the request; null where it came to nothing. */
export type PoolReply =
  | { readonly to: 'prepare' }
  | { readonly to: 'solve'; readonly surfaces: readonly MemberSurface[] }
  | { readonly to: 'judge'; readonly judged: JudgedHome }
  | { readonly to: null; readonly failed: string };

export interface KitSearchPool {
  /** Null when cancelled. Rejects only on a fault of the program. */
  readonly search: (input: SearchInput, options?: DriveOptions) => Promise<SearchAnswer | null>;
  /** What would help where nothing holds; null when cancelled. */
  readonly whatHelps: (input: HelpInput, options?: HelpOptions) => Promise<readonly HelpingChange[] | null>;
  readonly close: () => Promise<void>;
}

export interface HelpOptions {
  /** Called after each home that was judged. */
  readonly onJudged?: () => void;
  /** Asked before each home. */
  readonly cancelled?: () => boolean;
}

/** More threads than this wait for each other's leavings (our choice). */
const mostWorkers = 4;

export function startKitSearchPool(count = Math.min(mostWorkers, availableParallelism())): KitSearchPool {
  compileLater();
  const threads = Array.from({ length: Math.max(1, count) }, () => threadOf(ownWorker('kit-search')));
  let turn: Promise<unknown> = Promise.resolve();
  const search = async (input: SearchInput, options: DriveOptions): Promise<SearchAnswer | null> => {
    const solvers = threads.map((thread): SurfaceSolver => {
      const ready = thread.ask({ kind: 'prepare', setting: settingOf(input) });
      const handed = new Set<number>();
      return {
        solve: async (task, enclosure) => {
          await ready;
          const known = handed.has(task.arrangement);
          handed.add(task.arrangement);
          return (await thread.ask({ kind: 'solve', task, enclosure: known ? null : enclosure })).surfaces;
        },
      };
    });
    return driveSearch(input, solvers, options);
  };
  const helps = async (input: HelpInput, { onJudged, cancelled }: HelpOptions) => {
    const solvers = threads.map((thread): HomeSolver => {
      const ready = thread.ask({ kind: 'prepare', setting: settingOf(input) });
      return async ({ enclosure, heart }) => {
        await ready;
        const { judged } = await thread.ask({ kind: 'judge', home: { enclosure, heart } });
        onJudged?.();
        return judged;
      };
    });
    return whatHelps(
      input,
      spreadHomes(solvers, () => setImmediate(), cancelled),
    );
  };
  /** One after the other. */
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const mine = turn.then(work);
    turn = mine.catch(() => undefined);
    return mine;
  };
  return {
    search: (input, options = {}) => inTurn(() => search(input, options)),
    whatHelps: (input, options = {}) => inTurn(() => helps(input, options)),
    close: async () => {
      await Promise.all(threads.map((thread) => thread.end()));
    },
  };
}

type ReplyTo<Kind extends PoolRequest['kind']> = Extract<PoolReply, { readonly to: Kind }>;

interface Thread {
  readonly ask: <Request extends PoolRequest>(request: Request) => Promise<ReplyTo<Request['kind']>>;
  readonly end: () => Promise<unknown>;
}

/** A worker that keeps the program alive only while it owes an answer. */
function threadOf(worker: Worker): Thread {
  const owed = new Map<number, { readonly done: (reply: never) => void; readonly fail: (error: Error) => void }>();
  let seq = 0;
  let ended: Error | null = null;
  worker.unref();
  const failAll = (error: Error) => {
    ended = error;
    for (const { fail } of owed.values()) fail(error);
    owed.clear();
  };
  worker.on('message', ({ seq, say }: PoolLetter<PoolReply>) => {
    const one = owed.get(seq);
    owed.delete(seq);
    if (owed.size === 0) worker.unref();
    if (say.to === null) one?.fail(new Error(say.failed));
    else one?.done(say as never);
  });
  worker.on('error', failAll);
  worker.on('exit', (code) => failAll(new Error(`a search worker ended with ${code}`)));
  return {
    ask: (request) =>
      new Promise((done, fail) => {
        if (ended) return fail(ended);
        seq++;
        owed.set(seq, { done, fail });
        worker.ref();
        worker.postMessage({ seq, say: request } satisfies PoolLetter<PoolRequest>);
      }),
    end: () => worker.terminate(),
  };
}
