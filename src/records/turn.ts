// Several processes stand behind one database and one thing must be done by exactly one of them: whose turn is it?
// The one that holds a lock of its own session; when it dies the database lets go and another takes over.
import { setTimeout as sleep } from 'node:timers/promises';
import type pg from 'pg';

export interface Turn {
  readonly held: () => boolean;
  readonly close: () => Promise<void>;
}

export interface TurnChoice {
  /** One number for each thing to be done. */
  readonly key: number;
  /** Begins the work. @returns how it ends */
  readonly begin: () => () => Promise<void>;
  /** How often somebody who waits asks again [ms]. */
  readonly askEveryMs?: number;
}

/** First half of the lock's name (our choice); the second is the key. */
const lockSpace = 7_430_010;

export function holdTurn(pool: pg.Pool, { key, begin, askEveryMs = 2000 }: TurnChoice): Turn {
  const closing = new AbortController();
  let working = false;

  const hold = async (client: pg.PoolClient): Promise<void> => {
    const end = begin();
    working = true;
    const lost = new Promise<void>((done) => {
      client.once('error', () => done());
      client.once('end', () => done());
      closing.signal.addEventListener('abort', () => done());
    });
    await lost;
    working = false;
    await end();
  };
  const ask = async (): Promise<void> => {
    const client = await pool.connect();
    // A connection that breaks is told here, and the lock is gone with it.
    client.on('error', () => undefined);
    try {
      const got = await client.query<{ mine: boolean }>('select pg_try_advisory_lock($1, $2) as mine', [
        lockSpace,
        key,
      ]);
      if (got.rows[0]?.mine === true) await hold(client);
    } finally {
      client.release(true);
    }
  };
  const running = (async () => {
    while (!closing.signal.aborted) {
      await ask().catch(() => undefined);
      await sleep(askEveryMs, undefined, { signal: closing.signal }).catch(() => undefined);
    }
  })();
  return {
    held: () => working,
    close: async () => {
      closing.abort();
      await running;
    },
  };
}

export const turns = { liveFeed: 1 } as const;
