// Gives the tests a real database: one built-in engine for a whole run, one template with all tables. With
// WARMSTEAD_TEST_ENGINE=server it is a PostgreSQL of the system's own instead.
// Vitest calls setup before the first test and what it returns after the last.
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { engineUser } from '../embedded/connection.ts';
import { startEngine } from '../embedded/supervisor.ts';
import { migrate } from '../migrate.ts';
import { templateName } from './fresh-database.ts';
import { startSystemServer } from './servers.ts';

const prefix = 'warmstead-test-';
const ownerName = 'owner.pid';

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  await sweep();
  const engine = process.env.WARMSTEAD_TEST_ENGINE === 'server' ? await systemEngine() : await builtInEngine();
  const { host } = engine;
  const admin = new pg.Client({ host, user: engineUser, database: 'postgres' });
  await admin.connect();
  await admin.query(`create database ${templateName}`);
  await admin.end();
  const pool = new pg.Pool({ host, user: engineUser, database: templateName });
  const migrated = await migrate(pool);
  await pool.end();
  if (!migrated.ok) throw new Error(JSON.stringify(migrated.faults, null, 2));
  project.provide('engineHost', host);
  return engine.stop;
}

interface TestEngine {
  /** Folder of its unix socket. */
  readonly host: string;
  readonly stop: () => Promise<void>;
}

async function builtInEngine(): Promise<TestEngine> {
  const folder = mkdtempSync(join(tmpdir(), prefix));
  writeFileSync(join(folder, ownerName), String(process.pid));
  chmodSync(folder, 0o755); // or root's database account could not enter and the data would go elsewhere
  const engine = await startEngine(folder);
  if (!engine.ok) throw new Error(JSON.stringify(engine.faults, null, 2));
  const host = engine.value.socketFolder;
  const stop = async (): Promise<void> => {
    await engine.value.stop();
    const { folder: placed } = engine.value.place;
    for (const used of new Set([folder, placed, host])) rmSync(used, { recursive: true, force: true });
  };
  return { host, stop };
}

const systemEngine = async (): Promise<TestEngine> => await startSystemServer(undefined, engineUser);

/** A run that was killed leaves its engine running; the next one stops it and clears up. */
async function sweep(): Promise<void> {
  for (const name of readdirSync(tmpdir()).filter((one) => one.startsWith(prefix))) {
    const folder = join(tmpdir(), name);
    const owner = join(folder, ownerName);
    if (!existsSync(owner) || isAlive(Number(readFileSync(owner, 'utf8')))) continue;
    const left = await startEngine(folder);
    if (left.ok) await left.value.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code === 'EPERM';
  }
}
