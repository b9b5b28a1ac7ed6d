// Writes enquiries and their versions without end and says each one on standard output after the database has said yes.
// Started by kills.ts, which ends it in the middle. Usage: DATABASE_URL or WARMSTEAD_DATA, tsx writer.ts
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { insertEnquiry, updateEnquiry } from '../../src/records/enquiries.ts';
import { openRecords } from '../../src/records/open.ts';
import { firstBranch } from '../../src/records/shops.ts';

const at = new Date('2026-01-15T09:00:00Z');
const opened = await openRecords({
  databaseUrl: process.env.DATABASE_URL,
  dataFolder: process.env.WARMSTEAD_DATA ?? '',
});
if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
const { db } = opened.value;
const { branchId } = await firstBranch(db, { shopName: 'Survives', branchName: 'Counter', at });
for (;;) {
  const id = randomUUID();
  const what = { id, branchId, at, by: 'writer' };
  await insertEnquiry(db, { ...what, document: { said: `${id}/1` } });
  writeSync(1, `${id}/1\n`);
  for (let version = 1; version < 5; version++) {
    const row = await updateEnquiry(db, { ...what, fromVersion: version, document: { said: `${id}/${version + 1}` } });
    if (row !== undefined) writeSync(1, `${id}/${row.version}\n`);
  }
}
