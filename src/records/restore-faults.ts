// What can be wrong with a backup, or with the place it is to be put back into.
import type { Fault } from '../shared/fault.ts';
import type { TableEnd } from './backup-format.ts';

export const restoreFaults = {
  notEmpty: (tables: readonly string[]): Fault => ({
    code: 'RESTORE_NOT_EMPTY',
    field: 'DATABASE_URL, WARMSTEAD_DATA',
    got: `a database with ${tables.length} tables (${tables.slice(0, 3).join(', ')}…)`,
    allowed: 'a database without any table',
    say: 'Records are put back only where there are none, so that nothing is overwritten.',
    fix: 'Name an empty folder by WARMSTEAD_DATA or a new database by DATABASE_URL, restore into it, and start the program with that setting.',
  }),
  notABackup: (why: string): Fault => ({
    code: 'RESTORE_NOT_A_BACKUP',
    field: 'FILE',
    got: why.slice(0, 200),
    allowed: 'a whole file that "warmstead backup" wrote',
    say: 'This file is no backup of this program, or it is damaged. Nothing was put back.',
    fix: 'Take another backup file; keep this one until you know why.',
  }),
  differs: (said: TableEnd, found: TableEnd): Fault => ({
    code: 'RESTORE_DIFFERS',
    field: said.table,
    got: `${found.rows} rows, hash ${found.sha256.slice(0, 16)}`,
    allowed: `${said.rows} rows, hash ${said.sha256.slice(0, 16)}`,
    say: 'What came out of the backup is not what went in. Nothing was put back.',
    fix: 'Take another backup file; keep this one until you know why.',
  }),
  none: (): Fault => ({
    code: 'RECORDS_NONE',
    field: 'DATABASE_URL, WARMSTEAD_DATA',
    got: 'a database without records of this program',
    allowed: 'the records of a program that was started once',
    say: 'There are no records here.',
    fix: 'Name the folder by WARMSTEAD_DATA or the server by DATABASE_URL, as when you start the program.',
  }),
};
