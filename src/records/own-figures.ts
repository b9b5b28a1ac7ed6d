// How many released animals, of each species, were heard of again, died, or came back, within a time: counted by the
// database over one narrow table.
import { sql } from 'kysely';
import type { Rows } from './animals.ts';

export interface OwnCountRow {
  readonly speciesId: string;
  /** Released at least as long ago as the horizon. */
  readonly released: number;
  /** Of these: whose fate at the horizon is known. */
  readonly followed: number;
  readonly died: number;
  readonly returned: number;
}

/** @param horizonDays days after the release  @param today day of the look */
export async function ownCounts(
  db: Rows,
  branchId: string,
  horizonDays: number,
  today: string,
): Promise<OwnCountRow[]> {
  const found = await sql<Record<keyof OwnCountRow, string>>`
    with stay as (
      select species_id, died_on is not null and died_on <= released_on + ${horizonDays}::int as died,
        returned_on is not null and returned_on <= released_on + ${horizonDays}::int as returned,
        coalesce(heard_on >= released_on + ${horizonDays}::int, false) as heard
      from aftercare_placement
      where branch_id = ${branchId} and released_on + ${horizonDays}::int <= ${today}::date)
    select species_id as "speciesId", count(*) as released, count(*) filter (where died or returned or heard) as followed,
      count(*) filter (where died) as died, count(*) filter (where returned) as returned
    from stay group by species_id order by count(*) desc, species_id`.execute(db);
  return found.rows.map(({ speciesId, released, followed, died, returned }) => ({
    speciesId,
    released: Number(released),
    followed: Number(followed),
    died: Number(died),
    returned: Number(returned),
  }));
}
