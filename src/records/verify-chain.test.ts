// Somebody with every right on the database changes it behind the program's back: is it found, and named?
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { chainedTables, unchainedTables } from './chain-tables.ts';
import { updateEnquiry } from './enquiries.ts';
import { openRecords, type Records } from './open.ts';
import { fillEveryTable } from './testing/every-table.ts';
import { freshDatabaseUrl } from './testing/fresh-database.ts';
import { type ChainReport, verifyChain } from './verify-chain.ts';

let url: string;
let records: Records;
let client: pg.Client;
let branchId: string;
let enquiryId: string;

beforeAll(async () => {
  url = await freshDatabaseUrl();
  const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  records = opened.value;
  ({ branchId, enquiryId } = await fillEveryTable(records.db));
  client = new pg.Client({ connectionString: url });
  await client.connect();
});
afterAll(async () => {
  await client.end();
  await records.close();
});
beforeEach(async () => {
  expect((await verifyChain(client)).breaks).toEqual([]);
});

/** What a check finds after this was done with every guard off; the records are as before afterwards. */
async function after(...steps: readonly string[]): Promise<ChainReport> {
  await client.query('begin');
  // The check's own snapshot would end this transaction: it is run on savepoints instead.
  const inside = {
    query: async (text: string, values?: unknown[]) => {
      if (text.startsWith('begin')) return await client.query('savepoint checked');
      if (text === 'rollback') return await client.query('rollback to savepoint checked');
      return await client.query(text, values);
    },
  };
  try {
    await client.query("set local session_replication_role to 'replica'");
    for (const step of steps) await client.query(step);
    return await verifyChain(inside as unknown as pg.ClientBase);
  } finally {
    await client.query('rollback');
  }
}

async function keyOf(table: string): Promise<{ where: string; row: string }> {
  const known = await client.query<{ key_columns: string[] }>('select key_columns from chain_table where name = $1', [
    table,
  ]);
  const keys = known.rows[0]?.key_columns ?? [];
  const found = await client.query(`select ${keys.join(', ')} from "${table}" limit 1`);
  const row = found.rows[0] as Record<string, unknown>;
  return {
    where: keys.map((key) => `${key} = '${String(row[key])}'`).join(' and '),
    row: keys.map((key) => String(row[key])).join('/'),
  };
}

test.each(chainedTables)('%s: a changed row is named', async (table) => {
  const { where, row } = await keyOf(table);
  const column = table === 'animal' ? 'created_by' : 'by';
  const report = await after(`update "${table}" set ${column} = 'somebody else' where ${where}`);
  expect(report.breaks).toMatchObject([{ kind: 'row-changed', table, row, branchId }]);
  expect(report.breaks[0]?.by).toBe('tester');
});

test.each(chainedTables)('%s: a deleted row is named with who wrote it and when', async (table) => {
  const { where, row } = await keyOf(table);
  const report = await after(`delete from "${table}" where ${where}`);
  const gone = report.breaks.filter((one) => one.kind === 'row-deleted');
  expect(gone).toMatchObject([{ table, row, branchId, by: 'tester' }]);
  expect(gone[0]?.at).toMatch(/^2026-01-15T/);
});

test.each(chainedTables)('%s: a row put in behind the back of the chain is named', async (table) => {
  const { row } = await keyOf(table);
  // The same row, told to the database as never linked: what the chain sees of an inserted row.
  const report = await after(`delete from chain_link where table_name = '${table}' and row_key = '${row}'`);
  expect(report.breaks.map((one) => one.kind)).toContain('row-without-link');
  expect(report.breaks.find((one) => one.kind === 'row-without-link')).toMatchObject({ table, row });
});

test('a guard that was taken off a table is named', async () => {
  const report = await after('alter table placement_event disable trigger placement_event_kept');
  expect(report.breaks).toMatchObject([{ kind: 'guard-off', table: 'placement_event' }]);
});

test('a tail that was cut off with its rows is noticed only by the end that was kept elsewhere', async () => {
  const head = (await verifyChain(client)).heads[0]!;
  const last = await client.query<{ table_name: string; row_key: string }>(
    'select table_name, row_key from chain_link where number = $1',
    [head.number],
  );
  const { table_name: table, row_key: key } = last.rows[0]!;
  const named = await client.query<{ key_columns: string[] }>('select key_columns from chain_table where name = $1', [
    table,
  ]);
  const cut = [
    `delete from chain_link where number = ${head.number}`,
    `delete from "${table}" where ${named.rows[0]?.key_columns[0]}::text = '${key.split('/')[0]}'`,
  ];
  expect((await after(...cut)).breaks).toEqual([]);
  const seen = await withHead(head, cut);
  expect(seen.breaks).toMatchObject([{ kind: 'cut-off', number: head.number }]);
});

async function withHead(head: ChainReport['heads'][number], steps: readonly string[]): Promise<ChainReport> {
  await client.query('begin');
  try {
    await client.query("set local session_replication_role to 'replica'");
    for (const step of steps) await client.query(step);
    const inside = {
      query: async (text: string, values?: unknown[]) =>
        text.startsWith('begin') || text === 'rollback' ? undefined : await client.query(text, values),
    };
    return await verifyChain(inside as unknown as pg.ClientBase, [head]);
  } finally {
    await client.query('rollback');
  }
}

test('a chain made anew from changed rows is not the one that was written down', async () => {
  const head = (await verifyChain(client)).heads[0]!;
  const { where } = await keyOf('animal_fact');
  const redone = [
    `update animal_fact set value = 'another' where ${where}`,
    'delete from chain_link',
    'select chain_backfill()',
  ];
  expect((await after(...redone)).breaks).toEqual([]);
  expect((await withHead(head, redone)).breaks[0]?.kind).toBe('not-this-chain');
});

