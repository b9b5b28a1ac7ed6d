// The program as people run it: the built server in a process of its own, on a free port and a new database.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { freshDatabaseUrl } from '../../src/records/testing/fresh-database.ts';
import { forgetOwner, type Owner, sameOwner, signInOwner } from './owner.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

export interface RunningProgram {
  /** Address without a slash at the end, e.g. "http://127.0.0.1:41234". */
  readonly url: string;
  /** Its owner, who is signed in; null when it was told to be a stranger. */
  readonly owner: Owner | null;
  /** All that it has written so far. */
  readonly output: () => string;
  /** Asks it to stop and gives its exit code. */
  readonly stop: () => Promise<number | null>;
  /** Ends it without asking, as a crash does. */
  readonly crash: () => Promise<void>;
}

/** Owners by the records they belong to. */
const ownersOf = new Map<string, Owner>();

export type AsWhom = 'owner' | 'stranger' | Owner;

/** @param settings  further environment, e.g. { WARMSTEAD_DEMO: 'yes' }; DATABASE_URL '' uses WARMSTEAD_DATA
 *  @param at        folder of the built program
 *  @param as        signed in as its owner (who is made where there is none), as one of the same records, or not at all */
export async function startProgram(
  settings: Record<string, string> = {},
  as: AsWhom = 'owner',
  at = root,
): Promise<RunningProgram> {
  const database = settings.DATABASE_URL ?? (await freshDatabaseUrl());
  const env = { ...process.env, PORT: '0', HOST: '127.0.0.1', ...settings, DATABASE_URL: database };
  const child = spawn(process.execPath, [join(at, 'dist', 'server', 'main.mjs')], { env, cwd: at });
  let text = '';
  child.stdout.on('data', (chunk) => {
    text += chunk;
  });
  child.stderr.on('data', (chunk) => {
    text += chunk;
  });
  const ended = new Promise<number | null>((done) => child.on('exit', (code) => done(code)));
  const url = await new Promise<string>((done, fail) => {
    const look = (): void => {
      const found = /http:\/\/\S+/.exec(text)?.[0];
      if (found !== undefined && text.includes('Stop with')) done(found);
    };
    child.stdout.on('data', look);
    void ended.then((code) => fail(new Error(`the program ended with ${code} before it was ready:\n${text}`)));
  });
  let owner: Owner | null = null;
  // Started again on records that have an owner, it tells no way in: the session of before goes on.
  const before = ownersOf.get(database || (settings.WARMSTEAD_DATA ?? ''));
  if (as === 'owner' && before !== undefined && !/Set-up code: |\(owner\): /.test(text)) {
    owner = before;
    sameOwner(url, owner);
  } else if (as === 'owner') owner = await signInOwner(url, text);
  else if (as !== 'stranger') {
    owner = as;
    sameOwner(url, owner);
  }
  if (owner !== null) ownersOf.set(database || (settings.WARMSTEAD_DATA ?? ''), owner);
  return {
    url,
    owner,
    output: () => text,
    stop: async () => {
      forgetOwner(url);
      child.kill('SIGTERM');
      return await ended;
    },
    crash: async () => {
      forgetOwner(url);
      child.kill('SIGKILL');
      await ended;
    },
  };
}
