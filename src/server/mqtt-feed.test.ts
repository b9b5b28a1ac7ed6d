// Live readings through a real broker (Debian's mosquitto) on this machine, with a port and a configuration of its own.
import { setTimeout as sleep } from 'node:timers/promises';
import mqtt from 'mqtt';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addLiveSource, liveStates } from '../desk/live-feed.ts';
import { openEnquiry } from '../desk/open-enquiry.ts';
import type { Records } from '../records/open.ts';
import { firstBranch } from '../records/shops.ts';
import { freshRecords } from '../records/testing/fresh-database.ts';
import { heldGate, type MqttFeed, readingFrom, startMqttFeed } from './mqtt-feed.ts';
import { brokerProgram, startBroker, type TestBroker } from './testing/broker.ts';
import { exampleDocument } from './testing/example-document.ts';

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

describe('what the broker held comes first, and may be old', () => {
  test('nothing was held: nothing is old', () => {
    const gate = heldGate(() => 0);
    gate.connected(false);
    expect(gate.mayBeOld()).toBe(false);
  });
  test('taken up again: old until it pauses, five seconds at least, a minute at most', () => {
    let nowMs = 0;
    const gate = heldGate(() => nowMs);
    gate.connected(true);
    const oldAt = (ms: number): boolean => {
      nowMs = ms;
      const old = gate.mayBeOld();
      gate.handled();
      return old;
    };
    expect([0, 4900, 5100, 5300].map(oldAt)).toEqual([true, true, true, true]);
    expect(oldAt(5900)).toBe(false);
    gate.connected(true);
    for (let ms = 6000; ms < 65_900; ms += 100) expect(oldAt(ms)).toBe(true);
    expect(oldAt(66_000)).toBe(false);
  });
});

// Skipped only where the broker is not installed.
describe.skipIf(brokerProgram === undefined)('through a broker (needs mosquitto)', () => {
  let records: Records;
  let broker: TestBroker;
  let feed: MqttFeed;
  let branchId: string;
  const problems: string[] = [];
  const clock = { now: () => new Date() };
  const desk = () => ({ actor: { name: 'tester', branchId, role: 'owner' as const }, clock, db: records.db });
  const clientId = 'warmstead-under-test';
  const listen = async (): Promise<MqttFeed> => {
    const onProblem = (what: string) => problems.push(what);
    const listening = startMqttFeed(records.db, clock, { url: broker.url, clientId, refreshMs: 100, onProblem });
    await until(async () => listening.connected());
    return listening;
  };

  beforeAll(async () => {
    records = await freshRecords();
    branchId = (await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: new Date() }))
      .branchId;
    broker = await startBroker();
    feed = await listen();
  });
  afterAll(async () => {
    await feed.close();
    await broker.close();
    await records.close();
  });
  const say: TestBroker['say'] = async (...said) => await broker.say(...said);

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
      id: added.value.id,
      state: async () => {
        const s = await liveStates(desk(), enquiry.value.id);
        return s.ok ? s.value[0]! : null;
      },
    };
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
    await broker.end();
    await until(async () => !feed.connected());
    await broker.start();
    await until(async () => feed.connected(), 20_000);
    await until(async () => {
      await say('home/four/warm', '30.1');
      return (await state())?.value === 30.1;
    });
  });
  test('what was said while nobody listened is kept when it says its own time, once, and else counts as nothing', {
    timeout: 40_000,
  }, async () => {
    const dated = await newSource('home/five/warm');
    const undated = await newSource('home/six/warm');
    await until(async () => {
      await say('home/six/warm', '30');
      return (await undated.state())?.state === 'fresh';
    });
    const rowsOf = async (id: string) =>
      await records.pool.query<{ value: number }>('select value from live_reading where source_id = $1 order by 1', [
        id,
      ]);
    await sleep(500); // what was still on its way
    const before = (await rowsOf(undated.id)).rows.length;
    await feed.close();
    const wanted = Array.from({ length: 40 }, (_, n) => 20 + n / 10);
    const client = await mqtt.connectAsync(broker.url);
    const startMs = Date.now() - 60_000;
    for (const [n, value] of wanted.entries()) {
      const at = new Date(startMs + n * 1000).toISOString();
      for (const again of [1, 2].slice(0, n % 10 === 0 ? 2 : 1)) {
        await client.publishAsync('home/five/warm', JSON.stringify({ value, time: at, again }), { qos: 1 });
      }
      await client.publishAsync('home/six/warm', String(value), { qos: 1 });
    }
    await client.endAsync();
    feed = await listen();
    await until(async () => (await rowsOf(dated.id)).rows.length === wanted.length);
    await sleep(300);
    expect((await rowsOf(dated.id)).rows.map((row) => row.value)).toEqual(wanted);
    expect((await rowsOf(undated.id)).rows).toHaveLength(before);
  });
  test('a reading waits for records that are busy, and nothing that was said meanwhile is lost', {
    timeout: 40_000,
  }, async () => {
    const { id } = await newSource('home/seven/warm');
    const count = async () =>
      (await records.pool.query('select 1 from live_reading where source_id = $1', [id])).rows.length;
    const startMs = Date.now() - 30_000;
    // One moment, said until it is heard: one row.
    const first = JSON.stringify({ value: 30, time: new Date(startMs - 1000).toISOString() });
    await until(async () => {
      await say('home/seven/warm', first);
      return (await count()) > 0;
    });
    await records.pool.query('alter table live_reading rename to live_reading_away');
    for (let n = 0; n < 30; n++) {
      await say('home/seven/warm', JSON.stringify({ value: 25, time: new Date(startMs + n * 1000).toISOString() }));
    }
    await sleep(700);
    await records.pool.query('alter table live_reading_away rename to live_reading');
    await until(async () => (await count()) === 31);
  });
});

async function until(test: () => Promise<boolean>, patienceMs = 15_000): Promise<void> {
  const end = Date.now() + patienceMs;
  while (!(await test())) {
    if (Date.now() > end) throw new Error('it did not happen in time');
    await new Promise((done) => setTimeout(done, 100));
  }
}
