// A database of its own for one test file, cloned from the template in well under a second.
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { engineUser } from '../embedded/connection.ts';
import { openRecords, type Records } from '../open.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the test engine's unix socket. */
    engineHost: string;
  }
}

export const templateName = 'warmstead_template';

/** What DATABASE_URL would hold for a new database that has all tables and no rows. */
export async function freshDatabaseUrl(): Promise<string> {
  const host = inject('engineHost');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  const admin = new pg.Client({ host, user: engineUser, database: 'postgres' });
  await admin.connect();
  try {
    // Cloning needs the template unused; another test file may be cloning it at this moment.
    await admin.query('select pg_advisory_lock(1)');
    await admin.query(`create database ${name} template ${templateName} strategy file_copy`);
  } finally {
    await admin.end();
  }
  return `postgresql://${engineUser}@/${name}?host=${encodeURIComponent(host)}`;
}

export async function freshRecords(): Promise<Records> {
  const opened = await openRecords({ databaseUrl: await freshDatabaseUrl(), dataFolder: '' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults, null, 2));
  return opened.value;
}
