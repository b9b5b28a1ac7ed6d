// The whole server in this process on a built-in database of its own, for requests without a network.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { systemClock } from '../../src/desk/desk-context.ts';
import { startPlanner } from '../../src/desk/planner.ts';
import { dataFolder } from '../../src/records/data-files.ts';
import { fillEveryTable } from '../../src/records/testing/every-table.ts';
import { appAsOwner } from '../../src/server/testing/app-for-tests.ts';
import type { App } from '../../src/server/types.ts';
import { builtIn } from './engines.ts';
import { doorsOf } from './fuzz.ts';

export interface TrialApp {
  readonly app: App;
  readonly openapi: Record<string, unknown>;
  readonly doors: number;
  /** Ids that exist, so that requests get further than "unknown". */
  readonly ids: readonly string[];
  readonly enquiryId: string;
  readonly goodFile: Buffer;
  readonly close: () => Promise<void>;
}

export async function appForTrials(): Promise<TrialApp> {
  const trial = await builtIn();
  const { records } = trial;
  const filled = await fillEveryTable(records.db);
  const planner = startPlanner(1);
  const webFolder = mkdtempSync(join(tmpdir(), 'warmstead-no-pages-'));
  const branch = { branchId: filled.branchId, branchName: 'Counter', shopName: 'Trial' };
  const { app } = await appAsOwner({ records, branch, planner, db: records.db, clock: systemClock }, webFolder);
  const openapi = (await app.inject({ method: 'GET', url: '/api/openapi.json' })).json() as Record<string, unknown>;
  const { enquiryId, animalId, placementId, sourceId } = filled;
  const speciesIds = Object.keys(dataFolder('species')).slice(0, 2);
  return {
    app,
    openapi,
    doors: doorsOf(openapi).length,
    ids: [enquiryId, animalId, placementId, sourceId, ...speciesIds],
    enquiryId,
    goodFile: goodFile(),
    close: async () => {
      await app.close();
      await planner.close();
      await trial.close();
      rmSync(webFolder, { recursive: true, force: true });
    },
  };
}

/** A logger file as it should be: two sensors, a day, every ten minutes. */
function goodFile(): Buffer {
  const start = Date.UTC(2026, 0, 14);
  const lines = Array.from({ length: 144 }, (_, n) => {
    const at = new Date(start + n * 600_000).toISOString().slice(0, 19).replace('T', ' ');
    return `${at},${(28 + Math.sin(n / 20)).toFixed(2)},${(22 + Math.cos(n / 20)).toFixed(2)}`;
  });
  return Buffer.from(['Time,Warm (°C),Cool (°C)', ...lines].join('\n'), 'utf8');
}
