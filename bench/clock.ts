// How long something takes on this processor: CPU time of the whole process, so that other programs waiting for the same
// core do not count; medians of several runs, with the spread beside them. Elapsed time is left out on purpose.

export interface Took {
  /** Median CPU time of one call [ms]. */
  readonly ms: number;
  /** Half the distance between the quarter and three quarter marks, over the median: how restless the machine is. */
  readonly spread: number;
}

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** CPU time of one call [ms]. */
export function cpuTimeOf(work: () => void): number {
  const from = cpuMs();
  work();
  return cpuMs() - from;
}

export function tookOf(times: readonly number[]): Took {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (part: number) => sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]!;
  return { ms: at(0.5), spread: (at(0.75) - at(0.25)) / 2 / at(0.5) };
}

/** Time a call that is over too soon to be timed by itself: `each` calls a run, `runs` runs, after a warm-up of at least
 *  two runs and a good while, so that the compiler has done its work. */
export function timeOf(work: () => void, runs: number, each = 1): Took {
  const once = () => cpuTimeOf(() => repeat(work, each)) / each;
  const from = cpuMs();
  for (let i = 0; i < 2 || cpuMs() - from < warmUpMs; i++) once();
  return tookOf(Array.from({ length: runs }, once));
}

/** CPU time of a warm-up [ms]; our choice: twice what the compiler was seen to need. */
const warmUpMs = 600;

function repeat(work: () => void, times: number): void {
  for (let i = 0; i < times; i++) work();
}
