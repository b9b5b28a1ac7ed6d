// Is every question that the sheet of today asks of the records answered by an index? Each is asked of a chain of shops as
// the load trial makes it, with whole-table reads made dear: one that stays has no index to go by.
import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { systemClock } from '../../src/desk/desk-context.ts';
import { showToday } from '../../src/desk/show-today.ts';
import type { Tables } from '../../src/records/schema.ts';
import { freshDatabaseUrl } from '../../src/records/testing/fresh-database.ts';
import { generate } from './generate.ts';

/** Grow with every placement or reading; the others hold a few rows a shop. */
const growing =
  /^(animal|animal_\w+|aftercare_\w+|enquiry|enquiry_version|hand_reading|live_source|live_reading\w*|placement|placement_\w+|plan_result|proof_result|reading_file\w*)$/;

interface Asked {
  readonly sql: string;
  readonly parameters: readonly unknown[];
}
interface Node {
  readonly 'Node Type': string;
  readonly 'Relation Name'?: string;
  readonly 'Index Cond'?: string;
  readonly Plans?: readonly Node[];
}

let pool: pg.Pool;
let db: Kysely<Tables>;
const asked: Asked[] = [];

beforeAll(async () => {
  pool = new pg.Pool({ connectionString: await freshDatabaseUrl() });
  await generate(pool, 1, 1000, 5000);
  const log = ({ query }: { query: Asked }): void => {
    asked.push(query);
  };
  db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }), log });
}, 120_000);
afterAll(async () => await db?.destroy());

const nodesOf = (node: Node): Node[] => [node, ...(node.Plans ?? []).flatMap(nodesOf)];

test('every question of the sheet of today goes by an index', { timeout: 60_000 }, async () => {
  const branch = await pool.query<{ id: string }>(
    "select branch_id as id from placement_standing where state = 'open' limit 1",
  );
  const actor = { name: 'reader', branchId: branch.rows[0]?.id ?? '', role: 'owner' as const };
  const today = await showToday({ actor, clock: systemClock, db });
  expect(today.placements?.length).toBeGreaterThan(0);
  const questions = asked.filter(({ sql }) => /^\s*(select|with)\b/i.test(sql));
  expect(questions.length).toBeGreaterThan(8);
  const client = await pool.connect();
  const wrong: string[] = [];
  try {
    await client.query('set enable_seqscan to off');
    for (const { sql, parameters } of questions) {
      const found = await client.query(`explain (format json) ${sql}`, [...parameters]);
      const plan = found.rows[0]['QUERY PLAN'][0].Plan as Node;
      for (const node of nodesOf(plan)) {
        const table = node['Relation Name'] ?? '';
        if (node['Node Type'] === 'Seq Scan' && growing.test(table)) wrong.push(`${table}: ${sql.slice(0, 200)}`);
      }
    }
  } finally {
    client.release(true);
  }
  expect(wrong).toEqual([]);
});
