// Can the program work at this moment: does the database answer, with the tables this version knows, is there room on
// the disk, does the queue of plans move?
import { statfs } from 'node:fs/promises';
import { sql } from 'kysely';
import { migrationNames } from '../records/migrate.ts';
import type { Records } from '../records/open.ts';
import type { Planner } from './planner.ts';

export interface Part {
  readonly part: 'database' | 'tables' | 'disk' | 'queue';
  readonly ok: boolean;
  /** For people who are signed in; no secrets and no paths. */
  readonly found: string;
}

/** Less than this and a database soon stops writing (our choice). */
const leastFreeBytes = 200_000_000;
/** A database that takes longer is not one to work with (our choice). */
const patienceMs = 3000;

export async function readiness(records: Records, planner: Planner): Promise<readonly Part[]> {
  return await Promise.all([database(records), tables(records), disk(records), Promise.resolve(queue(planner))]);
}

async function database({ db }: Records): Promise<Part> {
  const answered = await inTime(sql`select 1`.execute(db));
  return { part: 'database', ok: answered !== null, found: answered === null ? 'no answer' : 'answers' };
}

async function tables({ db }: Records): Promise<Part> {
  const rows = await inTime(sql<{ name: string }>`select name from migration`.execute(db));
  const applied = new Set(rows?.rows.map((row) => row.name) ?? []);
  const wanted = migrationNames();
  const ok = rows !== null && applied.size === wanted.length && wanted.every((name) => applied.has(name));
  return { part: 'tables', ok, found: `${applied.size} of ${wanted.length} steps` };
}

/** Of the built-in database; a server of the shop's own looks after its own disk. */
async function disk({ folder }: Records): Promise<Part> {
  if (folder === null) return { part: 'disk', ok: true, found: 'of the server, not looked at' };
  const room = await statfs(folder);
  const freeBytes = room.bavail * room.bsize;
  return { part: 'disk', ok: freeBytes >= leastFreeBytes, found: `${Math.floor(freeBytes / 1e6)} MB free` };
}

function queue(planner: Planner): Part {
  const waiting = planner.waiting();
  return { part: 'queue', ok: !planner.isFull(), found: `${waiting} waiting` };
}

async function inTime<T>(work: Promise<T>): Promise<T | null> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<null>((done) => {
    timer = setTimeout(() => done(null), patienceMs);
  });
  try {
    return await Promise.race([work.catch(() => null), late]);
  } finally {
    clearTimeout(timer);
  }
}
