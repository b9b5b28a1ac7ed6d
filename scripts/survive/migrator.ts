// Opens the database named by DATABASE_URL and brings its tables up to date. Started by migrating.ts, which ends it in the
// middle. Usage: DATABASE_URL=... tsx migrator.ts
import { writeSync } from 'node:fs';
import { openRecords } from '../../src/records/open.ts';

writeSync(1, 'begins\n');
const opened = await openRecords({ databaseUrl: process.env.DATABASE_URL, dataFolder: '' });
if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
await opened.value.close();
