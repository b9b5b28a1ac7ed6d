// Work that may wait: kept in the same database, taken by whichever process is free, done once, tried again when the
// process that took it died. Leaves out what the work is (desk/night-work.ts, desk/proof-later.ts).

import type pg from 'pg';
import PgBoss from 'pg-boss';

export interface Queue {
  /** Takes work of this kind, one at a time in each process. */
  readonly take: <T extends object>(kind: string, work: (data: T) => Promise<object | undefined>) => Promise<void>;
  /** @returns its id, or null when the same is there already */
  readonly add: (kind: string, data: object, choice?: AddChoice) => Promise<string | null>;
  /** Adds work of this kind at these times (five fields of cron, in the zone of this machine). */
  readonly daily: (kind: string, cron: string) => Promise<void>;
  readonly state: (kind: string, id: string) => Promise<QueueState | null>;
  readonly close: () => Promise<void>;
}

export interface AddChoice {
  /** While work with this key waits or runs, the same is not added again. */
  readonly once?: string;
  /** Work that takes longer counts as lost and is tried again [s]; that of the queue unless named. */
  readonly patienceS?: number;
}

export interface QueueState {
  readonly state: 'waiting' | 'running' | 'done' | 'failed';
  readonly data: Record<string, unknown>;
  readonly output: Record<string, unknown> | null;
}

export interface QueueChoice {
  readonly onProblem: (what: string) => void;
  /** How often a process asks for work [s]. */
  readonly askEveryS?: number;
  /** Work that takes longer counts as lost and is tried again [s]. */
  readonly patienceS?: number;
  /** How often work whose process died is looked for [s]. */
  readonly lookForLostS?: number;
}

const stateOf = (state: string): QueueState['state'] => {
  if (state === 'completed') return 'done';
  if (state === 'active') return 'running';
  return state === 'failed' || state === 'cancelled' ? 'failed' : 'waiting';
};

export async function startQueue(pool: pg.Pool, choice: QueueChoice): Promise<Queue> {
  const boss = new PgBoss({
    schema: 'warmstead_queue',
    db: { executeSql: async (text, values) => await pool.query(text, values) },
    retryLimit: 2,
    expireInSeconds: choice.patienceS ?? 3600,
    maintenanceIntervalSeconds: choice.lookForLostS ?? 15,
  });
  boss.on('error', (error) => choice.onProblem(error.message.slice(0, 200)));
  await oneAfterTheOther(pool, async () => await boss.start());
  const known = new Set<string>();
  const ensure = async (kind: string): Promise<void> => {
    if (known.has(kind)) return;
    await oneAfterTheOther(pool, async () => await boss.createQueue(kind));
    known.add(kind);
  };
  return {
    take: async (kind, work) => {
      await ensure(kind);
      const options = { batchSize: 1, pollingIntervalSeconds: choice.askEveryS ?? 2 };
      await boss.work<object>(kind, options, async ([job]) =>
        job === undefined ? undefined : await work(job.data as never),
      );
    },
    add: async (kind, data, { once, patienceS } = {}) => {
      await ensure(kind);
      return await boss.send(kind, data, {
        ...(once === undefined ? {} : { singletonKey: once, singletonSeconds: 60 }),
        ...(patienceS === undefined ? {} : { expireInSeconds: patienceS }),
      });
    },
    daily: async (kind, cron) => {
      await ensure(kind);
      await boss.schedule(kind, cron, {}, { tz: Intl.DateTimeFormat().resolvedOptions().timeZone });
    },
    state: async (kind, id) => {
      const job = await boss.getJobById<Record<string, unknown>>(kind, id);
      if (job === null) return null;
      return { state: stateOf(job.state), data: job.data, output: (job.output as Record<string, unknown>) ?? null };
    },
    close: async () => await boss.stop({ graceful: true, wait: true, timeout: 10_000 }),
  };
}

/** Two processes that start together would both make the tables of the queue, and those of one kind of work. */
async function oneAfterTheOther(pool: pg.Pool, start: () => Promise<unknown>): Promise<void> {
  const client = await pool.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [startLock]);
    await start();
  } finally {
    await client.query('select pg_advisory_unlock($1)', [startLock]).catch(() => undefined);
    client.release();
  }
}

/** Any number that no other program on the same server uses for an advisory lock (our choice). */
const startLock = 7_430_004;
