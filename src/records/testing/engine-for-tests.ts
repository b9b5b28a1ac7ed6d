// Gives the tests a real database: one built-in engine for a whole run, one template with all tables.
// Vitest calls setup before the first test and what it returns after the last.
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { engineUser } from '../embedded/connection.ts';
import { startEngine } from '../embedded/supervisor.ts';
import { migrate } from '../migrate.ts';
import { templateName } from './fresh-database.ts';

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-test-'));
  chmodSync(folder, 0o755); // or root's database account could not enter and the data would go elsewhere
  const engine = await startEngine(folder);
  if (!engine.ok) throw new Error(JSON.stringify(engine.faults, null, 2));
  const host = engine.value.socketFolder;
  const admin = new pg.Client({ host, user: engineUser, database: 'postgres' });
  await admin.connect();
  await admin.query(`create database ${templateName}`);
  await admin.end();
  const pool = new pg.Pool({ host, user: engineUser, database: templateName });
  const migrated = await migrate(pool);
  await pool.end();
  if (!migrated.ok) throw new Error(JSON.stringify(migrated.faults, null, 2));
  project.provide('engineHost', host);
  return async () => {
    await engine.value.stop();
    const { folder: placed } = engine.value.place;
    for (const used of new Set([folder, placed, host])) rmSync(used, { recursive: true, force: true });
  };
}
