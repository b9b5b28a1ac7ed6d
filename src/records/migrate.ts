// Are all numbered .sql files applied, each once and in order? Files only add; one that changed after it was
// applied, or that is missing, is refused. Two processes that start together wait for each other.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type pg from 'pg';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { programRoot } from './root.ts';

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly sha256: string;
}

type Step = Pick<Migration, 'name' | 'sha256'>;

/** Any number that no other program on the same server uses for an advisory lock (our choice). */
const lockKey = 7_430_001;

/** Applies what is missing. @returns names applied now. Faults: "RECORDS_MIGRATION_CHANGED", "RECORDS_NEWER". */
export async function migrate(pool: pg.Pool, folder = migrationFolder()): Promise<Result<readonly string[]>> {
  const wanted = migrationsIn(folder);
  const client = await pool.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [lockKey]);
    await client.query(makeStepTable);
    const done = await client.query<Step>('select name, sha256 from migration order by name');
    const faults = done.rows.flatMap((row) => changedFaults(row, wanted));
    if (faults.length > 0) return bad(faults);
    const missing = wanted.filter((m) => !done.rows.some((row) => row.name === m.name));
    for (const migration of missing) await apply(client, migration);
    return good(missing.map((m) => m.name));
  } finally {
    await client.query('select pg_advisory_unlock($1)', [lockKey]).catch(() => undefined);
    client.release();
  }
}

/** Makes the tables as they were at these steps, inside the caller's transaction. Faults: as migrate. */
export async function applySteps(
  client: pg.ClientBase,
  steps: readonly Step[],
  folder = migrationFolder(),
): Promise<Result<void>> {
  const known = migrationsIn(folder);
  const faults = steps.flatMap((step) => changedFaults(step, known));
  if (faults.length > 0) return bad(faults);
  await client.query(makeStepTable);
  for (const migration of known.filter((m) => steps.some((step) => step.name === m.name))) {
    await run(client, migration);
  }
  return good(undefined);
}

const makeStepTable =
  'create table if not exists migration (name text primary key, sha256 text not null, at timestamptz not null default now())';

const migrationFolder = (): string => join(programRoot(), 'src', 'records', 'migrations');

let known: readonly string[] | undefined;

/** Steps that this version of the program knows; read once. */
export function migrationNames(): readonly string[] {
  known ??= migrationsIn(migrationFolder()).map((m) => m.name);
  return known;
}

export function migrationsIn(folder: string): Migration[] {
  const names = readdirSync(folder).filter((name) => name.endsWith('.sql'));
  return names.sort().map((name) => {
    const sql = readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n');
    return { name, sql, sha256: createHash('sha256').update(sql).digest('hex') };
  });
}

/** One file, one transaction: all of it or nothing. */
async function apply(client: pg.PoolClient, migration: Migration): Promise<void> {
  await client.query('begin');
  try {
    await run(client, migration);
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    throw new Error(`migration ${migration.name} failed: ${(error as Error).message}`, { cause: error });
  }
}

async function run(client: pg.ClientBase, migration: Migration): Promise<void> {
  await client.query(migration.sql);
  await client.query('insert into migration (name, sha256) values ($1, $2)', [migration.name, migration.sha256]);
}

function changedFaults(row: Step, wanted: readonly Migration[]): Fault[] {
  const file = wanted.find((m) => m.name === row.name);
  if (file === undefined) return [newer(row)];
  if (file.sha256 === row.sha256) return [];
  return [
    {
      code: 'RECORDS_MIGRATION_CHANGED',
      field: row.name,
      got: 'a step whose text was changed afterwards',
      allowed: 'the steps that the records were made with, and new ones after them',
      say: 'The records were made by another version of this program than the one that was started.',
      fix: 'Start the version that last used these records, or a newer one.',
    },
  ];
}

const newer = (row: Step): Fault => ({
  code: 'RECORDS_NEWER',
  field: row.name,
  got: 'a step that this version does not know',
  allowed: 'records of this version or an older one',
  say: 'The records were made by a newer version of this program than the one that was started. They were left as they are.',
  fix: 'Start the version that last used these records, or a newer one.',
});
