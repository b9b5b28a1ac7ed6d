// An owner who forgot the password gets in again by a code from the terminal, on a real database.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { warmstead } from '../cli/testing/spawn-cli.ts';
import { startPlanner } from '../desk/planner.ts';
import { openRecords, type Records } from '../records/open.ts';
import { firstBranch } from '../records/shops.ts';
import { freshDatabaseUrl } from '../records/testing/fresh-database.ts';
import { appAsOwner } from './testing/app-for-tests.ts';

let url: string;
let records: Records;
let owner: Awaited<ReturnType<typeof appAsOwner>>;
const planner = startPlanner(1);
const clock = { now: () => new Date() };
const wait = { timeout: 60_000 };

beforeAll(async () => {
  url = await freshDatabaseUrl();
  const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  records = opened.value;
});
afterAll(async () => {
  await owner?.app.close();
  await planner.close();
  await records.close();
});

const run = (...args: string[]) => warmstead(['owner-code', ...args], '', { DATABASE_URL: url });
const post = async (path: string, payload: object) => await owner.asked({ method: 'POST', url: path, payload });

test('where there is no owner yet, it says so', wait, async () => {
  const nobody = await run();
  expect(nobody).toMatchObject({ code: 64, out: '' });
  expect(nobody.err).toContain('ACCOUNT_WHICH_OWNER');
});

test('the code opens the door for a new password once; a second code ends the first', wait, async () => {
  const branch = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: clock.now() });
  owner = await appAsOwner({ records, branch, planner, db: records.db, clock, sessionClock: clock });
  const first = await run();
  expect(first).toMatchObject({ code: 0, err: '' });
  const second = JSON.parse((await run('--name', 'TESTER', '--json')).out);
  expect(second).toMatchObject({ ok: true, name: 'tester' });
  const password = 'nine quiet stones in rain';
  const old = /Code for tester: (\S+)/.exec(first.out)?.[1];
  expect(old).toMatch(/^[0-9A-Z]{5}(-[0-9A-Z]{5}){3}$/);
  expect((await post('/api/session/code', { code: old, password })).json().faults[0].code).toBe('ACCOUNT_CODE');
  expect((await post('/api/session/code', { code: second.code, password })).statusCode).toBeLessThan(300);
  expect((await post('/api/session/code', { code: second.code, password })).json().faults[0].code).toBe('ACCOUNT_CODE');
  expect((await post('/api/session', { name: 'tester', password })).statusCode).toBeLessThan(300);
  const changes = await records.db.selectFrom('person_change').select(['kind', 'by']).orderBy('seq').execute();
  expect(changes.filter((one) => one.by === 'terminal')).toEqual([
    { kind: 'code', by: 'terminal' },
    { kind: 'code', by: 'terminal' },
  ]);
  const kept = await records.db.selectFrom('person_code').selectAll().execute();
  expect(JSON.stringify(kept)).not.toContain(second.code);
});

test('somebody who is no owner gets none', wait, async () => {
  const stranger = await run('--name', 'somebody', '--lang', 'de');
  expect(stranger).toMatchObject({ code: 64, out: '' });
  expect(stranger.err).toContain('tester');
});
