// The database is stopped as for an update, stays away, and comes back: is everybody told, and goes the work on by itself?
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { insertEnquiry } from '../../src/records/enquiries.ts';
import type { Records } from '../../src/records/open.ts';
import { firstBranch } from '../../src/records/shops.ts';
import { recordsFaults } from '../../src/server/records-errors.ts';

export interface AwayDone {
  readonly times: number;
  readonly acknowledged: number;
  readonly missing: number;
  /** Refusals by what the caller is told. */
  readonly told: Readonly<Record<string, number>>;
  readonly unexplained: number;
  /** From the moment it answers again to the next row that is kept, the longest [s]. */
  readonly longestBackS: number;
}

export async function databaseAway(
  { db, pool }: Records,
  times: number,
  awayMs: number,
  database: { readonly down: () => Promise<void>; readonly up: () => Promise<void> },
): Promise<AwayDone> {
  const at = new Date('2026-01-15T09:00:00Z');
  const { branchId } = await firstBranch(db, { shopName: 'Away', branchName: 'Counter', at });
  const acknowledged: string[] = [];
  const told: Record<string, number> = {};
  let unexplained = 0;
  let stopping = false;
  const write = async (): Promise<void> => {
    while (!stopping) {
      const id = randomUUID();
      try {
        await insertEnquiry(db, { id, branchId, document: {}, at, by: 'writer' });
        acknowledged.push(id);
      } catch (error) {
        const code = recordsFaults(error)?.[0]?.code;
        if (code === undefined) unexplained++;
        else told[code] = (told[code] ?? 0) + 1;
        await sleep(50);
      }
    }
  };
  const writers = [write(), write(), write()];
  let longestBackS = 0;
  for (let n = 0; n < times; n++) {
    await sleep(200);
    await database.down();
    await sleep(awayMs);
    await database.up();
    const answeredAt = performance.now();
    const before = acknowledged.length;
    while (acknowledged.length === before) await sleep(10);
    longestBackS = Math.max(longestBackS, (performance.now() - answeredAt) / 1000);
  }
  stopping = true;
  await Promise.all(writers);
  const found = await pool.query<{ n: number }>('select count(*)::int as n from enquiry where id = any($1::uuid[])', [
    acknowledged,
  ]);
  const missing = acknowledged.length - (found.rows[0]?.n ?? 0);
  return { times, acknowledged: acknowledged.length, missing, told, unexplained, longestBackS };
}
