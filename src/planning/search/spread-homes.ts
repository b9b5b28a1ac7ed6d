// Judges homes with several solvers at once: each takes the next home as soon as it is free; answers come in the order asked.
// Solvers are threads of Node or workers of a browser; this file knows neither.
import type { AskedHome, JudgedHome } from './judge-home.ts';

export type HomeSolver = (home: AskedHome) => Promise<JudgedHome>;

export interface HomeJudge {
  /** In the order asked; null once nobody wants to know any more. */
  readonly judge: (homes: readonly AskedHome[]) => Promise<readonly JudgedHome[] | null>;
  /** Lets what was said meanwhile be heard, between pieces of the asker's own work. */
  readonly rest: () => Promise<unknown>;
}

interface Waiting {
  readonly home: AskedHome;
  readonly done: (judged: JudgedHome | null) => void;
  readonly fail: (error: unknown) => void;
}

/** @param solvers at least one   @param cancelled asked before each home */
export function spreadHomes(
  solvers: readonly HomeSolver[],
  rest: HomeJudge['rest'],
  cancelled: () => boolean = () => false,
): HomeJudge {
  const free = [...solvers];
  const waiting: Waiting[] = [];
  const handOut = (): void => {
    while (waiting.length > 0) {
      if (cancelled()) {
        for (const { done } of waiting.splice(0)) done(null);
        return;
      }
      const solver = free.shift();
      if (!solver) return;
      const { home, done, fail } = waiting.shift()!;
      solver(home)
        .then(done, fail)
        .finally(() => {
          free.push(solver);
          handOut();
        });
    }
  };
  const judge: HomeJudge['judge'] = async (homes) => {
    const asked = homes.map(
      (home) => new Promise<JudgedHome | null>((done, fail) => waiting.push({ home, done, fail })),
    );
    handOut();
    const judged = await Promise.all(asked);
    return judged.every((one) => one !== null) ? judged : null;
  };
  return { judge, rest };
}
