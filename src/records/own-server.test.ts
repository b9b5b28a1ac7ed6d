// DATABASE_URL names a PostgreSQL of the shop's own, as old as 15: the same tables, the same answers.
// Runs where the system has such a server's programs (Debian: apt-get install postgresql), else skipped by name.
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { asAccount, databaseAccount } from './embedded/account.ts';
import { enquiryVersions, insertEnquiry, updateEnquiry } from './enquiries.ts';
import { openRecords, type Records } from './open.ts';
import { firstBranch } from './shops.ts';

const systemFolder = '/usr/lib/postgresql';
const versions = existsSync(systemFolder) ? readdirSync(systemFolder).filter((v) => Number(v) >= 15) : [];
const programs = versions.map((v) => join(systemFolder, v, 'bin')).find((bin) => existsSync(join(bin, 'postgres')));
const at = new Date('2026-01-15T09:00:00Z');

describe.skipIf(programs === undefined)("on a server of the shop's own (needs Debian's postgresql)", () => {
  const account = databaseAccount(null);
  let folder: string;
  let server: ReturnType<typeof spawn>;
  let url: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'warmstead-own-'));
    chmodSync(folder, 0o755);
    const cluster = join(folder, 'pg');
    mkdirSync(cluster, { mode: 0o700 });
    if (account !== null) for (const path of [folder, cluster]) chownSync(path, account.uid, account.gid);
    const options = { cwd: '/', ...asAccount(account) };
    const bin = programs ?? '';
    spawnSync(join(bin, 'initdb'), ['-D', cluster, '-U', 'shop', '-A', 'trust', '-E', 'UTF8', '--locale=C'], options);
    const quiet = { ...options, stdio: 'ignore' as const };
    server = spawn(join(bin, 'postgres'), ['-D', cluster, '-k', folder, '-c', 'listen_addresses='], quiet);
    url = `postgresql://shop@/postgres?host=${encodeURIComponent(folder)}`;
  });
  afterAll(async () => {
    const ended = new Promise((done) => server.on('exit', done));
    server.kill('SIGINT');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  });

  async function opened(): Promise<Records> {
    for (let tries = 0; ; tries++) {
      const records = await openRecords({ databaseUrl: url, dataFolder: '' });
      if (records.ok) return records.value;
      if (tries > 100) throw new Error(JSON.stringify(records.faults));
      await sleep(100);
    }
  }

  test('tables are made once, and an enquiry keeps every version', async () => {
    const first = await opened();
    const { branchId } = await firstBranch(first.db, { shopName: 'Own', branchName: 'Counter', at });
    const id = '00000000-0000-4000-8000-000000000001';
    await insertEnquiry(first.db, { id, branchId, document: { n: 1 }, at, by: 'tester' });
    await updateEnquiry(first.db, { id, branchId, fromVersion: 1, document: { n: 2 }, at, by: 'tester' });
    await first.close();
    const second = await opened();
    expect(second.kind).toBe('server');
    expect((await enquiryVersions(second.db, id)).map((row) => row.document)).toEqual([{ n: 1 }, { n: 2 }]);
    const shown = await sql<{ server_version: string }>`show server_version`.execute(second.db);
    expect(Number.parseInt(shown.rows[0]?.server_version ?? '', 10)).toBeGreaterThanOrEqual(15);
    await second.close();
  });
});
