// The search on one thread: a generator that yields progress and a first answer, and returns the settled one. Stop asking
// and it stops. Several threads drive the same machine by its tasks instead (prepareSearch).
import { searchAnswer } from './build-answer.ts';
import { prepareSearch } from './prepare-search.ts';
import type { SearchAnswer, SearchProgress } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';

/** Yields after every piece of work; `answer` is set once, when every heater has been tried in the best-estimate box. */
export function* searchKits(input: SearchInput): Generator<SearchProgress, SearchAnswer> {
  const prepared = prepareSearch(input);
  const { search } = prepared;
  let shown = false;
  for (let task = search.nextTask(); task; task = search.nextTask()) {
    search.take(task, prepared.solve(task));
    const first: boolean = !shown && search.hasFirst();
    shown ||= first;
    yield { doneFrac: progressOf(prepared), answer: first ? searchAnswer(input, prepared) : null };
  }
  return searchAnswer(input, prepared);
}

/** To the end at once. */
export function searchKitsNow(input: SearchInput): SearchAnswer {
  const run = searchKits(input);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

/** Share of the arrangements that are decided or put aside; the rest counts by its versions. */
export function progressOf({ search }: ReturnType<typeof prepareSearch>): number {
  if (search.isDone()) return 1;
  const { states } = search;
  const part = states.map((s) => (s.aside || s.needless ? 1 : s.surfaces.length / Math.max(1, search.members)));
  return part.reduce((sum, v) => sum + v, 0) / Math.max(1, states.length);
}
