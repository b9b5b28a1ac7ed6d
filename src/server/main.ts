// Starts the program: opens the records, listens, says where, and stops cleanly on Ctrl-C.
// PORT, HOST, DATABASE_URL, WARMSTEAD_DATA, WARMSTEAD_HOSTS and WARMSTEAD_DEMO are read here and nowhere else.
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import { type DeskContext, systemClock } from '../desk/desk-context.ts';
import { startPlanner } from '../desk/planner.ts';
import { demoShop, fillDemo } from '../records/demo.ts';
import { openRecords, type Records } from '../records/open.ts';
import { programRoot } from '../records/root.ts';
import { firstBranch } from '../records/shops.ts';
import type { Fault } from '../shared/fault.ts';
import { buildApp } from './app.ts';
import { type Settings, settingsFrom } from './settings.ts';
import type { App } from './types.ts';

const settings = settingsFrom(process.env);
if (settings.ok) await start(settings.value);
else fail(settings.faults);

async function start(chosen: Settings): Promise<void> {
  const dataFolder = resolve(programRoot(), chosen.dataFolder);
  const records = await openRecords({ databaseUrl: chosen.databaseUrl, dataFolder });
  if (!records.ok) return fail(records.faults);
  const { db, kind } = records.value;
  const at = systemClock.now();
  const branch = await firstBranch(db, {
    ...(chosen.demo ? demoShop : { shopName: 'Our shop', branchName: 'Counter' }),
    at,
    ...(chosen.demo ? { fill: async (tx, branchId) => await fillDemo(tx, branchId, at) } : {}),
  });
  const planner = startPlanner();
  const desk = (): DeskContext => ({ actor: { name: 'desk', branchId: branch.branchId }, clock: systemClock, db });
  const webFolder = join(programRoot(), 'dist', 'web');
  const hosts = [...chosen.hosts, chosen.host];
  const app = await buildApp({ records: records.value, branch, planner, desk }, { webFolder, hosts, log: true });
  stopOnSignal(app, async () => await planner.close(), records.value);
  try {
    await app.listen({ port: chosen.port, host: chosen.host });
  } catch (error) {
    await planner.close();
    await records.value.close();
    return fail([cannotListen(chosen, error as Error)]);
  }
  const address = app.server.address() as AddressInfo;
  const shown = address.family === 'IPv6' ? `[${address.address}]` : address.address;
  console.log(`\nWarmstead is ready:  http://${shown}:${address.port}`);
  console.log(`Shop: ${branch.shopName}. Records: ${kind === 'built-in' ? `built-in, ${dataFolder}` : 'your server'}.`);
  console.log('Stop with Ctrl-C.');
}

function stopOnSignal(app: App, closePlanner: () => Promise<void>, records: Records): void {
  let stopping = false;
  const stop = (): void => {
    if (stopping) return;
    stopping = true;
    void app
      .close()
      .then(closePlanner)
      .then(records.close)
      .then(() => process.exit(0))
      .catch((error) => {
        console.error(error);
        process.exit(1);
      });
  };
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, stop);
}

function cannotListen(chosen: Settings, error: Error): Fault {
  return {
    code: 'SERVER_PORT',
    field: 'PORT',
    got: `${chosen.host}:${chosen.port} (${(error as { code?: string }).code ?? error.message})`,
    allowed: 'a port that no other program uses',
    say: 'The program cannot listen at this address.',
    fix: `Stop the other program, or choose another port: PORT=${chosen.port + 1} npm start`,
  };
}

function fail(faults: readonly Fault[]): void {
  for (const fault of faults) {
    console.error(
      `\n${fault.say}\n  ${fault.field}: ${fault.got}\n  allowed: ${fault.allowed}\n  ${fault.fix}  [${fault.code}]`,
    );
  }
  process.exitCode = 1;
}