test('links that changed places, or one of which was altered, are named', async () => {
  const swapped = await after(
    'update chain_link set number = 1000000 where number = 2',
    'update chain_link set number = 2 where number = 3',
    'update chain_link set number = 3 where number = 1000000',
  );
  expect(swapped.breaks[0]).toMatchObject({ kind: 'link-changed', number: 2 });
  const altered = await after("update chain_link set by = 'somebody else' where number = 4");
  expect(altered.breaks[0]).toMatchObject({ kind: 'link-changed', number: 4 });
  const missing = await after('delete from chain_link where number = 2');
  expect(missing.breaks[0]).toMatchObject({ kind: 'link-missing', number: 2 });
});

test('rows that changed places in the register are named: their order is part of what is hashed', async () => {
  const two = await client.query<{ id: string; seq: string }>('select id, seq from animal_fact order by seq limit 2');
  const [a, b] = two.rows as [{ id: string; seq: string }, { id: string; seq: string }];
  // An identity column can be set only by taking the row out and putting it in again.
  const swap = (id: string, seq: string) => [
    `create temp table held on commit drop as select * from animal_fact where id = '${id}'`,
    `delete from animal_fact where id = '${id}'`,
    `update held set seq = ${seq}`,
    'insert into animal_fact overriding system value select * from held',
    'drop table held',
  ];
  const report = await after(...swap(a.id, b.seq), ...swap(b.id, a.seq));
  expect(report.breaks.map((one) => [one.kind, one.row]).sort()).toEqual(
    [
      ['row-changed', a.id],
      ['row-changed', b.id],
    ].sort(),
  );
});

test('bytes of a file that are not those of its hash are named', async () => {
  const report = await after("update reading_file set bytes = 'other'::bytea");
  expect(report.breaks).toMatchObject([{ kind: 'file-changed', table: 'reading_file' }]);
});

test('an enquiry that was overwritten beside its versions is named', async () => {
  const report = await after(`update enquiry set document = '{"n": 99}'`);
  expect(report.breaks).toMatchObject([{ kind: 'version-differs', table: 'enquiry', row: enquiryId }]);
});

test('nothing links a row twice, and a table cannot be emptied', async () => {
  await expect(client.query('truncate overlay_withdrawal')).rejects.toThrow('kept as they are');
  const { row } = await keyOf('overlay');
  await client.query('begin');
  await client.query('select chain_add($1, $2, $3, $4, $5, $6, $7)', [branchId, 'overlay', row, 'added', '{}', '', '']);
  await client.query('commit');
  const twice = await verifyChain(client);
  expect(twice.breaks.map((one) => one.kind)).toContain('row-linked-twice');
  // Taken out again, so that the next check finds the records sound.
  await client.query('begin');
  await client.query("set local session_replication_role to 'replica'");
  await client.query('delete from chain_link where number = (select max(number) from chain_link)');
  await client.query('commit');
});

test('what was erased by a named person for a reason is no break, and is listed', async () => {
  await client.query('begin');
  await client.query('alter table enquiry_version disable trigger enquiry_version_kept');
  await client.query("set local warmstead.erased_by to 'owner: asked by the buyer'");
  await client.query(`update enquiry_version set document = '{"n": 0}' where version = 1`);
  await client.query('set constraints all immediate');
  await client.query('alter table enquiry_version enable trigger enquiry_version_kept');
  await client.query('commit');
  const report = await verifyChain(client);
  expect(report.breaks).toEqual([]);
  expect(report.erased).toMatchObject([
    { table: 'enquiry_version', row: `${enquiryId}/1`, by: 'owner: asked by the buyer' },
  ]);
});

test('many at once make one chain without a gap', async () => {
  const before = (await verifyChain(client)).links;
  const writers = Array.from({ length: 20 }, (_, i) => i);
  await Promise.all(
    writers.map((i) =>
      records.db
        .insertInto('instrument')
        .values({
          id: randomUUID(),
          branch_id: branchId,
          name: `one of many ${i}`,
          at: new Date('2026-01-15T10:00:00Z'),
          by: 'tester',
        })
        .execute(),
    ),
  );
  const report = await verifyChain(client);
  expect(report.links).toBe(before + 20);
  expect(report.heads[0]?.number).toBe(before + 20);
});

test('every table that refuses changes is in the chain, or is named with the reason why not', async () => {
  const kept = await sql<{ name: string }>`
    select distinct c.relname as name from pg_trigger t join pg_class c on c.oid = t.tgrelid
    join pg_proc p on p.oid = t.tgfoid where p.proname = 'refuse_change' and not c.relispartition order by 1`.execute(
    records.db,
  );
  const known = [...chainedTables, ...Object.keys(unchainedTables)].sort();
  expect(kept.rows.map((row) => row.name)).toEqual(known);
  const listed = await sql<{ name: string }>`select name from chain_table order by name`.execute(records.db);
  expect(listed.rows.map((row) => row.name)).toEqual([...chainedTables]);
});

test('a row that could not be linked is not written', async () => {
  await client.query('begin');
  await client.query("update chain_table set branch_of = 'select null::uuid' where name = 'instrument'");
  await client.query("insert into instrument values (gen_random_uuid(), $1, 'x', '2026-01-15T10:00:00Z', 'tester')", [
    branchId,
  ]);
  await expect(client.query('commit')).rejects.toThrow('belongs to no branch');
  const at = new Date('2026-01-15T11:00:00Z');
  const row = await updateEnquiry(records.db, {
    id: enquiryId,
    branchId,
    fromVersion: 2,
    document: { n: 3 },
    at,
    by: 'tester',
  });
  expect(row?.version).toBe(3);
});
