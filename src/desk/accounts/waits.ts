// After some wrong tries the next one waits, and the wait doubles. Counted in the records, so that a second process or
// a restart changes nothing; counted by what was typed, so that a name that does not exist waits like one that does.

import type { Db } from '../../records/schema.ts';
import {
  countFailure,
  type Failures,
  failuresOf,
  forgetFailures,
  waitAfterFailure,
} from '../../records/sign-in-failures.ts';
import type { Fault } from '../../shared/fault.ts';
import { secretHash } from '../secrets.ts';
import { accountFaults } from './account-faults.ts';

/** Our choice: five tries as one types them, then 15 s, 30 s, … up to a quarter of an hour for a password. */
const freeTries = 5;
const limits = {
  password: { firstMs: 15_000, longestMs: 900_000, most: Number.POSITIVE_INFINITY },
  pin: { firstMs: 30_000, longestMs: 3_600_000, most: 10 },
} as const;
type Kind = keyof typeof limits;

/** Forgotten after a day without a wrong try, so that one slip a week never adds up; a spent PIN stays spent. */
const forgetAfterMs = 86_400_000;

const key = (kind: Kind, what: string): string => secretHash(`${kind}:${what.trim().toLowerCase()}`);

/** Why this must not be tried now; null when it may. */
export async function waitFor(db: Db, kind: Kind, what: string, now: Date): Promise<Fault | null> {
  const kept = await failuresOf(db, key(kind, what));
  if (kept === undefined) return null;
  if (kept.failures >= limits[kind].most) return accountFaults.pinSpent;
  return stillWaiting(kept, now);
}

function stillWaiting(kept: Failures, now: Date): Fault | null {
  const leftMs = kept.waitUntil.getTime() - now.getTime();
  return leftMs > 0 ? accountFaults.wait(Math.ceil(leftMs / 1000)) : null;
}

export async function countWrong(db: Db, kind: Kind, what: string, now: Date): Promise<void> {
  const name = key(kind, what);
  const kept = await failuresOf(db, name);
  const old = kept !== undefined && now.getTime() - kept.waitUntil.getTime() > forgetAfterMs;
  if (old && kept.failures < limits[kind].most) await forgetFailures(db, name);
  const failures = await countFailure(db, name, now);
  if (failures < freeTries) return;
  const { firstMs, longestMs } = limits[kind];
  const waitMs = Math.min(longestMs, firstMs * 2 ** (failures - freeTries));
  await waitAfterFailure(db, name, new Date(now.getTime() + waitMs));
}

export async function forgetWrong(db: Db, kind: Kind, what: string): Promise<void> {
  await forgetFailures(db, key(kind, what));
}
