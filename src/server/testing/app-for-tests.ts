// The whole server in this process on a database of its own, without listening: real desk, real records, real planner.
// Requests carry the cookie of a real owner who signed in, unless they bring one themselves.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { InjectOptions, Response as LightMyRequestResponse } from 'light-my-request';
import { firstStartCode } from '../../desk/accounts/set-up.ts';
import type { Clock } from '../../desk/desk-context.ts';
import { startPlanner } from '../../desk/planner.ts';
import type { Records } from '../../records/open.ts';
import { firstBranch } from '../../records/shops.ts';
import { freshRecords } from '../../records/testing/fresh-database.ts';
import { buildApp } from '../app.ts';
import type { App, Ground } from '../types.ts';

export interface AppForTests {
  readonly app: App;
  readonly records: Records;
  readonly clock: Clock;
  /** Cookie of the owner, "tester". */
  readonly cookie: string;
  /** A request as somebody else, or without a cookie as nobody. */
  readonly asked: (options: InjectOptions, cookie?: string) => Promise<LightMyRequestResponse>;
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

const standingClock: Clock = { now: () => new Date('2026-01-15T12:00:00Z') };

export const testPassword = 'seven lamps over water';

async function ownerCookie(asked: AppForTests['asked'], code: string | null): Promise<string> {
  const shop = { shopName: 'Test shop', branchName: 'Counter', place: 'england' };
  const payload = { code, name: 'tester', password: testPassword, ...shop };
  return cookieOf(await asked({ method: 'POST', url: '/api/set-up', payload }));
}

/** What the browser would send from now on. */
export function cookieOf(answer: LightMyRequestResponse): string {
  const [first] = answer.cookies;
  if (first === undefined) throw new Error(`no cookie: ${answer.statusCode} ${answer.body}`);
  return `${first.name}=${first.value}`;
}

/** The server on ground of the test's own, with a real owner: what the app is asked carries that owner's cookie. */
export async function appAsOwner(
  ground: Ground,
  webFolder = '',
  before?: (app: App) => void,
): Promise<Pick<AppForTests, 'app' | 'asked' | 'cookie'>> {
  const sessionClock = ground.sessionClock ?? standingClock;
  const app = await buildApp({ ...ground, sessionClock }, { webFolder, hosts: [], perMinute: 1_000_000 });
  before?.(app);
  const bare = app.inject.bind(app) as (options: InjectOptions) => Promise<LightMyRequestResponse>;
  const asked: AppForTests['asked'] = async (options, cookie) =>
    await bare({ ...options, headers: { ...options.headers, ...(cookie === undefined ? {} : { cookie }) } });
  const cookie = await ownerCookie(asked, await firstStartCode({ db: ground.db, clock: sessionClock }));
  app.inject = (async (options: InjectOptions) => await asked(options, cookie)) as typeof app.inject;
  return { app, asked, cookie };
}

/** @param from          ISO time at which its clock starts
 *  @param sessionClock  limits sessions; stands still unless a test of sessions brings its own
 *  @param before        adds doors of the test's own before the first request */
export async function appForTests({
  from,
  sessionClock = standingClock,
  before,
}: {
  readonly from?: string;
  readonly sessionClock?: Clock;
  readonly before?: (app: App) => void;
} = {}): Promise<AppForTests> {
  const records = await freshRecords();
  const clock = steppingClock(from);
  const branch = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: clock.now() });
  const planner = startPlanner(1);
  const webFolder = pagesForTests();
  const account = { db: records.db, clock };
  const ground = { records, branch, planner, ...account, sessionClock };
  const signedIn = await appAsOwner(ground, webFolder, before);
  const { app } = signedIn;
  return {
    ...signedIn,
    records,
    clock,
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
