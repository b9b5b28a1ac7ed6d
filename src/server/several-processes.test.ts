// Two processes behind one database: each with its own connections, queue and place at the broker.
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { nightKinds, startNightWork } from '../desk/night-work.ts';
import { insertEnquiry, updateEnquiry } from '../records/enquiries.ts';
import { openRecords, type Records } from '../records/open.ts';
import { type Queue, startQueue } from '../records/queue.ts';
import { firstBranch } from '../records/shops.ts';
import { freshDatabaseUrl } from '../records/testing/fresh-database.ts';
import { holdTurn } from '../records/turn.ts';

let url: string;
let one: Records;
let two: Records;
let queues: Queue[];
let branchId: string;
const problems: string[] = [];
const at = new Date('2026-03-01T09:00:00Z');

async function opened(): Promise<Records> {
  const records = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!records.ok) throw new Error(JSON.stringify(records.faults));
  return records.value;
}

beforeAll(async () => {
  url = await freshDatabaseUrl();
  [one, two] = await Promise.all([opened(), opened()]);
  const quick = { onProblem: (what: string) => problems.push(what), askEveryS: 0.5, patienceS: 4 };
  queues = await Promise.all([startQueue(one.pool, quick), startQueue(two.pool, quick)]);
  ({ branchId } = await firstBranch(one.db, { shopName: 'Two', branchName: 'Counter', at }));
});
afterAll(async () => {
  await Promise.all(queues.map((queue) => queue.close()));
  await Promise.all([one.close(), two.close()]);
});

async function until(true_: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; !(await true_()); tries++) {
    if (tries > 400) throw new Error('it did not come');
    await sleep(50);
  }
}

test('work that was added once is done once, by either', async () => {
  const done: string[][] = [[], []];
  await Promise.all(
    queues.map((queue, i) =>
      queue.take<{ n: string }>('count', async ({ n }) => {
        done[i]?.push(n);
        return { n };
      }),
    ),
  );
  const wanted = Array.from({ length: 12 }, (_, i) => `job ${i}`);
  const ids = await Promise.all(wanted.map((n, i) => queues[i % 2]!.add('count', { n })));
  await until(() => done.flat().length >= wanted.length);
  await sleep(1200);
  expect(done.flat().sort()).toEqual([...wanted].sort());
  expect(await queues[0]!.state('count', ids[1]!)).toMatchObject({ state: 'done', output: { n: 'job 1' } });
  expect(await queues[0]!.state('count', randomUUID())).toBeNull();
});

test('work that fails is tried again and then says so; work in its place once only', async () => {
  let tries = 0;
  await queues[0]!.take('broken', async () => {
    tries++;
    throw new Error('on purpose');
  });
  const id = await queues[1]!.add('broken', {}, { once: 'same' });
  expect(await queues[0]!.add('broken', {}, { once: 'same' })).toBeNull();
  await until(async () => (await queues[1]!.state('broken', id!))?.state === 'failed');
  expect(tries).toBe(3);
});

test('one thing is done by one of them, and by the other when the first is gone', async () => {
  const running = new Set<string>();
  const most: number[] = [];
  const turnOf = (records: Records, name: string) =>
    holdTurn(records.pool, {
      key: 77,
      askEveryMs: 50,
      begin: () => {
        running.add(name);
        most.push(running.size);
        return async () => {
          running.delete(name);
        };
      },
    });
  const first = turnOf(one, 'one');
  await until(() => running.has('one'));
  const second = turnOf(two, 'two');
  await sleep(300);
  expect([...running]).toEqual(['one']);
  // The first one's connection is cut, as when its process is killed.
  const admin = new pg.Client({ connectionString: url });
  await admin.connect();
  const locks = await admin.query("select pid from pg_locks where locktype = 'advisory' and objid = 77 and granted");
  await admin.query('select pg_terminate_backend($1)', [locks.rows[0].pid]);
  await until(() => running.has('one') || running.has('two'));
  await first.close();
  await until(() => running.has('two'));
  expect([...running]).toEqual(['two']);
  expect(Math.max(...most)).toBe(1);
  await second.close();
  expect(running.size).toBe(0);
  await admin.end();
});

test('two people who change one enquiry at the same moment: one is kept, the other is told', async () => {
  const id = randomUUID();
  await insertEnquiry(one.db, { id, branchId, document: { n: 0 }, at, by: 'first' });
  let version = 1;
  for (let round = 0; round < 20; round++) {
    const change = (by: string) => ({ id, branchId, fromVersion: version, document: { round, by }, at, by });
    const both = await Promise.all([updateEnquiry(one.db, change('first')), updateEnquiry(two.db, change('second'))]);
    expect(both.filter((row) => row !== undefined)).toHaveLength(1);
    version++;
  }
  const kept = await one.pool.query('select count(*)::int as n from enquiry_version where enquiry_id = $1', [id]);
  expect(kept.rows[0].n).toBe(21);
});

test('the night makes places for the readings of three months and checks the chain', async () => {
  const night = {
    db: one.db,
    pool: one.pool,
    clock: { now: () => at },
    backup: null,
    onProblem: (what: string) => problems.push(what),
  };
  await startNightWork(queues[0]!, night);
  const months = await queues[1]!.add(nightKinds.months, {});
  const check = await queues[1]!.add(nightKinds.verify, {});
  await until(async () => (await queues[0]!.state(nightKinds.months, months!))?.state === 'done');
  await until(async () => (await queues[0]!.state(nightKinds.verify, check!))?.state === 'done');
  const made = await one.pool.query(
    "select relname from pg_class where relname ~ '^live_reading_2026_0[345]$' order by 1",
  );
  expect(made.rows).toHaveLength(3);
  expect((await queues[0]!.state(nightKinds.verify, check!))?.output).toMatchObject({ breaks: 0, links: 21 });
  expect(problems).toEqual([]);
});
