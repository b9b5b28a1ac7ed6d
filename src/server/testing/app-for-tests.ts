// The whole server in this process on a database of its own, without listening: real desk, real records, real planner.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Clock } from '../../desk/desk-context.ts';
import { startPlanner } from '../../desk/planner.ts';
import { firstBranch } from '../../records/shops.ts';
import { freshRecords } from '../../records/testing/fresh-database.ts';
import { buildApp } from '../app.ts';
import type { App } from '../types.ts';

export interface AppForTests {
  readonly app: App;
  readonly close: () => Promise<void>;
}

/** Every look at it is one minute later. */
export function steppingClock(from = '2026-01-15T09:00:00Z'): Clock {
  let atMs = new Date(from).getTime();
  return {
    now: () => {
      atMs += 60_000;
      return new Date(atMs);
    },
  };
}

export async function appForTests(): Promise<AppForTests> {
  const records = await freshRecords();
  const clock = steppingClock();
  const branch = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: clock.now() });
  const planner = startPlanner(1);
  const webFolder = pagesForTests();
  const app = await buildApp(
    {
      records,
      branch,
      planner,
      desk: () => ({ actor: { name: 'tester', branchId: branch.branchId, role: 'owner' }, clock, db: records.db }),
    },
    { webFolder, hosts: [] },
  );
  return {
    app,
    close: async () => {
      await app.close();
      await planner.close();
      await records.close();
      rmSync(webFolder, { recursive: true });
    },
  };
}

function pagesForTests(): string {
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-pages-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>pages for tests</title>');
  writeFileSync(join(folder, 'assets', 'main-abc123.js'), 'export {};');
  return folder;
}
