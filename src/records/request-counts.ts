// How many requests came at a door from one address in this stretch of time, counted in the database for all processes
// together. Its clock counts, so that processes whose clocks differ agree.
import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import type { Db } from './schema.ts';

export interface Counted {
  readonly count: number;
  /** How long the stretch still lasts [ms]. */
  readonly leftMs: number;
}

/** Counts one more, also when two are counted at once. */
export async function countRequest(db: Db, door: string, address: string, windowMs: number): Promise<Counted> {
  const what = createHash('sha256').update(`${door}\n${address}`).digest('hex');
  const found = await sql<Counted>`
    insert into request_count as c (what, n, until)
    values (${what}, 1, clock_timestamp() + make_interval(secs => ${windowMs / 1000}))
    on conflict (what) do update set
      n = case when c.until <= clock_timestamp() then 1 else c.n + 1 end,
      until = case when c.until <= clock_timestamp() then excluded.until else c.until end
    returning n as count, greatest(0, extract(epoch from until - clock_timestamp()) * 1000)::float8 as "leftMs"`.execute(
    db,
  );
  return found.rows[0] as Counted;
}

/** Forgets stretches that are over. */
export async function forgetRequests(db: Db): Promise<void> {
  await sql`delete from request_count where until < clock_timestamp()`.execute(db);
}
