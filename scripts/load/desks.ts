// So many desks at work at once: each asks, waits as long as a person reads, and asks again. How long do answers take?
import type { App } from '../../src/server/types.ts';

export interface Asked {
  readonly name: string;
  readonly url: (desk: number, turn: number) => string;
  /** Out of 100 requests. */
  readonly share: number;
}

export interface Answered {
  readonly name: string;
  readonly count: number;
  readonly failed: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
}

/** A person reads for about so long before the next click; our choice. */
const readingMs = 1500;

export async function workDesks(
  app: App,
  cookies: readonly string[],
  seconds: number,
  asked: readonly Asked[],
  chance: () => number,
): Promise<Answered[]> {
  const times = new Map<string, number[]>(asked.map((one) => [one.name, []]));
  const failed = new Map<string, number>();
  const until = performance.now() + seconds * 1000;
  const work = async (desk: number): Promise<void> => {
    await wait(chance() * readingMs);
    for (let turn = 0; performance.now() < until; turn++) {
      const one = pick(asked, chance());
      const started = performance.now();
      const answer = await app.inject({
        method: 'GET',
        url: one.url(desk, turn),
        headers: { cookie: cookies[desk] ?? '' },
      });
      times.get(one.name)?.push(performance.now() - started);
      if (answer.statusCode !== 200) failed.set(one.name, (failed.get(one.name) ?? 0) + 1);
      await wait(readingMs * (0.5 + chance()));
    }
  };
  await Promise.all(cookies.map((_, desk) => work(desk)));
  return asked.map(({ name }) => {
    const sorted = (times.get(name) ?? []).sort((a, b) => a - b);
    const at = (share: number): number =>
      sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
    return {
      name,
      count: sorted.length,
      failed: failed.get(name) ?? 0,
      p50Ms: at(0.5),
      p95Ms: at(0.95),
      p99Ms: at(0.99),
    };
  });
}

function pick(asked: readonly Asked[], chance: number): Asked {
  let left = chance * asked.reduce((sum, one) => sum + one.share, 0);
  for (const one of asked) {
    left -= one.share;
    if (left < 0) return one;
  }
  return asked[0]!;
}

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));
