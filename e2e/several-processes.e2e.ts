// Two programs behind one database and one broker, as a shop with a spare machine runs them: they share people and limits,
// divide the work, and when one is killed the other goes on without a reading or a job lost or done twice.
import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import mqtt from 'mqtt';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { nightKinds } from '../src/desk/night-work.ts';
import { type Queue, startQueue } from '../src/records/queue.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { brokerProgram, startBroker, type TestBroker } from '../src/server/testing/broker.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { provenHome } from './support/proven-home.ts';

describe.skipIf(brokerProgram === undefined)('two programs, one database, one broker (needs mosquitto)', () => {
  let broker: TestBroker;
  let pool: pg.Pool;
  let queue: Queue;
  let backups: string;
  let one: RunningProgram;
  let two: RunningProgram;

  beforeAll(async () => {
    broker = await startBroker();
    backups = mkdtempSync(join(tmpdir(), 'warmstead-saved-'));
    const url = await freshDatabaseUrl();
    const named = (name: string) => ({
      DATABASE_URL: `${url}&application_name=${name}`,
      WARMSTEAD_MQTT: broker.url,
      WARMSTEAD_BACKUP: backups,
    });
    one = await startProgram(named('one'));
    two = await startProgram(named('two'), one.owner ?? 'owner');
    pool = new pg.Pool({ connectionString: url });
    queue = await startQueue(pool, { onProblem: (what) => console.log(what) });
  });
  afterAll(async () => {
    await queue?.close();
    await pool?.end();
    await Promise.all([one?.stop(), two?.stop()]);
    await broker?.close();
    rmSync(backups, { recursive: true, force: true });
  });

  const post = async (program: RunningProgram, path: string, body: object, how: RequestInit = {}) =>
    await fetch(`${program.url}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      ...how,
    });

  test('who signed in at one is known at the other, and out at both', async () => {
    const who = { name: one.owner?.name, password: one.owner?.password };
    const answer = await post(one, '/api/session', who, { credentials: 'omit' });
    const cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    const me = async (program: RunningProgram) =>
      (await fetch(`${program.url}/api/enquiries`, { headers: { cookie } })).status;
    expect([await me(one), await me(two)]).toEqual([200, 200]);
    await post(two, '/api/session/end', {}, { headers: { cookie, 'content-type': 'application/json' } });
    expect([await me(one), await me(two)]).toEqual([401, 401]);
  });

  test('guesses are counted for both together: twenty a minute, not forty', async () => {
    const statuses: number[] = [];
    for (let n = 0; n < 24; n++) {
      const guess = { name: `nobody ${n}`, password: 'a wrong guess of twelve' };
      statuses.push((await post(n % 2 === 0 ? one : two, '/api/session', guess, { credentials: 'omit' })).status);
    }
    // The sign-in of the test above was the first of the twenty.
    expect(statuses.filter((status) => status === 401)).toHaveLength(19);
    expect(statuses.slice(19)).toEqual([429, 429, 429, 429, 429]);
  });

  test('a backup that is due is made once; proofs that were asked for are each made once', async () => {
    const proven = await provenHome(one.url, 'two programs', { proven: true });
    const proofs = async () =>
      (await pool.query<{ n: number }>('select count(*)::int as n from proof_result where enquiry_id = $1', [proven]))
        .rows[0]?.n ?? 0;
    const before = await proofs();
    await Promise.all([
      queue.add(nightKinds.backup, {}, { once: 'night' }),
      queue.add(nightKinds.backup, {}, { once: 'night' }),
    ]);
    for (let n = 0; n < 6; n++) {
      expect((await post(n % 2 === 0 ? one : two, `/api/enquiries/${proven}/proof-jobs`, {})).status).toBe(202);
    }
    await expect.poll(proofs, { timeout: 60_000 }).toBe(before + 6);
    await expect.poll(() => readdirSync(backups).length, { timeout: 30_000 }).toBe(1);
    await sleep(3000);
    expect([await proofs(), readdirSync(backups).length]).toEqual([before + 6, 1]);

    // Stopped by its name, at the other program than the one that was asked: nothing of it is kept, and it says so.
    const workId = randomUUID();
    const later = await post(one, `/api/enquiries/${proven}/proof-jobs?work=${workId}`, {});
    const { jobId } = (await later.json()) as { jobId: string };
    expect(await (await post(two, `/api/work/${workId}/stop`, {})).json()).toEqual({ ended: 'stopped', keptId: null });
    interface Later {
      readonly state: string;
      readonly output: { readonly faults?: readonly { readonly code: string }[] } | null;
    }
    const stands = async () => (await (await fetch(`${two.url}/api/proof-jobs/${jobId}`)).json()) as Later;
    await expect.poll(async () => (await stands()).state, { timeout: 30_000 }).toBe('done');
    expect((await stands()).output?.faults?.map(({ code }) => code)).toEqual(['WORK_STOPPED']);
    expect(await proofs()).toBe(before + 6);
  });

  test('the one that hears the broker is killed in the middle: no reading is lost, none is kept twice', async () => {
    const home = await post(one, '/api/enquiries', { document: { answers: { label: 'heard' } } });
    const { id } = (await home.json()) as { id: string };
    const source = { label: 'warm', place: 'warm-air', quantity: 'tempC', intervalS: 60, valueKey: null };
    const added = await post(two, `/api/enquiries/${id}/live-sources`, {
      ...source,
      topic: 'home/heard',
      instrumentId: null,
    });
    expect(added.status).toBe(201);
    const { id: sourceId } = (await added.json()) as { id: string };
    const kept = async () =>
      (
        await pool.query<{ n: number; different: number }>(
          'select count(*)::int as n, count(distinct measured_at)::int as different from live_reading where source_id = $1',
          [sourceId],
        )
      ).rows[0];
    const startMs = Date.now() - 3_600_000;
    const client = await mqtt.connectAsync(broker.url);
    const say = async (n: number) => {
      const time = new Date(startMs + n * 1000).toISOString();
      await client.publishAsync('home/heard', JSON.stringify({ value: 20 + (n % 50) / 10, time }), { qos: 1 });
    };
    // New sources are looked for every quarter of a minute.
    await expect
      .poll(
        async () => {
          await say(0);
          return (await kept())?.n;
        },
        { timeout: 40_000, interval: 500 },
      )
      .toBe(1);
    const hearing = await hearingProcess(pool);
    const killed = hearing === 'one' ? one : two;
    const wanted = 600;
    for (let n = 1; n < wanted; n++) {
      await say(n);
      if (n === 200) await killed.crash();
    }
    await expect.poll(async () => (await kept())?.n, { timeout: 60_000 }).toBe(wanted);
    expect(await kept()).toEqual({ n: wanted, different: wanted });
    await client.endAsync();
    const goesOn = killed === one ? two : one;
    expect((await fetch(`${goesOn.url}/api/ready`)).status).toBe(200);
  });
});

/** Which program's connection holds the turn. */
async function hearingProcess(pool: pg.Pool): Promise<string> {
  const found = await pool.query<{ name: string }>(
    `select a.application_name as name from pg_locks l join pg_stat_activity a using (pid)
     where l.locktype = 'advisory' and l.classid = 7430010 and l.objid = 1 and l.granted
       and a.datname = current_database()`,
  );
  expect(found.rows).toHaveLength(1);
  return found.rows[0]?.name ?? '';
}
