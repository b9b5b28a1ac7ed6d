// As whom does the built-in database run? PostgreSQL refuses to run as root, so root steps down to an
// account without rights; anybody else runs it as himself. Leaves out where the data lie (place.ts).
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import type { EngineBinaries } from './engine-binaries.ts';

export interface Account {
  readonly name: string;
  readonly uid: number;
  readonly gid: number;
}

/** Accounts that already exist on usual systems, best first. */
const wantedNames = ['postgres', '_postgres', 'nobody'] as const;

export const runsAsRoot = (): boolean => process.getuid?.() === 0;

/** The account to step down to, or null when there is nothing to step down from.
 *  Data that exist already stay with the account that owns them. */
export function databaseAccount(existingCluster: string | null): Account | null {
  if (!runsAsRoot()) return null;
  const known = accountsIn(readFileSync('/etc/passwd', 'utf8'));
  const owner = existingCluster === null ? null : statSync(existingCluster);
  if (owner !== null && owner.uid !== 0) {
    const named = known.find((a) => a.uid === owner.uid);
    return named ?? { name: String(owner.uid), uid: owner.uid, gid: owner.gid };
  }
  for (const name of wantedNames) {
    const found = known.find((a) => a.name === name && a.uid !== 0);
    if (found !== undefined) return found;
  }
  return createdAccount();
}

export function accountsIn(passwd: string): Account[] {
  return passwd.split('\n').flatMap((line) => {
    const [name, , uid, gid] = line.split(':');
    if (name === undefined || uid === undefined || gid === undefined) return [];
    return [{ name, uid: Number(uid), gid: Number(gid) }];
  });
}

/** Last resort on a system without any of the usual accounts. */
function createdAccount(): Account {
  execFileSync('useradd', ['--system', '--no-create-home', '--shell', '/usr/sbin/nologin', 'warmstead']);
  const made = accountsIn(readFileSync('/etc/passwd', 'utf8')).find((a) => a.name === 'warmstead');
  if (made === undefined) throw new Error('useradd made no account');
  return made;
}

/** Options of spawn() that make a child run as this account. */
export function asAccount(account: Account | null): { uid?: number; gid?: number } {
  return account === null ? {} : { uid: account.uid, gid: account.gid };
}

/** Tried, not computed, so that access lists and mounts count too: can the account enter and write this folder? */
export function canWriteIn(folder: string, account: Account | null): boolean {
  const test = spawnSync('/bin/sh', ['-c', 'cd "$1" && test -w .', 'sh', folder], { cwd: '/', ...asAccount(account) });
  return test.status === 0;
}

/** Can the account run these programs where they lie? */
export function canRun(binaries: EngineBinaries, account: Account | null): boolean {
  return spawnSync(binaries.postgres, ['--version'], { cwd: '/', ...asAccount(account) }).status === 0;
}
