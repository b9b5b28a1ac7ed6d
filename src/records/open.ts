// How does a process come by its records: a server named by DATABASE_URL, or the built-in one? Leaves out what is
// in them (one file a table) and the server's own life (embedded/).
import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import { bad, good, type Result } from '../shared/result.ts';
import { engineUser } from './embedded/connection.ts';
import { type Engine, startEngine } from './embedded/supervisor.ts';
import { migrate } from './migrate.ts';
import type { Db, Tables } from './schema.ts';

/** A database that answers; what tables it has is not asked. */
export interface Database {
  /** For what goes beside queries: bulk loading, locks of a session. */
  readonly pool: pg.Pool;
  /** "built-in" or "server": shown at start and by /api/health. */
  readonly kind: 'built-in' | 'server';
  /** Folder of the built-in database, which may lie outside the data folder; null for a server. */
  readonly folder: string | null;
  readonly close: () => Promise<void>;
}

export interface Records extends Database {
  readonly db: Db;
}

export interface RecordsChoice {
  /** Set: this server. Not set: the built-in database in dataFolder. */
  readonly databaseUrl?: string | undefined;
  readonly dataFolder: string;
  /** Told about connections that break while idle; the next use makes a new one. */
  readonly onIdleError?: (error: Error) => void;
}

const builtInDatabase = 'warmstead';

/** Opens the records and brings their tables up to date. Faults: those of openDatabase and migrate. */
export async function openRecords(choice: RecordsChoice): Promise<Result<Records>> {
  const opened = await openDatabase(choice);
  if (!opened.ok) return opened;
  const { pool } = opened.value;
  const db = dbOn(pool);
  try {
    const migrated = await migrate(pool);
    if (migrated.ok) return good({ ...opened.value, db });
    await opened.value.close();
    return migrated;
  } catch (error) {
    await opened.value.close();
    const code = (error as { code?: string }).code;
    if (opened.value.kind === 'server' && code !== undefined)
      return bad([unreachable((error as Error).message || code)]);
    throw error;
  }
}

/** Opens the database as it is. Faults: those of startEngine, "RECORDS_UNREACHABLE". */
export async function openDatabase(choice: RecordsChoice): Promise<Result<Database>> {
  if (choice.databaseUrl !== undefined && choice.databaseUrl !== '') {
    return await withPool({ connectionString: choice.databaseUrl }, null, choice);
  }
  const engine = await startEngine(choice.dataFolder);
  if (!engine.ok) return engine;
  await ensureDatabase(engine.value);
  const config = { host: engine.value.socketFolder, user: engineUser, database: builtInDatabase };
  return await withPool(config, engine.value, choice);
}

async function withPool(
  config: pg.PoolConfig,
  engine: Engine | null,
  choice: RecordsChoice,
): Promise<Result<Database>> {
  const pool = new pg.Pool({ max: 10, connectionTimeoutMillis: 10_000, application_name: 'warmstead', ...config });
  pool.on('error', (error) => choice.onIdleError?.(error));
  // A connection that breaks between two queries of one transaction: its next query tells; nobody hears it here.
  pool.on('connect', (client) => client.on('error', () => undefined));
  const close = async (): Promise<void> => {
    await pool.end();
    await engine?.stop();
  };
  try {
    (await pool.connect()).release();
    const kind = engine === null ? 'server' : 'built-in';
    return good({ pool, kind, folder: engine?.place.folder ?? null, close });
  } catch (error) {
    await close();
    const code = (error as { code?: string }).code;
    if (engine === null && code !== undefined) return bad([unreachable((error as Error).message || code)]);
    throw error;
  }
}

/** The message never repeats the URL: it may hold a password. */
function unreachable(what: string) {
  return {
    code: 'RECORDS_UNREACHABLE',
    field: 'DATABASE_URL',
    got: what,
    allowed: 'a PostgreSQL 15 or newer that answers, and a database in it that this user may create tables in',
    say: 'The database server named by DATABASE_URL cannot be used.',
    fix: 'Check its address, name and password, or unset DATABASE_URL to use the built-in database.',
  };
}

async function ensureDatabase(engine: Engine): Promise<void> {
  const client = new pg.Client({ host: engine.socketFolder, user: engineUser, database: 'postgres' });
  await client.connect();
  try {
    await client.query(`create database ${builtInDatabase}`);
  } catch (error) {
    // 42P04: it is there already; 23505: another process is making it at this moment.
    if (!['42P04', '23505'].includes((error as { code?: string }).code ?? '')) throw error;
  } finally {
    await client.end();
  }
}

/** Typed queries over a pool; closing the pool is the caller's. */
export const dbOn = (pool: pg.Pool): Db => new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
