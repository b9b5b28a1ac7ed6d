// The rows that links of the chain speak of, as text to be hashed. Leaves out judging them (verify-chain.ts).
import type { ClientBase } from 'pg';
import { tablesWithFiles } from './chain-tables.ts';

export interface RowTable {
  readonly name: string;
  readonly keys: readonly { readonly name: string; readonly type: string }[];
  /** Whether the database still adds links for new rows and refuses changes. */
  readonly guarded: boolean;
}

export interface RowPlace {
  readonly branchId: string;
  readonly number: null;
  readonly table: string;
  readonly row: string;
  readonly at: string;
  readonly by: string;
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

export async function tablesOfChain(client: ClientBase): Promise<ReadonlyMap<string, RowTable>> {
  const found = await client.query<{ name: string; keys: string[]; types: string[]; guarded: boolean }>(
    `select t.name, t.key_columns as keys,
       array(select format_type(a.atttypid, a.atttypmod) from unnest(t.key_columns) with ordinality as k (name, n)
         join pg_attribute a on a.attrelid = to_regclass(quote_ident(t.name)) and a.attname = k.name order by k.n) as types,
       (select count(*) = 3 from pg_trigger g where g.tgrelid = to_regclass(quote_ident(t.name)) and g.tgenabled in ('O', 'A')
         and g.tgname = any(array[t.name || '_chained', t.name || '_kept', t.name || '_kept_whole'])) as guarded
     from chain_table t order by t.name`,
  );
  return new Map(
    found.rows.map(({ name, keys, types, guarded }) => [
      name,
      { name, guarded, keys: keys.map((key, i) => ({ name: key, type: types[i] ?? 'text' })) },
    ]),
  );
}

interface Asked {
  readonly number: string;
  readonly row_key: string;
  readonly columns: readonly string[];
}

/** The content of each link's row under the link's number: the same text that the database hashed when it was added.
 *  "later": a newer link of the chain speaks of the same row. */
export async function rowContents(
  client: ClientBase,
  table: RowTable,
  links: readonly Asked[],
): Promise<ReadonlyMap<string, { readonly text: string | null; readonly later: boolean }>> {
  const columns = await contentColumns(client, table);
  const parts = links.map((link) => link.row_key.split('/'));
  const keys = table.keys.map((_, i) => parts.map((part) => part[i] ?? ''));
  const on = table.keys.map((key, i) => `r.${quoted(key.name)} = k.key${i}::${key.type}`).join(' and ');
  const found = await client.query<{ number: string; text: string | null; later: boolean }>(
    `select k.number,
       (select jsonb_object_agg(c, x.content -> c) from jsonb_array_elements_text(k.columns::jsonb) c)::text as text,
       exists (select 1 from chain_link l where l.table_name = $1 and l.row_key = k.row_key
         and l.number > k.number::bigint) as later
     from unnest($2::text[], $3::text[], $4::text[]${keys.map((_, i) => `, $${i + 5}::text[]`).join('')})
       as k (number, row_key, columns${keys.map((_, i) => `, key${i}`).join('')})
     join ${quoted(table.name)} r on ${on}
     cross join lateral (select to_jsonb(c) as content from (select ${columns}) c) x`,
    [
      table.name,
      links.map((link) => link.number),
      links.map((link) => link.row_key),
      links.map((link) => JSON.stringify(link.columns)),
      ...keys,
    ],
  );
  return new Map(found.rows.map((row) => [row.number, row]));
}

async function contentColumns(client: ClientBase, table: RowTable): Promise<string> {
  const found = await client.query<{ name: string }>(
    `select attname as name from pg_attribute where attrelid = to_regclass($1) and attnum > 0 and not attisdropped
     order by attnum`,
    [quoted(table.name)],
  );
  const names = found.rows.map((row) => row.name);
  return names
    .filter((name) => !(name === 'bytes' && tablesWithFiles.includes(table.name)))
    .map((name) => `r.${quoted(name)}`)
    .join(', ');
}

/** Rows that came in behind the chain's back. */
export async function unlinkedRows(client: ClientBase, table: RowTable): Promise<RowPlace[]> {
  const key = table.keys.map((k) => `r.${quoted(k.name)}::text`).join(" || '/' || ");
  const found = await client.query<{ row: string; at: string | null; by: string | null }>(
    `select ${key} as row, ${said('recorded_at', 'at', 'created_at')} as at, ${said('by', 'created_by')} as by
     from (select ${await contentColumns(client, table)} from ${quoted(table.name)} r) r
     cross join lateral (select to_jsonb(r) as content) x
     where not exists (select 1 from chain_link l where l.table_name = $1 and l.row_key = ${key}) limit 100`,
    [table.name],
  );
  return found.rows.map((row) => place(table.name, row));
}

const said = (...names: readonly string[]): string =>
  `coalesce(${names.map((name) => `x.content ->> '${name}'`).join(', ')})`;

/** Files whose bytes are not those of the hash that is in the chain. */
export async function wrongFiles(client: ClientBase, table: RowTable): Promise<RowPlace[]> {
  if (!tablesWithFiles.includes(table.name)) return [];
  const found = await client.query<{ row: string; at: string | null; by: string | null }>(
    `select id::text as row, at::text, by from ${quoted(table.name)}
     where encode(sha256(bytes), 'hex') <> sha256 order by at limit 100`,
  );
  return found.rows.map((row) => place(table.name, row));
}

const place = (table: string, row: { row: string; at: string | null; by: string | null }): RowPlace => ({
  branchId: '',
  number: null,
  table,
  row: row.row,
  at: row.at ?? '',
  by: row.by ?? '',
});
