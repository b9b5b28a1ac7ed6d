// Lines once solved, kept for the next search: another price of power, another number of years or a thing more that the
// customer owns asks the same boxes again. Leaves out: answers and costs, which are worked out anew.
import type { Arrangement } from '../kit/kit.ts';
import type { SearchTask } from './kit-search.ts';
import type { SearchInput } from './search-input.ts';
import type { MemberSurface } from './surface.ts';

export interface SurfaceStore {
  /** All that a task asks for, or null when something of it is missing. */
  readonly known: (key: string, task: SearchTask) => readonly MemberSurface[] | null;
  readonly keep: (key: string, task: SearchTask, surfaces: readonly MemberSurface[]) => void;
}

/** Arrangements kept; some 100 kB each with all their versions (our choice). */
const mostKept = 120;

export function surfaceStore(): SurfaceStore {
  const kept = new Map<string, (MemberSurface | undefined)[]>();
  return {
    known: (key, task) => {
      const part = kept.get(key)?.slice(task.from, task.to) ?? [];
      const whole = part.length === task.to - task.from && !part.includes(undefined);
      return whole ? (part as MemberSurface[]) : null;
    },
    keep: (key, task, surfaces) => {
      const list = kept.get(key) ?? [];
      surfaces.forEach((surface, i) => {
        list[task.from + i] = surface;
      });
      // the one used last stands last
      kept.delete(key);
      kept.set(key, list);
      const oldest = kept.keys().next().value;
      if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
    },
  };
}

/** Everything that the lines of an arrangement depend on, beside the facts of the program. */
export const surfaceKey = (
  { enclosure }: Pick<Arrangement, 'enclosure'>,
  { climate, priors, members, seed }: Pick<SearchInput, 'climate' | 'priors' | 'members' | 'seed'>,
): string => JSON.stringify([enclosure, climate, priors, members, seed]);
