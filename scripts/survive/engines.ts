// Both engines for the trials: the built-in database in a folder of its own, and a server of the system's own.
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type pg from 'pg';
import { postmasterFacts } from '../../src/records/embedded/connection.ts';
import { openRecords, type Records } from '../../src/records/open.ts';
import { startSystemServer, systemPrograms } from '../../src/records/testing/servers.ts';

export interface Trial {
  readonly name: string;
  readonly env: Record<string, string>;
  readonly records: Records;
  readonly pid: () => number;
  /** Waits until it answers again after it was ended. */
  readonly up: () => Promise<void>;
  /** Ends it as for an update; only where it does not bring itself back. */
  readonly down?: () => Promise<void>;
  /** The same records once more, with connections of their own. */
  readonly again: () => Promise<Records>;
  readonly close: () => Promise<void>;
}

export async function builtIn(within?: string): Promise<Trial> {
  const folder = within ?? mkdtempSync(join(tmpdir(), 'warmstead-survive-'));
  chmodSync(folder, 0o755);
  const records = await opened({ dataFolder: folder });
  const cluster = join(records.folder ?? folder, 'pg');
  return {
    name: 'built-in',
    env: { WARMSTEAD_DATA: folder },
    records,
    pid: () => {
      const running = postmasterFacts(cluster);
      // A process of the number 0 would be this one and its whole group.
      if (running === null) throw new Error('the built-in database does not run');
      return running.pid;
    },
    up: async () => await answers(records.pool),
    again: async () => await opened({ dataFolder: folder }),
    close: async () => {
      await records.close();
      if (within === undefined) rmSync(folder, { recursive: true, force: true });
    },
  };
}

export async function ownServer(): Promise<Trial | null> {
  if (systemPrograms === undefined) return null;
  const server = await startSystemServer();
  const url = server.url('postgres');
  const records = await opened({ databaseUrl: url, dataFolder: '' });
  return {
    name: 'a server of the system',
    env: { DATABASE_URL: url },
    records,
    pid: () => server.process().pid ?? 0,
    down: server.end,
    again: async () => await opened({ databaseUrl: url, dataFolder: '' }),
    up: async () => {
      await server.startAgain();
      await answers(records.pool);
    },
    close: async () => {
      await records.close();
      await server.stop();
    },
  };
}

async function opened(choice: { databaseUrl?: string; dataFolder: string }): Promise<Records> {
  const records = await openRecords(choice);
  if (!records.ok) throw new Error(JSON.stringify(records.faults));
  return records.value;
}

export async function answers(pool: pg.Pool): Promise<void> {
  for (let tries = 0; ; tries++) {
    try {
      await pool.query('select 1');
      return;
    } catch (error) {
      if (tries > 2400) throw error;
      await sleep(50);
    }
  }
}
