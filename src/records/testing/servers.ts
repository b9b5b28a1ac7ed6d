// A PostgreSQL of the system's own for a test, beside the built-in one: made empty, gone afterwards. Null where the system
// has no such programs (Debian: apt-get install postgresql).
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { asAccount, databaseAccount } from '../embedded/account.ts';

const systemFolder = '/usr/lib/postgresql';
const versions = existsSync(systemFolder) ? readdirSync(systemFolder).filter((v) => Number(v) >= 15) : [];

/** Folder of the programs of a server of the system's own; undefined where there is none. */
export const systemPrograms = versions
  .map((v) => join(systemFolder, v, 'bin'))
  .find((bin) => existsSync(join(bin, 'postgres')));

export interface SystemServer {
  readonly url: (database: string) => string;
  readonly host: string;
  readonly cluster: string;
  readonly process: () => ChildProcess;
  /** As for an update: whoever is connected is sent away. */
  readonly end: () => Promise<void>;
  /** After it was killed or ended. */
  readonly startAgain: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

export const systemUser = 'shop';

/** @param within  a folder to make it in; a new one of its own unless named
 *  @param user    the name of its first user */
export async function startSystemServer(within?: string, user = systemUser): Promise<SystemServer> {
  if (systemPrograms === undefined) throw new Error("this needs the programs of Debian's postgresql");
  const bin = systemPrograms;
  const account = databaseAccount(null);
  const folder = within ?? mkdtempSync(join(tmpdir(), 'warmstead-own-'));
  chmodSync(folder, 0o755);
  const cluster = join(folder, 'pg');
  mkdirSync(cluster, { mode: 0o700 });
  if (account !== null) for (const path of [folder, cluster]) chownSync(path, account.uid, account.gid);
  const options = { cwd: '/', ...asAccount(account) };
  const initArguments = ['-D', cluster, '-U', user, '-A', 'trust', '-E', 'UTF8', '--locale=C', '-N'];
  const made = spawnSync(join(bin, 'initdb'), initArguments, options);
  if (made.status !== 0) throw new Error(String(made.stderr));
  // What it says is not read: into a pipe that nobody empties it would in the end wait for ever.
  const quiet = { ...options, stdio: 'ignore' as const };
  const run = () => spawn(join(bin, 'postgres'), ['-D', cluster, '-k', folder, '-c', 'listen_addresses='], quiet);
  let running = run();
  await answering(folder, user);
  const end = async (): Promise<void> => {
    if (running.exitCode !== null || running.signalCode !== null) return;
    const ended = new Promise((done) => running.on('exit', done));
    running.kill('SIGINT');
    await ended;
  };
  return {
    end,
    url: (database) => `postgresql://${user}@/${database}?host=${encodeURIComponent(folder)}`,
    host: folder,
    cluster,
    process: () => running,
    startAgain: async () => {
      running = run();
      // The lock of a killed server makes the first tries end until the system has buried the old processes.
      await answering(folder, user, () => {
        if (running.exitCode !== null) running = run();
      });
    },
    stop: async () => {
      await end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function answering(host: string, user: string, between: () => void = () => undefined): Promise<void> {
  for (let tries = 0; ; tries++) {
    const client = new pg.Client({ host, user, database: 'postgres' });
    client.on('error', () => undefined);
    try {
      await client.connect();
      return;
    } catch (error) {
      if (tries > 600) throw error;
      await sleep(100);
      between();
    } finally {
      await client.end().catch(() => undefined);
    }
  }
}
