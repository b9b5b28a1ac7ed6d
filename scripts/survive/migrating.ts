// The power goes while the tables are brought up to date: does the next start finish it, each step once?
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { migrationsIn } from '../../src/records/migrate.ts';
import { openRecords, type Records } from '../../src/records/open.ts';
import { programRoot } from '../../src/records/root.ts';

export interface MigratingDone {
  readonly tries: number;
  /** Ended when some steps were done and some not. */
  readonly inTheMiddle: number;
  readonly unfinished: number;
}

const migrator = fileURLToPath(new URL('migrator.ts', import.meta.url));
const steps = migrationsIn(join(programRoot(), 'src', 'records', 'migrations')).map((step) => step.name);

export async function killInMigration(
  records: Records,
  urlOf: (database: string) => string,
  tries: number,
  chance: () => number,
): Promise<MigratingDone> {
  let inTheMiddle = 0;
  let unfinished = 0;
  for (let n = 0; n < tries; n++) {
    const name = `migrating_${n}`;
    await records.pool.query(`create database ${name} template template0`);
    const url = urlOf(name);
    await endedAfter(url, chance() * 400);
    const before = await stepsOf(url);
    if (before.length > 0 && before.length < steps.length) inTheMiddle++;
    const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
    if (opened.ok) await opened.value.close();
    const after = await stepsOf(url);
    if (!opened.ok || JSON.stringify(after) !== JSON.stringify(steps)) unfinished++;
    await records.pool.query(`drop database ${name} with (force)`);
  }
  return { tries, inTheMiddle, unfinished };
}

async function endedAfter(url: string, afterMs: number): Promise<void> {
  const child = spawn(process.execPath, ['--import', 'tsx', migrator], {
    env: { PATH: process.env.PATH ?? '', DATABASE_URL: url },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const closed = new Promise<void>((done) => child.on('close', () => done()));
  await new Promise<void>((first) => {
    child.stdout.on('data', () => first());
    void closed.then(first);
  });
  await sleep(afterMs);
  child.kill('SIGKILL');
  await closed;
}

async function stepsOf(url: string): Promise<string[]> {
  const { default: pg } = await import('pg');
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const found = await client.query<{ name: string }>('select name from migration order by name');
    return found.rows.map((row) => row.name);
  } catch {
    return [];
  } finally {
    await client.end();
  }
}
