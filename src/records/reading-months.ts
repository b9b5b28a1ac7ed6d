// Live readings lie by month: is there a place for the month of a reading? Made when it is needed.
import { sql } from 'kysely';
import type { Db } from './schema.ts';

const known = new WeakMap<Db, Set<string>>();

/** Makes the months of these moments, each asked for once in a process. */
export async function ensureReadingMonths(db: Db, moments: readonly Date[]): Promise<void> {
  const made = known.get(db) ?? new Set();
  for (const month of new Set(moments.map((at) => at.toISOString().slice(0, 7)))) {
    if (made.has(month)) continue;
    await sql`select make_reading_month(${`${month}-01T00:00:00Z`}::timestamptz)`.execute(db);
    // A month made in a transaction may be taken back with it.
    if (!db.isTransaction) made.add(month);
  }
  if (!db.isTransaction) known.set(db, made);
}
