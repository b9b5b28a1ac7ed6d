// Live readings through a real broker (Debian's mosquitto) on this machine, with a port and a configuration of its own.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addLiveSource, liveStates } from '../desk/live-feed.ts';
import { openEnquiry } from '../desk/open-enquiry.ts';
import type { Records } from '../records/open.ts';
import { firstBranch } from '../records/shops.ts';
import { freshRecords } from '../records/testing/fresh-database.ts';
import { type MqttFeed, readingFrom, startMqttFeed } from './mqtt-feed.ts';
import { exampleDocument } from './testing/example-document.ts';

const broker = ['/usr/sbin/mosquitto', '/usr/local/sbin/mosquitto', '/opt/homebrew/sbin/mosquitto'].find((path) =>
  existsSync(path),
);

describe('what a message says', () => {
  const bytes = (text: string) => new TextEncoder().encode(text);
  test.each([
    ['31.5', null, false, { value: 31.5 }],
    ['{"value": 22}', null, false, { value: 22 }],
    ['{"probe": {"temperature": "21.4"}}', 'probe.temperature', false, { value: 21.4 }],
    ['{"value": 22, "timestamp": 1768467600}', null, true, { value: 22, at: '2026-01-15T09:00:00.000Z' }],
    ['31.5', null, true, null],
    ['unavailable', null, false, null],
    ['{"__proto__": 5}', '__proto__.x', false, null],
    ['[]', null, false, null],
  ])('%s', (text, valueKey, retained, said) => expect(readingFrom(bytes(text), { valueKey }, retained)).toEqual(said));
  test('a message longer than any reading', () =>
    expect(readingFrom(bytes(`${'1'.repeat(5000)}`), { valueKey: null }, false)).toBeNull());
});

// Skipped only where the broker is not installed: apt-get install mosquitto.
describe.skipIf(broker === undefined)('through a broker', () => {
  let records: Records;
  let child: ChildProcess;
  let feed: MqttFeed;
  let folder: string;
  let port: number;
  let url: string;
  let branchId: string;
  const problems: string[] = [];
  const clock = { now: () => new Date() };
  const desk = () => ({ actor: { name: 'tester', branchId, role: 'owner' as const }, clock, db: records.db });

  const start = async (): Promise<void> => {
    child = spawn(broker!, ['-c', join(folder, 'broker.conf')], { stdio: 'ignore' });
    await until(async () => {
      const probe = mqtt.connect(url, { reconnectPeriod: 0, connectTimeout: 500 });
      const open = await new Promise<boolean>((done) =>
        probe
          .on('connect', () => done(true))
          .on('error', () => done(false))
          .on('close', () => done(false)),
      );
      await probe.endAsync(true);
      return open;
    });
  };

  beforeAll(async () => {
    records = await freshRecords();
    branchId = (await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: new Date() }))
      .branchId;
    port = await freePort();
    url = `mqtt://127.0.0.1:${port}`;
    folder = mkdtempSync(join(tmpdir(), 'warmstead-broker-'));
    writeFileSync(
      join(folder, 'broker.conf'),
      `listener ${port} 127.0.0.1\nallow_anonymous true\npersistence false\nuser root\n`,
    );
    await start();
    feed = startMqttFeed(records.db, clock, { url, refreshMs: 100, onProblem: (what) => problems.push(what) });
    await until(async () => feed.connected());
  });
  afterAll(async () => {
    await feed.close();
    child.kill();
    await records.close();
    rmSync(folder, { recursive: true });
  });

  const newSource = async (topic: string) => {
    const enquiry = await openEnquiry(desk(), exampleDocument());
    if (!enquiry.ok) throw new Error('no enquiry');
    const added = await addLiveSource(desk(), enquiry.value.id, {
      label: topic,
      place: 'basking-surface',
      quantity: 'tempC',
      intervalS: 5,
      topic,
      valueKey: null,
      instrumentId: null,
    });
    if (!added.ok) throw new Error('no source');
    return {
      state: async () => {
        const s = await liveStates(desk(), enquiry.value.id);
        return s.ok ? s.value[0]! : null;
      },
    };
  };
  const say = async (topic: string, text: string, retain = false) => {
    const client = await mqtt.connectAsync(url);
    await client.publishAsync(topic, text, { qos: 1, retain });
    await client.endAsync();
  };

  test('a source that was added while it runs is heard', async () => {
    const { state } = await newSource('home/one/warm');
    await until(async () => {
      await say('home/one/warm', '31.5');
      return (await state())?.state === 'fresh';
    });
    expect(await state()).toMatchObject({ value: 31.5, state: 'fresh' });
  });
  test('a retained message without a time is the past and counts as nothing', async () => {
    await say('home/two/warm', '44', true);
    const { state } = await newSource('home/two/warm');
    await new Promise((done) => setTimeout(done, 800));
    expect((await state())?.state).toBe('never');
    await until(async () => {
      await say('home/two/warm', '{"value": 29.5}');
      return (await state())?.value === 29.5;
    });
  });
  test('nonsense is told and not kept', async () => {
    const { state } = await newSource('home/three/warm');
    await until(async () => {
      await say('home/three/warm', '900');
      return problems.some((p) => p.includes('no reading of such a sensor'));
    });
    expect((await state())?.state).toBe('never');
  });
  test('the broker goes away and comes back', { timeout: 40_000 }, async () => {
    const { state } = await newSource('home/four/warm');
    const gone = new Promise((done) => child.once('exit', done));
    child.kill();
    await gone;
    await until(async () => !feed.connected());
    await start();
    await until(async () => feed.connected(), 20_000);
    await until(async () => {
      await say('home/four/warm', '30.1');
      return (await state())?.value === 30.1;
    });
  });
});

async function until(test: () => Promise<boolean>, patienceMs = 15_000): Promise<void> {
  const end = Date.now() + patienceMs;
  while (!(await test())) {
    if (Date.now() > end) throw new Error('it did not happen in time');
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** A port that nothing listens on at this moment. */
function freePort(): Promise<number> {
  return new Promise((done) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });
}
