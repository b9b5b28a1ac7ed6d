// Who starts, adopts, watches and stops the built-in database? One supervisor in each process that uses it.
// Rules: ask first and adopt what answers; never touch postmaster.pid; "not yet" is waited for; ready means
// that "select 1" came back; the last process that uses it stops it.
import { spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, statSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import type pg from 'pg';
import { bad, good, type Result } from '../../shared/result.ts';
import { asAccount } from './account.ts';
import { ensureCluster } from './cluster.ts';
import { engineClient, makeSocketFolder, ping, postmasterFacts, socketFolder } from './connection.ts';
import { engineCannotRun, installedBinaries } from './engine-binaries.ts';
import { databasePlace, type Place } from './place.ts';

export interface Engine {
  readonly place: Place;
  /** Folder of the unix socket: the "host" of every connection. */
  readonly socketFolder: string;
  /** True when a server was already running. */
  readonly adopted: boolean;
  /** Lets go; stops the server when no other process uses it. */
  readonly stop: () => Promise<void>;
}

interface Child {
  exited: boolean;
  error: string;
  /** Where this child's own lines begin in the log. */
  readonly logFromByte: number;
}

const startPatienceMs = 60_000;
const askEveryMs = 25;
const settleMs = 600;

/** Brings the cluster of this data folder up, by adopting or by starting it.
 *  Faults: "RECORDS_ENGINE_MISSING", "RECORDS_ENGINE_CANNOT_RUN", "RECORDS_ENGINE_VERSION", "RECORDS_OTHER_OWNER". */
export async function startEngine(dataFolder: string): Promise<Result<Engine>> {
  const installed = installedBinaries();
  if (!installed.ok) return installed;
  const placed = databasePlace(dataFolder, installed.value);
  if (!placed.ok) return placed;
  const place = placed.value;
  const faults = ensureCluster(place);
  if (faults.length > 0) return bad(faults);
  const up = await bringUp(place);
  if (!up.ok) return up;
  const { folder, adopted } = up.value;
  const watch = watchPresence(place, folder);
  await watch.ready;
  return good({ place, socketFolder: folder, adopted, stop: () => letGo(place, folder, watch.leave) });
}

/** Between two tries to bring up a server that went away. */
const reviveEveryMs = 1000;

async function bringUp(place: Place): Promise<Result<{ folder: string; adopted: boolean }>> {
  const deadline = performance.now() + startPatienceMs;
  let child: Child | null = null;
  let starts = 0;
  while (performance.now() < deadline) {
    const folder = socketFolder(place);
    const answer = await ping(place, folder);
    if (answer === 'ours') return good({ folder, adopted: starts === 0 });
    if (answer === 'another') return bad([engineCannotRun(`another database answers at ${folder}`)]);
    if (answer === 'silent' && (child === null || child.exited)) {
      // A pid file of a killed server makes the first tries fail until the system has buried the old process.
      if (child !== null && !lockedByAnother(place, child)) {
        return bad([engineCannotRun(child.error || logTail(place, child.logFromByte))]);
      }
      if (starts > 0) await sleep(300);
      child = spawnPostgres(place, folder);
      starts++;
    }
    await sleep(askEveryMs);
  }
  return bad([engineCannotRun(`no answer within ${startPatienceMs / 1000} s\n${logTail(place, 0)}`)]);
}

function spawnPostgres(place: Place, folder: string): Child {
  const account = place.account;
  const wrongFolder = makeSocketFolder(folder, account);
  if (wrongFolder !== null) return { exited: true, error: wrongFolder, logFromByte: 0 };
  const logFromByte = keptLogBytes(place.log);
  const log = openSync(place.log, logFromByte === 0 ? 'w' : 'a', 0o600);
  const child = spawn(
    place.binaries.postgres,
    ['-D', place.cluster, '-k', folder, '-c', 'listen_addresses=', '-c', 'unix_socket_permissions=0700'],
    {
      cwd: '/',
      detached: true, // or Ctrl-C in the terminal would reach it before the program has let go
      stdio: ['ignore', log, log],
      env: { PATH: process.env.PATH ?? '/usr/bin:/bin', LC_ALL: 'C' },
      ...asAccount(account),
    },
  );
  closeSync(log);
  const state: Child = { exited: false, error: '', logFromByte };
  child.on('error', (error) => Object.assign(state, { exited: true, error: error.message }));
  child.on('exit', () => Object.assign(state, { exited: true }));
  child.unref();
  return state;
}

/** A connection that says "in use" to other processes; when the server goes away under us it is brought up again, as
 *  often as it takes: what a killed server left in memory can make the first tries fail. */
function watchPresence(place: Place, folder: string): { ready: Promise<void>; leave: () => Promise<void> } {
  let leaving = false;
  let client: pg.Client | null = null;
  const enter = async (): Promise<void> => {
    const fresh = engineClient(folder);
    let inside = false;
    const onGone = (): void => {
      if (!inside || leaving) return;
      inside = false;
      setTimeout(() => void revive(), 500).unref();
    };
    fresh.on('error', onGone);
    fresh.on('end', onGone);
    await fresh.connect();
    inside = true;
    client = fresh;
  };
  const revive = async (): Promise<void> => {
    while (!leaving) {
      const up = await bringUp(place);
      if (leaving) return;
      const entered =
        up.ok &&
        (await enter().then(
          () => true,
          () => false,
        ));
      if (entered) return;
      await sleep(reviveEveryMs);
    }
  };
  const leave = async (): Promise<void> => {
    leaving = true;
    await client?.end().catch(() => undefined);
  };
  return { ready: enter(), leave };
}

async function letGo(place: Place, folder: string, leave: () => Promise<void>): Promise<void> {
  await leave();
  // Connections that were just closed stay listed for a moment; those of another process stay for good.
  const settleBy = performance.now() + settleMs;
  while (await usedByOthers(folder)) {
    if (performance.now() > settleBy) return;
    await sleep(askEveryMs);
  }
  const running = postmasterFacts(place.cluster);
  if (running === null) return;
  signal(running.pid, 'SIGINT');
  const deadline = performance.now() + startPatienceMs;
  while (performance.now() < deadline && postmasterFacts(place.cluster)?.pid === running.pid) await sleep(askEveryMs);
}

async function usedByOthers(folder: string): Promise<boolean> {
  const client = engineClient(folder);
  client.on('error', () => undefined);
  try {
    await client.connect();
    const answer = await client.query<{ n: number }>(
      "select count(*)::int as n from pg_stat_activity where backend_type = 'client backend' and pid <> pg_backend_pid()",
    );
    return (answer.rows[0]?.n ?? 0) > 0;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
}

function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch (error) {
    if ((error as { code?: string }).code !== 'ESRCH') throw error;
  }
}

const lockedByAnother = (place: Place, child: Child): boolean =>
  /lock file .* already exists/.test(logTail(place, child.logFromByte));

function logTail(place: Place, fromByte: number): string {
  try {
    return readFileSync(place.log).subarray(fromByte).toString('utf8').trimEnd().split('\n').slice(-6).join('\n');
  } catch {
    return '';
  }
}

/** Length of the log that is kept; a long one starts anew. */
function keptLogBytes(path: string): number {
  const longestLogBytes = 5_000_000;
  try {
    const size = statSync(path).size;
    return size > longestLogBytes ? 0 : size;
  } catch {
    return 0;
  }
}
