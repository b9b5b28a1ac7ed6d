// A chain of shops as it stands after years, made in the database itself: animals with their register, enquiries,
// placements and what followed, tasks that are due, and live readings. No person and no animal is real.
import type pg from 'pg';
import { versions } from '../../src/records/versions.ts';

export interface Made {
  readonly placements: number;
  readonly readings: number;
  readonly seconds: number;
}

/** One desk a shop. */
export const shops = 50;
/** A source for every so many placements. */
const placementsPerSource = 10;

const id = (kind: string, n: string): string => `md5('${kind}' || ${n})::uuid`;

/** Adds placements from..to (numbers from 1) and so many readings, spread over their sources. */
export async function generate(pool: pg.Pool, from: number, to: number, readings: number): Promise<Made> {
  const started = performance.now();
  const client = await pool.connect();
  try {
    await client.query('begin');
    // Guards and derived tables are filled by hand below: one row at a time they would take hours.
    await client.query("set local session_replication_role to 'replica'");
    for (const text of rows(from, to)) await client.query(text);
    await client.query('commit');
    await client.query('begin');
    await client.query('select chain_backfill()');
    await client.query('commit');
    await addReadings(client, from, to, readings);
    await client.query('analyze');
  } finally {
    client.release();
  }
  return { placements: to - from + 1, readings, seconds: (performance.now() - started) / 1000 };
}

function rows(from: number, to: number): string[] {
  const every = `generate_series(${from}, ${to}) n`;
  const branch = id('branch', `n % ${shops}`);
  // A third of a day apart, so that ten years hold about eleven thousand for each three shops; the last 5 in 100 are open.
  const at = "now() - (n % 1100) * interval '1 day' - interval '1 hour'";
  const open = 'n % 20 = 0';
  const madeWith = `'${versions().model} ${versions().data}'`;
  return [
    `insert into shop select ${id('shop', 'n')}, 'Shop ' || n, now() - interval '4 years' from generate_series(0, ${shops - 1}) n on conflict do nothing`,
    `insert into branch (id, shop_id, name, created_at) select ${id('branch', 'n')}, ${id('shop', 'n')}, 'Counter', now() - interval '4 years' from generate_series(0, ${shops - 1}) n on conflict do nothing`,
    `insert into animal select ${id('animal', 'n')}, ${id('shop', `n % ${shops}`)}, ${at}, 'load' from ${every}`,
    `insert into animal_fact (id, animal_id, field, value, reason, branch_id, at, by)
     select md5('fact' || f.field || n)::uuid, ${id('animal', 'n')}, f.field, f.value, '', ${branch}, ${at}, 'load' from ${every}
     cross join lateral (values ('speciesId', 'corn'), ('callName', 'Animal ' || n), ('acquiredOn', (${at})::date::text), ('sex', 'female')) f (field, value)`,
    `insert into animal_event (id, animal_id, kind, happened_on, happened_at, body, corrects, reason, branch_id, recorded_at, by)
     select md5('event' || e.kind || n || e.k)::uuid, ${id('animal', 'n')}, e.kind, (${at})::date, ${at}, e.body::jsonb, null, '', ${branch}, ${at}, 'load' from ${every}
     cross join lateral (values ('weight', 1, '{"massG": 412}'), ('weight', 2, '{"massG": 430}'), ('feeding', 3, '{"prey": "mouse", "count": 1, "outcome": "taken"}')) e (kind, k, body)`,
    `insert into animal_whereabouts select ${id('animal', 'n')}, ${branch}, 'A' || n, not (${open}) from ${every}`,
    `insert into enquiry select ${id('enquiry', 'n')}, ${branch}, jsonb_build_object('format', 'warmstead-enquiry', 'version', 1, 'answers', jsonb_build_object('label', 'Enquiry ' || n)), 1, ${at}, ${at}, 'load' from ${every}`,
    `insert into enquiry_version select ${id('enquiry', 'n')}, 1, jsonb_build_object('format', 'warmstead-enquiry', 'version', 1, 'answers', jsonb_build_object('label', 'Enquiry ' || n)), ${at}, 'load' from ${every}`,
    `insert into placement select ${id('placement', 'n')}, ${branch}, ${id('enquiry', 'n')}, ${id('animal', 'n')}, ${at}, 'load' from ${every}`,
    `insert into placement_event (id, placement_id, kind, body, token, at, by)
     select md5('said' || n || k)::uuid, ${id('placement', 'n')}, k, '{}'::jsonb, md5('token' || n || k)::uuid, ${at}, 'load' from ${every}
     cross join lateral (select 'statement' as k union all select 'released' where not (${open})) e`,
    `insert into placement_standing select ${id('placement', 'n')}, ${branch}, case when ${open} then 'open' else 'released' end, ${at} from ${every}`,
    `insert into aftercare_placement (placement_id, branch_id, species_id, released_on, heard_on, calendar_name, data_version)
     select ${id('placement', 'n')}, ${branch}, 'corn', (${at})::date, null, ${id('calendar', 'n')}, ${madeWith} from ${every} where not (${open})`,
    `insert into aftercare_due (placement_id, key, branch_id, kind, from_on, to_on, task, state, sequence, changed_at)
     select ${id('placement', 'n')}, 'call-' || k, ${branch}, 'call', (${at})::date + k * 7, (${at})::date + k * 7 + 3, '{}'::jsonb,
       case when (${at})::date + k * 7 < current_date - 5 then 'done' else 'open' end, 0, ${at} from ${every}, generate_series(1, 5) k where not (${open})`,
    `insert into live_source (id, enquiry_id, label, place, quantity, interval_s, secret_sha256, at, by)
     select ${id('source', 'n')}, ${id('enquiry', 'n')}, 'probe', 'warm-air', 'tempC', 300, md5('secret' || n), ${at}, 'load' from ${every} where n % ${placementsPerSource} = 0`,
  ];
}

/** Every five minutes backwards from now, for each source. */
async function addReadings(client: pg.ClientBase, from: number, to: number, readings: number): Promise<void> {
  const sources = Math.max(1, Math.floor(to / placementsPerSource) - Math.floor((from - 1) / placementsPerSource));
  const each = Math.ceil(readings / sources);
  await client.query(
    `select make_reading_month(now() - n * interval '1 month') from generate_series(0, ${Math.ceil(each / 8640) + 1}) n`,
  );
  // Some sources at a time, so that one transaction stays small.
  const step = Math.max(1, Math.floor(1_000_000 / each)) * placementsPerSource;
  for (let first = from; first <= to; first += step) {
    await client.query('begin');
    await client.query("set local session_replication_role to 'replica'");
    await client.query(
      `insert into live_reading select ${id('source', 'n')}, date_trunc('hour', now()) - k * interval '5 minutes', 28 + sin(k / 40.0), now()
       from generate_series(${first}, ${Math.min(to, first + step - 1)}) n, generate_series(1, ${each}) k where n % ${placementsPerSource} = 0`,
    );
    await client.query('commit');
  }
}
