// Where do the built-in database's files lie? In the data folder when the account that runs the database can
// enter it, else under /var/lib/warmstead, with a note left in the data folder. Leaves out starting it.
import { createHash } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { bad, good, type Result } from '../../shared/result.ts';
import { type Account, canRun, canWriteIn, databaseAccount } from './account.ts';
import { binariesIn, type EngineBinaries } from './engine-binaries.ts';

export interface Place {
  /** Folder for everything of the database: the cluster, its log. */
  readonly folder: string;
  readonly cluster: string;
  readonly log: string;
  readonly binaries: EngineBinaries;
  readonly account: Account | null;
}

export const noteName = 'WHERE-THE-DATA-ARE.txt';
/** Lies beside records that are elsewhere and names the data folder they belong to. */
const ownerName = 'belongs-to.txt';
const systemFolder = '/var/lib/warmstead';

export const shortHash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 12);

/** Decides once and stays with it: records that exist already win over every other rule.
 *  @param dataFolder  the folder of this checkout's data, made when missing
 *  @param installed   the programs that came with the packages
 *  @param elsewhere   where data go that the account cannot reach here
 *  Faults: "RECORDS_OTHER_OWNER". */
export function databasePlace(dataFolder: string, installed: EngineBinaries, elsewhere = systemFolder): Result<Place> {
  const data = resolve(dataFolder);
  mkdirSync(data, { recursive: true });
  const far = farFolder(data, elsewhere);
  const settled = [far, data].find((folder) => existsSync(join(folder, 'pg')));
  const account = databaseAccount(settled === undefined ? null : join(settled, 'pg'));
  if (account === null)
    return settled === undefined ? good(placeAt(data, installed, null)) : ownPlace(settled, installed);
  const chosen = settled ?? (reachable(data, account) ? data : far);
  mkdirSync(chosen, { recursive: true });
  if (chosen === far) {
    for (const folder of [elsewhere, far]) chmodSync(folder, 0o755);
    leaveNote(data, far, account);
  }
  return good(placeAt(chosen, runnableBinaries(installed, account, elsewhere), account));
}

/** Without root only one's own records can be opened. */
function ownPlace(folder: string, installed: EngineBinaries): Result<Place> {
  const cluster = join(folder, 'pg');
  const ownerUid = statSync(cluster).uid;
  if (ownerUid === process.getuid?.()) return good(placeAt(folder, installed, null));
  return bad([
    {
      code: 'RECORDS_OTHER_OWNER',
      field: 'data-local',
      got: `records in ${cluster} that belong to account number ${ownerUid}`,
      allowed: 'records made by the account that starts the program',
      say: 'These records were made when another account, or root, started the program.',
      fix: 'Start it as that account again, or give yourself another data folder with WARMSTEAD_DATA.',
    },
  ]);
}

function placeAt(folder: string, binaries: EngineBinaries, account: Account | null): Place {
  return { folder, cluster: join(folder, 'pg'), log: join(folder, 'pg.log'), binaries, account };
}

/** The data folder itself stays root's; only the subfolder for the database is handed over, so entering is enough. */
function reachable(data: string, account: Account): boolean {
  const trial = join(data, `.trial-${process.pid}`);
  mkdirSync(trial);
  chownSync(trial, account.uid, account.gid);
  const yes = canWriteIn(trial, account);
  rmSync(trial, { recursive: true });
  return yes;
}

/** Copies the programs to where the account can run them, once per version; complete or not at all. */
function runnableBinaries(installed: EngineBinaries, account: Account, elsewhere: string): EngineBinaries {
  if (canRun(installed, account)) return installed;
  const version = readFileSync(join(installed.folder, '..', 'package.json'), 'utf8');
  const copy = join(elsewhere, `engine-${shortHash(version)}`);
  if (!existsSync(copy)) {
    const making = `${copy}-${process.pid}`;
    cpSync(installed.folder, making, { recursive: true, verbatimSymlinks: true });
    chmodSync(making, 0o755);
    try {
      renameSync(making, copy);
    } catch {
      rmSync(making, { recursive: true }); // another start was first
    }
  }
  return binariesIn(copy);
}

/** A folder named after this data folder's path. A data folder that was moved keeps what its note names; one that
 *  was copied gets its own. */
function farFolder(data: string, elsewhere: string): string {
  const note = join(data, noteName);
  const named = existsSync(note) ? /^Folder: (.+)$/m.exec(readFileSync(note, 'utf8'))?.[1] : undefined;
  if (named !== undefined) {
    const owner = ownerOf(named);
    if (owner === data || owner === null || !existsSync(join(owner, noteName))) return named;
  }
  for (let n = 1; ; n++) {
    const own = join(elsewhere, shortHash(n === 1 ? data : `${data}#${n}`));
    if ([null, data].includes(ownerOf(own))) return own;
  }
}

/** The data folder that a folder elsewhere belongs to; null when it is nobody's yet. */
function ownerOf(far: string): string | null {
  const file = join(far, ownerName);
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : null;
}

function leaveNote(data: string, far: string, account: Account): void {
  const text = [
    'The records of this program do not lie in this folder.',
    '',
    `Folder: ${far}`,
    '',
    `The program was started as root. A database must not run as root, so it runs as "${account.name}",`,
    'and that account cannot enter the folder you are looking at.',
    'Back up the folder named above. To move the records here, stop the program, make this folder reachable',
    `for "${account.name}", move "pg" from there to here, and delete this note.`,
    '',
  ].join('\n');
  writeFileSync(join(data, noteName), text);
  writeFileSync(join(far, ownerName), `${data}\n`);
}
