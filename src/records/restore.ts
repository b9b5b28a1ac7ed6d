// Puts a backup into an empty database: the tables as they were then, every row counted and hashed again, and only then
// kept; afterwards the tables are brought up to date. All or nothing.

import { once } from 'node:events';
import { createReadStream } from 'node:fs';
import { finished } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import type pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { copyTable } from './backup.ts';
import {
  type BackupEnd,
  type BackupHead,
  type BackupPart,
  backupParts,
  NotABackup,
  type TableEnd,
} from './backup-format.ts';
import { type BackupTable, backupTables, copyIn, plainValues, quoted } from './backup-tables.ts';
import { applySteps, migrate } from './migrate.ts';
import { restoreFaults } from './restore-faults.ts';
import { type ChainReport, verifyChain } from './verify-chain.ts';

export interface Restored {
  readonly head: BackupHead;
  readonly tables: readonly TableEnd[];
  readonly rows: number;
  /** Steps that brought older records up to date. */
  readonly newSteps: readonly string[];
  readonly chain: ChainReport;
}

/** Faults: "RESTORE_NOT_EMPTY", "RESTORE_NOT_A_BACKUP", "RESTORE_DIFFERS", "RECORDS_NEWER", "RECORDS_MIGRATION_CHANGED". */
export async function restoreBackup(pool: pg.Pool, file: string): Promise<Result<Restored>> {
  const client = await pool.connect();
  try {
    const held = await tablesHeld(client);
    if (held.length > 0) return bad([restoreFaults.notEmpty(held)]);
    await client.query('begin');
    const filled = await fill(client, file);
    if (!filled.ok) {
      await client.query('rollback');
      return filled;
    }
    await client.query('commit');
    const migrated = await migrate(pool);
    if (!migrated.ok) return migrated;
    return good({ ...filled.value, newSteps: migrated.value, chain: await verifyChain(client) });
  } catch (error) {
    await client.query('rollback').catch(() => undefined);
    if (error instanceof NotABackup || isUnreadable(error))
      return bad([restoreFaults.notABackup((error as Error).message)]);
    throw error;
  } finally {
    client.release();
  }
}

/** What zlib says of a file that is cut off or no gzip, and what PostgreSQL says of rows that do not fit. */
const isUnreadable = (error: unknown): boolean =>
  /^(Z_|22|23)/.test(String((error as { code?: string }).code ?? '')) ||
  (error as Error).message === 'unexpected end of file';

async function tablesHeld(client: pg.ClientBase): Promise<string[]> {
  const found = await client.query<{ name: string }>(
    "select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') order by 1",
  );
  return found.rows.map((row) => row.name);
}

type Filled = Pick<Restored, 'head' | 'tables' | 'rows'>;

async function fill(client: pg.ClientBase, file: string): Promise<Result<Filled>> {
  const source = createReadStream(file);
  const unpacked = source.pipe(createGunzip());
  source.on('error', (error) => unpacked.destroy(error));
  const parts = backupParts(unpacked)[Symbol.asyncIterator]();
  const first = await parts.next();
  const part = first.done === true ? undefined : first.value;
  if (part?.kind !== 'head') throw new NotABackup('it does not begin like one');
  const made = await applySteps(client, part.head.steps);
  if (!made.ok) return made;
  await client.query(plainValues);
  for (const month of part.head.months) await client.query('select make_reading_month($1)', [`${month}-01T00:00:00Z`]);
  const tables = new Map((await backupTables(client)).map((table) => [table.name, table]));
  // Steps may have put rows in; the backup has them too. Guards would link and refuse what is only put back.
  for (const { name } of tables.values()) await client.query(`alter table ${quoted(name)} disable trigger user`);
  await client.query(`truncate ${[...tables.keys()].map(quoted).join(', ')}`);
  const { ends, end } = await load(client, parts, tables);
  const faults = await differences(client, tables, ends, end);
  if (faults.length > 0) return bad(faults);
  for (const { name, last } of part.head.sequences) await client.query('select setval($1, $2)', [quoted(name), last]);
  for (const { name } of tables.values()) await client.query(`alter table ${quoted(name)} enable trigger user`);
  return good({ head: part.head, tables: ends, rows: end.rows });
}

async function load(
  client: pg.ClientBase,
  parts: AsyncIterator<BackupPart>,
  tables: ReadonlyMap<string, BackupTable>,
): Promise<{ readonly ends: readonly TableEnd[]; readonly end: BackupEnd }> {
  const ends: TableEnd[] = [];
  let into: ReturnType<typeof copyFrom> | null = null;
  // Rows that the database refuses are told by "finished"; leaving in the middle must end the loading first.
  const leave = async (why: Error): Promise<Error> => {
    into?.destroy(why);
    if (into !== null) await finished(into).catch(() => undefined);
    return why;
  };
  const nextPart = async () => {
    try {
      return await parts.next();
    } catch (error) {
      throw await leave(error as Error);
    }
  };
  for (;;) {
    const next = await nextPart();
    if (next.done === true) throw await leave(new NotABackup('it has no end'));
    const part = next.value;
    if (part.kind === 'end') return { ends, end: part.end };
    if (part.kind === 'table') {
      const known = tables.get(part.name);
      if (known === undefined || part.columns.some((column) => !known.columns.includes(column))) {
        throw new NotABackup(`a table that its steps do not make: ${part.name}`);
      }
      into = client.query(copyFrom(copyIn(part)));
    } else if (part.kind === 'rows' && into !== null) {
      if (into.destroyed) await finished(into);
      if (!into.write(part.bytes)) await Promise.race([once(into, 'drain'), finished(into)]);
    } else if (part.kind === 'table-end' && into !== null) {
      into.end();
      await finished(into);
      into = null;
      ends.push(part.end);
    } else throw await leave(new NotABackup('its parts are in another order'));
  }
}

/** What came in is written out again and compared, row counts and hashes. */
async function differences(
  client: pg.ClientBase,
  tables: ReadonlyMap<string, BackupTable>,
  ends: readonly TableEnd[],
  end: BackupEnd,
): Promise<Fault[]> {
  const faults: Fault[] = [];
  for (const said of ends) {
    const found = await copyTable(client, tables.get(said.table)!, () => undefined);
    if (found.rows !== said.rows || found.sha256 !== said.sha256) faults.push(restoreFaults.differs(said, found));
  }
  const rows = ends.reduce((sum, one) => sum + one.rows, 0);
  if (ends.length !== end.tables || rows !== end.rows) throw new NotABackup('tables are missing');
  return faults;
}
