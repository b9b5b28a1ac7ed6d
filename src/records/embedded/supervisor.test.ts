// The built-in database in the hands of real processes: kept data, a killed program, two programs at once.
import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { engineClient, postmasterFacts } from './connection.ts';
import { type Engine, startEngine } from './supervisor.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'warmstead-engine-'));
  chmodSync(folder, 0o755);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function started(): Promise<Engine> {
  const engine = await startEngine(folder);
  if (!engine.ok) throw new Error(JSON.stringify(engine.faults));
  return engine.value;
}

async function rows(engine: Engine, sql: string): Promise<unknown[]> {
  const client = engineClient(engine.socketFolder);
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

/** Another program that opens the same data, says so, and waits. */
async function otherProgram(): Promise<{ kill: () => Promise<void> }> {
  const file = join(import.meta.dirname, 'supervisor.ts');
  const script = `const { startEngine } = await import(${JSON.stringify(file)});
    const engine = await startEngine(${JSON.stringify(folder)});
    console.log(engine.ok ? 'open' : JSON.stringify(engine.faults));
    setInterval(() => undefined, 1000);`;
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script]);
  const ended = new Promise<void>((done) => child.on('exit', () => done()));
  let said = '';
  await new Promise<void>((done, fail) => {
    child.stdout.on('data', (text) => (String(text).startsWith('open') ? done() : fail(new Error(String(text)))));
    child.stderr.on('data', (text) => {
      said += text;
    });
    void ended.then(() => fail(new Error(said)));
  });
  return {
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

test('what was written is there after stop and start, and stop really stops', async () => {
  const first = await started();
  expect(first.adopted).toBe(false);
  await rows(first, 'create table kept (n integer); insert into kept values (7)');
  await first.stop();
  expect(postmasterFacts(first.place.cluster)).toBeNull();
  const second = await started();
  expect(await rows(second, 'select n from kept')).toEqual([{ n: 7 }]);
  await second.stop();
});

test('a program that was killed leaves a database that the next one adopts', async () => {
  const other = await otherProgram();
  await other.kill();
  const next = await started();
  expect(next.adopted).toBe(true);
  expect(await rows(next, 'select n from kept')).toEqual([{ n: 7 }]);
  await next.stop();
  expect(postmasterFacts(next.place.cluster)).toBeNull();
});

test('stopping leaves the database to another program that uses it', async () => {
  const other = await otherProgram();
  const mine = await started();
  await mine.stop();
  expect(postmasterFacts(mine.place.cluster)).not.toBeNull();
  await other.kill();
  const last = await started();
  await last.stop();
  expect(postmasterFacts(last.place.cluster)).toBeNull();
});

test('a killed database process is started again and has lost nothing', async () => {
  const before = await started();
  const running = postmasterFacts(before.place.cluster);
  if (running === null) throw new Error('not running');
  await rows(before, 'insert into kept values (8)');
  process.kill(running.pid, 'SIGKILL');
  const after = await started();
  expect(await rows(after, 'select n from kept order by n')).toEqual([{ n: 7 }, { n: 8 }]);
  await before.stop();
  await after.stop();
});

test('it listens nowhere on the network', async () => {
  const engine = await started();
  expect(await rows(engine, 'show listen_addresses')).toEqual([{ listen_addresses: '' }]);
  await engine.stop();
});
