// kill -9 in the middle of writes: of the program, and of the database with all its processes. Is every row that was
// acknowledged there afterwards, and is the chain unbroken?
import { execFileSync, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { isAbsolute, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type pg from 'pg';
import { build } from 'rolldown';
import { insertEnquiry, updateEnquiry } from '../../src/records/enquiries.ts';
import type { Records } from '../../src/records/open.ts';
import { programRoot } from '../../src/records/root.ts';
import { firstBranch } from '../../src/records/shops.ts';
import { verifyChain } from '../../src/records/verify-chain.ts';
import { recordsFaults } from '../../src/server/records-errors.ts';

export interface KillsDone {
  readonly kills: number;
  readonly acknowledged: number;
  readonly missing: number;
  readonly chainBreaks: number;
  /** Refusals that a caller would be told as "failed on our side". */
  readonly unexplained: number;
  readonly seconds: number;
}

/** The writer as one built file: it starts in a fraction of the time that sources take. */
async function builtWriter(): Promise<string> {
  const file = join(programRoot(), 'dist', 'survive', 'writer.mjs');
  await build({
    input: fileURLToPath(new URL('writer.ts', import.meta.url)),
    platform: 'node',
    external: (id) => !id.startsWith('.') && !isAbsolute(id),
    output: { file, format: 'esm', codeSplitting: false },
    logLevel: 'silent',
  });
  return file;
}

/** Several writers at once, each ended at a moment of chance after its first row. */
export async function killPrograms(
  env: Record<string, string>,
  records: Records,
  kills: number,
  chance: () => number,
): Promise<KillsDone> {
  const started = performance.now();
  const acknowledged: string[] = [];
  let left = kills;
  const writer = await builtWriter();
  const one = async (): Promise<void> => {
    while (left > 0) {
      left--;
      acknowledged.push(...(await writeUntilKilled(writer, env, 20 + chance() * 230)));
    }
  };
  await Promise.all([one(), one(), one()]);
  return await counted(records.pool, acknowledged, kills, started);
}

async function writeUntilKilled(writer: string, env: Record<string, string>, afterMs: number): Promise<string[]> {
  const child = spawn(process.execPath, [writer], {
    env: { PATH: process.env.PATH ?? '', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  let complaint = '';
  child.stderr.on('data', (text) => {
    complaint += text;
  });
  const closed = new Promise<void>((done) => child.on('close', () => done()));
  await new Promise<void>((first) => {
    child.stdout.on('data', (text) => {
      said += text;
      first();
    });
    void closed.then(first);
  });
  await sleep(afterMs);
  child.kill('SIGKILL');
  await closed;
  if (said === '') throw new Error(`a writer wrote nothing: ${complaint}`);
  // The last line may have been cut by the kill; what was not said whole was not acknowledged.
  return said
    .slice(0, said.lastIndexOf('\n'))
    .split('\n')
    .filter((line) => line !== '');
}

/** Writers in this process; the database is ended with all its processes and brought up again. */
export async function killDatabase(
  records: Records,
  kills: number,
  chance: () => number,
  database: { readonly pid: () => number; readonly up: () => Promise<void> },
): Promise<KillsDone> {
  const started = performance.now();
  const acknowledged: string[] = [];
  const at = new Date('2026-01-15T09:00:00Z');
  const { branchId } = await firstBranch(records.db, { shopName: 'Survives', branchName: 'Counter', at });
  let stopping = false;
  let unexplained = 0;
  const write = async (): Promise<void> => {
    while (!stopping) {
      const id = randomUUID();
      const what = { id, branchId, at, by: 'writer' };
      try {
        await insertEnquiry(records.db, { ...what, document: { said: `${id}/1` } });
        acknowledged.push(`${id}/1`);
        const row = await updateEnquiry(records.db, { ...what, fromVersion: 1, document: { said: `${id}/2` } });
        if (row !== undefined) acknowledged.push(`${id}/2`);
      } catch (error) {
        if (recordsFaults(error) === null) {
          unexplained++;
          console.log(`  not explained: ${(error as Error).message}`);
        }
        await sleep(20);
      }
    }
  };
  const writers = [write(), write(), write(), write()];
  for (let n = 0; n < kills; n++) {
    const before = acknowledged.length;
    while (acknowledged.length < before + 5) await sleep(10);
    await sleep(chance() * 150);
    killAll(database.pid());
    await database.up();
  }
  stopping = true;
  await Promise.all(writers);
  return { ...(await counted(records.pool, acknowledged, kills, started)), unexplained };
}

/** The database's first process and its children, before one of them could tell another. */
export function killAll(pid: number): void {
  let children: number[] = [];
  try {
    children = execFileSync('pgrep', ['-P', String(pid)], { encoding: 'utf8' })
      .trim()
      .split('\n')
      .map(Number);
  } catch {
    // It had none.
  }
  for (const one of [pid, ...children]) {
    try {
      process.kill(one, 'SIGKILL');
    } catch {
      // It had ended by itself.
    }
  }
}

async function counted(
  pool: pg.Pool,
  acknowledged: readonly string[],
  kills: number,
  started: number,
): Promise<KillsDone> {
  const found = await pool.query<{ said: string }>(
    "select said from unnest($1::text[]) said where not exists (select 1 from enquiry_version v where v.enquiry_id = split_part(said, '/', 1)::uuid and v.version = split_part(said, '/', 2)::int and v.document ->> 'said' = said)",
    [acknowledged],
  );
  const client = await pool.connect();
  const report = await verifyChain(client);
  client.release();
  return {
    kills,
    acknowledged: acknowledged.length,
    missing: found.rows.length,
    chainBreaks: report.breaks.length,
    unexplained: 0,
    seconds: (performance.now() - started) / 1000,
  };
}
