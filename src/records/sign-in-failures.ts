// How often was a wrong password, PIN or code given, and until when does the next try wait?
import { sql } from 'kysely';
import type { Db } from './schema.ts';

export interface Failures {
  readonly failures: number;
  readonly waitUntil: Date;
}

export async function failuresOf(db: Db, what: string): Promise<Failures | undefined> {
  return await db
    .selectFrom('sign_in_failure')
    .select(['failures', 'wait_until as waitUntil'])
    .where('what', '=', what)
    .executeTakeFirst();
}

/** Counts one more, also when two are counted at once. @returns how many by now */
export async function countFailure(db: Db, what: string, at: Date): Promise<number> {
  const row = await db
    .insertInto('sign_in_failure')
    .values({ what, failures: 1, wait_until: at, at })
    .onConflict((clash) => clash.column('what').doUpdateSet({ failures: sql`sign_in_failure.failures + 1`, at }))
    .returning('failures')
    .executeTakeFirstOrThrow();
  return row.failures;
}

export async function waitAfterFailure(db: Db, what: string, until: Date): Promise<void> {
  await db.updateTable('sign_in_failure').set({ wait_until: until }).where('what', '=', what).execute();
}

export async function forgetFailures(db: Db, what: string): Promise<void> {
  await db.deleteFrom('sign_in_failure').where('what', '=', what).execute();
}
