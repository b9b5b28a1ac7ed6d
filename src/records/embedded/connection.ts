// Is somebody answering on this cluster's socket, and is it really this cluster? One question, one answer;
// waiting and starting are the supervisor's (supervisor.ts).
import { chmodSync, chownSync, existsSync, lstatSync, mkdirSync, readFileSync, realpathSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { Account } from './account.ts';
import { type Place, shortHash } from './place.ts';

export const engineUser = 'warmstead';
/** Unix sockets live in paths of at most about 100 bytes (107 on Linux, 103 on macOS). */
const longestSocketPath = 100;

export type Ping = 'ours' | 'starting' | 'silent' | 'another';

/** The socket folder of a running or orphaned server when there is one, else a short one of our own. */
export function socketFolder(place: Place): string {
  const pidFile = postmasterFacts(place.cluster);
  return pidFile?.socketFolder ?? ownSocketFolder(place);
}

/** Line 1 is the process, line 5 the socket folder. The file is only ever read: PostgreSQL judges it itself. */
export function postmasterFacts(cluster: string): { pid: number; socketFolder: string | null } | null {
  const file = join(cluster, 'postmaster.pid');
  if (!existsSync(file)) return null;
  const lines = readFileSync(file, 'utf8').split('\n');
  const pid = Number(lines[0]);
  if (!Number.isInteger(pid) || pid <= 0) return null;
  return { pid, socketFolder: lines[4]?.startsWith('/') === true ? lines[4] : null };
}

function ownSocketFolder(place: Place): string {
  const name = `warmstead-${shortHash(place.cluster)}`;
  const usual = join(tmpdir(), name);
  return usual.length + '/.s.PGSQL.5432'.length <= longestSocketPath ? usual : join('/tmp', name);
}

/** Makes the folder for the account alone and says what is wrong with it, or null. A folder or a link that
 *  somebody else put there is never used. */
export function makeSocketFolder(folder: string, account: Account | null): string | null {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const found = lstatSync(folder);
  if (!found.isDirectory()) return `${folder} is not a folder`;
  if (found.uid === process.getuid?.()) {
    chmodSync(folder, 0o700);
    if (account !== null) chownSync(folder, account.uid, account.gid);
    return null;
  }
  return found.uid === account?.uid ? null : `${folder} belongs to somebody else (account number ${found.uid})`;
}

/** A client for the cluster's socket. */
export function engineClient(folder: string, database = 'postgres'): pg.Client {
  return new pg.Client({ host: folder, user: engineUser, database, connectionTimeoutMillis: 5_000 });
}

/** Asks "select 1" and whose data the answering server holds. */
export async function ping(place: Place, folder: string): Promise<Ping> {
  const client = engineClient(folder);
  client.on('error', () => undefined);
  try {
    await client.connect();
    const answer = await client.query<{ data_directory: string }>('show data_directory');
    const theirs = answer.rows[0]?.data_directory;
    return theirs !== undefined && realpathSync(theirs) === realpathSync(place.cluster) ? 'ours' : 'another';
  } catch (error) {
    // 57P03: the server is up but still recovering or going down.
    return (error as { code?: string }).code === '57P03' ? 'starting' : 'silent';
  } finally {
    await client.end().catch(() => undefined);
  }
}
