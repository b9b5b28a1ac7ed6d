// What the program does by itself at night: a place for the readings of the coming months, a backup where one is wanted,
// and once a week a check of the chain. In the queue, so that of several processes one does it.
import type pg from 'pg';
import { addBackup } from '../records/backup-folder.ts';
import type { Queue } from '../records/queue.ts';
import { ensureReadingMonths } from '../records/reading-months.ts';
import { forgetRequests } from '../records/request-counts.ts';
import type { Db } from '../records/schema.ts';
import { verifyChain } from '../records/verify-chain.ts';
import { forgetWorkEnds } from '../records/work-ends.ts';
import type { Clock } from './desk-context.ts';

export interface NightWork {
  readonly db: Db;
  readonly pool: pg.Pool;
  readonly clock: Clock;
  /** Null: no backups. */
  readonly backup: { readonly folder: string; readonly keep: number } | null;
  /** Told what somebody must look at. */
  readonly onProblem: (what: string) => void;
}

export const nightKinds = { months: 'reading-months', backup: 'backup', verify: 'verify-records' } as const;

export async function startNightWork(queue: Queue, night: NightWork): Promise<void> {
  await queue.take(nightKinds.months, async () => await makeMonths(night));
  await queue.daily(nightKinds.months, '30 2 * * *');
  await queue.take(nightKinds.verify, async () => await verify(night));
  await queue.daily(nightKinds.verify, '0 4 * * 0');
  const { backup } = night;
  if (backup === null) return;
  await queue.take(nightKinds.backup, async () => {
    try {
      return await addBackup(night.pool, backup.folder, backup.keep, night.clock.now());
    } catch (error) {
      night.onProblem(`no backup was made in ${backup.folder}: ${(error as Error).message.slice(0, 200)}`);
      throw error;
    }
  });
  await queue.daily(nightKinds.backup, '15 3 * * *');
}

async function makeMonths({ db, clock }: NightWork): Promise<undefined> {
  const now = clock.now();
  const coming = [0, 1, 2].map((n) => new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + n, 1)));
  await ensureReadingMonths(db, coming);
  await forgetRequests(db);
  await forgetWorkEnds(db, new Date(now.getTime() - 86_400_000));
}

async function verify({ pool, onProblem }: NightWork): Promise<object> {
  const client = await pool.connect();
  try {
    const { links, breaks, heads } = await verifyChain(client);
    const first = breaks[0];
    if (first !== undefined) {
      onProblem(
        `the chain of the records is broken: ${first.kind} ${first.table} ${first.row}; run "warmstead verify-records"`,
      );
    }
    return { links, breaks: breaks.length, heads };
  } finally {
    client.release();
  }
}
