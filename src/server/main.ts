// Starts the program: opens the records, listens, says where, and stops cleanly on Ctrl-C.
// PORT, HOST, DATABASE_URL, WARMSTEAD_DATA, WARMSTEAD_HOSTS, WARMSTEAD_PROXY, WARMSTEAD_RATE, WARMSTEAD_DEMO,
// WARMSTEAD_MQTT and WARMSTEAD_BACKUP (with WARMSTEAD_BACKUP_KEEP) are read here and nowhere else.
import { createHash } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import { systemClock } from '../desk/desk-context.ts';
import { startNightWork } from '../desk/night-work.ts';
import { startPlanner } from '../desk/planner.ts';
import { takeProofs } from '../desk/proof-later.ts';
import { startProver } from '../desk/prover.ts';
import { allFacts } from '../records/animal-facts.ts';
import { teachLanguages } from '../records/languages.ts';
import { openRecords, type Records } from '../records/open.ts';
import { type Queue, startQueue } from '../records/queue.ts';
import { programRoot } from '../records/root.ts';
import type { Branch } from '../records/shops.ts';
import { holdTurn, turns } from '../records/turn.ts';
import type { Fault } from '../shared/fault.ts';
import { buildApp } from './app.ts';
import { firstShop, waysIn } from './first-shop.ts';
import { startMqttFeed } from './mqtt-feed.ts';
import { type Settings, settingsFrom } from './settings.ts';
import type { App } from './types.ts';

type Stop = () => Promise<void>;

const settings = settingsFrom(process.env);
if (settings.ok) stopOnSignal(start(settings.value));
else fail(settings.faults);

/** @returns how to stop what was started, or null when it could not start. */
async function start(chosen: Settings): Promise<Stop | null> {
  const dataFolder = resolve(programRoot(), chosen.dataFolder);
  for (const file of teachLanguages(dataFolder))
    process.stderr.write(`${file} is no file of a language and was left out (see CONTRIBUTING.md).\n`);
  const opened = await openRecords({ databaseUrl: chosen.databaseUrl, dataFolder });
  if (!opened.ok) return fail(opened.faults);
  const records = opened.value;
  const first = await firstShop(records, chosen.demo);
  if (!first.ok) {
    await records.close();
    return fail(first.faults);
  }
  const branch = first.value;
  const planner = startPlanner();
  const account = { db: records.db, clock: systemClock };
  const feed = chosen.mqttUrl === undefined ? null : liveFeed(records, branch, chosen.mqttUrl);
  const queue = await nightQueue(records, chosen);
  const prover = startProver();
  await takeProofs(queue, records.db, systemClock, prover);
  const webFolder = join(programRoot(), 'dist', 'web');
  const hosts = [...chosen.hosts, chosen.host];
  const { proxies, perMinute } = chosen;
  const choice = { webFolder, hosts, proxies, log: true, ...(perMinute === undefined ? {} : { perMinute }) };
  const app = await buildApp({ records, branch, planner, queue, ...account }, choice);
  const stop = async (): Promise<void> => {
    await app.close();
    await feed?.close();
    await queue.close();
    await prover.close();
    await planner.close();
    await records.close();
  };
  try {
    await app.listen({ port: chosen.port, host: chosen.host });
  } catch (error) {
    await stop();
    return fail([cannotListen(chosen, error as Error)]);
  }
  announce(app, branch, records.folder === null ? 'your server' : `built-in, in ${records.folder}`, [
    ...(await waysIn(account, branch, chosen.demo)),
  ]);
  return stop;
}

/** Several processes hear the same broker; one of them keeps what it says. */
function liveFeed(records: Records, { branchId }: Branch, url: string) {
  // Brokers take names of up to 23 characters.
  const clientId = `warmstead${createHash('sha256').update(branchId).digest('hex').slice(0, 14)}`;
  const onProblem = (what: string) => console.error(`live readings: ${what}`);
  const begin = () => startMqttFeed(records.db, systemClock, { url, clientId, onProblem }).close;
  return holdTurn(records.pool, { key: turns.liveFeed, begin });
}

async function nightQueue(records: Records, chosen: Settings): Promise<Queue> {
  const queue = await startQueue(records.pool, { onProblem: (what) => console.error(`queue: ${what}`) });
  const backup =
    chosen.backup === null ? null : { ...chosen.backup, folder: resolve(programRoot(), chosen.backup.folder) };
  const onProblem = (what: string) => console.error(`at night: ${what}`);
  await startNightWork(queue, { db: records.db, pool: records.pool, clock: systemClock, backup, onProblem });
  return queue;
}

function announce(app: App, branch: Branch, records: string, gettingIn: readonly string[]): void {
  const { address, family, port } = app.server.address() as AddressInfo;
  console.log(`\nWarmstead is ready:  http://${family === 'IPv6' ? `[${address}]` : address}:${port}`);
  console.log(`Shop: ${branch.shopName}. Records: ${records}.`);
  for (const line of gettingIn) console.log(line);
  for (const line of leftOutLines()) console.error(line);
  console.log('Stop with Ctrl-C.');
}

/** What of data/ is not sound: the program runs without it, and whoever starts it must know. */
function leftOutLines(): readonly string[] {
  const { leftOut } = allFacts();
  if (leftOut.length === 0) return [];
  return [
    `${leftOut.length} places in data/ are not sound. What stands there is not used, and nothing is judged by it:`,
    ...leftOut.map(
      ({ field, say, got, allowed, code }) => `  ${field}: ${say} Found: ${got}. Allowed: ${allowed}. [${code}]`,
    ),
    'Put them right (npm run data looks at all of data/), then start again.',
  ];
}

/** A signal that comes while starting waits for the start, so that no database is left running. */
function stopOnSignal(starting: Promise<Stop | null>): void {
  let stopping = false;
  const onSignal = (): void => {
    if (stopping) return;
    stopping = true;
    starting
      .then(async (stop) => await stop?.())
      .then(() => process.exit(process.exitCode ?? 0))
      .catch((error) => {
        console.error(error);
        process.exit(1);
      });
  };
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, onSignal);
  if (process.env.npm_lifecycle_event !== undefined) onParentGone(onSignal);
}

/** Ending npm ends the shell between npm and us, which passes nothing on: we notice that our parent is gone. */
function onParentGone(stop: () => void): void {
  const parent = process.ppid;
  const lookEveryMs = 500;
  setInterval(() => {
    if (process.ppid !== parent) stop();
  }, lookEveryMs).unref();
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

function fail(faults: readonly Fault[]): null {
  for (const fault of faults) {
    console.error(
      `\n${fault.say}\n  ${fault.field}: ${fault.got}\n  allowed: ${fault.allowed}\n  ${fault.fix}  [${fault.code}]`,
    );
  }
  process.exitCode = 1;
  return null;
}
