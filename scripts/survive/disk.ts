// The disk of the records is full: is it told, is nothing lost that was acknowledged, and does it go on when there is room?
// Needs root on Linux, for a small disk in memory.
import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { insertEnquiry } from '../../src/records/enquiries.ts';
import { firstBranch } from '../../src/records/shops.ts';
import { verifyChain } from '../../src/records/verify-chain.ts';
import { recordsFaults } from '../../src/server/records-errors.ts';
import { answers, builtIn } from './engines.ts';

export interface DiskDone {
  readonly acknowledged: number;
  readonly refused: number;
  /** Refusals by what the caller is told. */
  readonly told: Readonly<Record<string, number>>;
  readonly missing: number;
  readonly goesOn: boolean;
  readonly chainBreaks: number;
}

const diskMb = 160;

export async function fillDisk(): Promise<DiskDone | null> {
  if (process.getuid?.() !== 0 || process.platform !== 'linux') return null;
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-small-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${diskMb}m,mode=0755`, 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    rmSync(folder, { recursive: true });
    return null;
  }
  try {
    return await onSmallDisk(folder);
  } finally {
    execFileSync('umount', ['-l', folder]);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function onSmallDisk(folder: string): Promise<DiskDone> {
  const trial = await builtIn(folder);
  const { db, pool } = trial.records;
  const at = new Date('2026-01-15T09:00:00Z');
  const { branchId } = await firstBranch(db, { shopName: 'Small', branchName: 'Counter', at });
  const filler = join(folder, 'filler');
  const { bavail, bsize } = statfsSync(folder);
  writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - 3_000_000)));
  const acknowledged: string[] = [];
  const told: Record<string, number> = {};
  let refused = 0;
  // Noise does not shrink when it is stored.
  const document = () => ({ noise: Array.from({ length: 60 }, () => randomUUID()).join('') });
  while (refused < 40 && acknowledged.length < 20_000) {
    const id = randomUUID();
    try {
      await insertEnquiry(db, { id, branchId, document: document(), at, by: 'writer' });
      acknowledged.push(id);
    } catch (error) {
      refused++;
      const code = recordsFaults(error)?.[0]?.code ?? `unknown: ${(error as Error).message}`;
      told[code] = (told[code] ?? 0) + 1;
      await sleep(50);
    }
  }
  rmSync(filler);
  await answers(pool);
  const goesOn = await tryAgain(async () => {
    const id = randomUUID();
    await insertEnquiry(db, { id, branchId, document: document(), at, by: 'writer' });
    acknowledged.push(id);
  });
  const found = await pool.query<{ n: number }>('select count(*)::int as n from enquiry where id = any($1::uuid[])', [
    acknowledged,
  ]);
  const client = await pool.connect();
  const { breaks } = await verifyChain(client);
  client.release();
  await trial.close();
  return {
    acknowledged: acknowledged.length,
    refused,
    told,
    missing: acknowledged.length - (found.rows[0]?.n ?? 0),
    goesOn,
    chainBreaks: breaks.length,
  };
}

async function tryAgain(work: () => Promise<void>): Promise<boolean> {
  for (let tries = 0; tries < 100; tries++) {
    try {
      await work();
      return true;
    } catch {
      await sleep(100);
    }
  }
  return false;
}
