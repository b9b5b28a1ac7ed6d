// A folder of backups: one more, read again to see that it is whole, and the oldest beyond a number gone.
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { createGunzip } from 'node:zlib';
import type pg from 'pg';
import { type BackupDone, writeBackup } from './backup.ts';
import { backupParts, NotABackup } from './backup-format.ts';

export interface KeptBackup {
  readonly file: string;
  readonly bytes: number;
  readonly rows: number;
  readonly removed: readonly string[];
}

/** Only files named by ourselves are ever removed. */
const ours = /^warmstead-\d{4}-\d{2}-\d{2}T\d{6}Z\.sql\.gz$/;

export async function addBackup(pool: pg.Pool, folder: string, keep: number, at: Date): Promise<KeptBackup> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const stamp = at.toISOString().slice(0, 19).replaceAll(':', '');
  const name = `warmstead-${stamp}Z.sql.gz`;
  const file = join(folder, name);
  const done = await writeBackup(pool, file, at);
  await checkBackup(file, done);
  const all = (await readdir(folder)).filter((one) => ours.test(one)).sort();
  const removed = all.slice(0, Math.max(0, all.length - keep)).filter((one) => one !== name);
  for (const old of removed) await rm(join(folder, old));
  return { file, bytes: (await stat(file)).size, rows: done.rows, removed };
}

/** Reads the file from the disk and compares every table's hash with what was written. */
export async function checkBackup(file: string, done: BackupDone): Promise<void> {
  const source = createReadStream(file);
  const unpacked = source.pipe(createGunzip());
  source.on('error', (error) => unpacked.destroy(error));
  let hash = createHash('sha256');
  let tables = 0;
  for await (const part of backupParts(unpacked)) {
    if (part.kind === 'rows') hash.update(part.bytes);
    if (part.kind !== 'table-end') continue;
    const wanted = done.tables[tables];
    if (hash.digest('hex') !== wanted?.sha256 || part.end.sha256 !== wanted.sha256)
      throw new NotABackup(part.end.table);
    hash = createHash('sha256');
    tables++;
  }
  if (tables !== done.tables.length) throw new NotABackup('tables are missing');
}
