// How is an empty cluster made, whole or not at all? Leaves out running it (supervisor.ts).
import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Fault } from '../../shared/fault.ts';
import { asAccount } from './account.ts';
import { engineUser } from './connection.ts';
import { engineCannotRun } from './engine-binaries.ts';
import type { Place } from './place.ts';

/** The major version of the programs that come with the packages. */
export const engineMajor = '18';

/** Makes the cluster when there is none. Sorting is by code point everywhere, so that results do not hang on the
 *  system's language files. Faults: "RECORDS_ENGINE_CANNOT_RUN", "RECORDS_ENGINE_VERSION". */
export function ensureCluster(place: Place): readonly Fault[] {
  if (existsSync(place.cluster)) return versionFaults(place);
  const making = join(place.folder, `pg-making-${process.pid}`);
  mkdirSync(making, { mode: 0o700 });
  if (place.account !== null) chownSync(making, place.account.uid, place.account.gid);
  const made = spawnSync(place.binaries.initdb, initdbArguments(making), {
    cwd: '/',
    env: { PATH: process.env.PATH ?? '/usr/bin:/bin', LC_ALL: 'C' },
    encoding: 'utf8',
    ...asAccount(place.account),
  });
  if (made.status !== 0) {
    rmSync(making, { recursive: true, force: true });
    return [engineCannotRun([made.error?.message, made.stderr].filter(Boolean).join('\n').trim())];
  }
  try {
    renameSync(making, place.cluster);
  } catch {
    rmSync(making, { recursive: true, force: true }); // another start was first; its cluster is as good
  }
  return [];
}

function initdbArguments(folder: string): string[] {
  return [
    ['-D', folder, '-U', engineUser, '-E', 'UTF8'],
    ['--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C'],
    // Whoever can open the socket may use it: its folder is closed to every other account (see connection.ts).
    ['--auth-local=trust', '--auth-host=reject', '--no-instructions'],
  ].flat();
}

function versionFaults(place: Place): readonly Fault[] {
  const found = readFileSync(join(place.cluster, 'PG_VERSION'), 'utf8').trim();
  if (found === engineMajor) return [];
  return [
    {
      code: 'RECORDS_ENGINE_VERSION',
      field: 'data-local',
      got: `records made by PostgreSQL ${found} in ${place.cluster}`,
      allowed: `records made by PostgreSQL ${engineMajor}`,
      say: 'The records were made by another version of the database.',
      fix: `Run the version of this program that made them and save a copy of the records, or open them with a PostgreSQL ${found} by DATABASE_URL.`,
    },
  ];
}
