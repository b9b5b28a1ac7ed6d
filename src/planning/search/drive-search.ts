// Drives one search with several solvers at once: each takes the next piece of work as soon as it is free.
// Solvers are threads of Node or workers of a browser; this file knows neither. Stops when told to.
import type { Enclosure } from '../../physics/enclosure.ts';
import { searchAnswer } from './build-answer.ts';
import type { SearchTask } from './kit-search.ts';
import { type PreparedSearch, prepareSearch } from './prepare-search.ts';
import type { SearchAnswer, SearchProgress } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';
import { progressOf } from './search-kits.ts';
import type { MemberSurface } from './surface.ts';
import { type SurfaceStore, surfaceKey } from './surface-store.ts';

export interface SurfaceSolver {
  /** @param enclosure of the task's arrangement */
  readonly solve: (task: SearchTask, enclosure: Enclosure) => Promise<readonly MemberSurface[]>;
}

export interface DriveOptions {
  /** Called after each piece of work; `answer` is set once, when the first ranking is there. */
  readonly onProgress?: (progress: SearchProgress) => void;
  /** Asked before each piece of work. */
  readonly cancelled?: () => boolean;
  /** The search already prepared, where a solver of this very thread shares it. */
  readonly prepared?: PreparedSearch;
  /** Lines solved by earlier searches, and kept for later ones. */
  readonly store?: SurfaceStore;
}

/** @param solvers at least one, each prepared with the same input   @returns null when cancelled */
export async function driveSearch(
  input: SearchInput,
  solvers: readonly SurfaceSolver[],
  options: DriveOptions = {},
): Promise<SearchAnswer | null> {
  const prepared = options.prepared ?? prepareSearch(input);
  const { search } = prepared;
  const { store } = options;
  const keys = new Map<number, string>();
  const keyOf = ({ arrangement }: SearchTask): string => {
    const key = keys.get(arrangement) ?? surfaceKey(search.states[arrangement]!.arrangement, input);
    keys.set(arrangement, key);
    return key;
  };
  const waiting: (() => void)[] = [];
  const wakeAll = () => {
    for (const wake of waiting.splice(0)) wake();
  };
  let busy = 0;
  let shown = false;
  let stopped = false;
  const take = (task: SearchTask, surfaces: readonly MemberSurface[]): void => {
    search.take(task, surfaces);
    const first: boolean = !shown && search.hasFirst();
    shown ||= first;
    options.onProgress?.({ doneFrac: progressOf(prepared), answer: first ? searchAnswer(input, prepared) : null });
  };
  const work = async (solver: SurfaceSolver): Promise<void> => {
    while (!stopped) {
      if (options.cancelled?.()) {
        stopped = true;
        wakeAll();
        return;
      }
      const task = search.isDone() ? null : search.nextTask();
      if (!task) {
        if (busy === 0) {
          wakeAll();
          return;
        }
        await new Promise<void>((wake) => waiting.push(wake));
        continue;
      }
      const known = store?.known(keyOf(task), task);
      if (known) {
        take(task, known);
        wakeAll();
        continue;
      }
      busy++;
      try {
        const surfaces = await solver.solve(task, search.states[task.arrangement]!.arrangement.enclosure);
        // nobody solves for a search that has been stopped
        stopped ||= options.cancelled?.() ?? false;
        if (stopped) continue;
        store?.keep(keyOf(task), task, surfaces);
        take(task, surfaces);
      } catch (error) {
        stopped = true;
        throw error;
      } finally {
        busy--;
        wakeAll();
      }
    }
  };
  await Promise.all(solvers.map(work));
  return stopped ? null : searchAnswer(input, prepared);
}
