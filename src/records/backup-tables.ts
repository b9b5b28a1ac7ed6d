// Which tables are there, in an order in which they can be filled, and how is one written out the same way everywhere?
import type { ClientBase } from 'pg';

export interface BackupTable {
  readonly name: string;
  readonly columns: readonly string[];
  /** Columns of the primary key: rows are written in their order, so that two copies of the same rows are alike. */
  readonly key: readonly string[];
}

/** The steps of migrate.ts are named in the head of a backup instead; what counts for a minute or a day is nothing to keep. */
const leftOut = ['migration', 'request_count', 'work_end'];

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** How values are written does not hang on the settings of a server or an account. */
export const plainValues =
  "set local timezone to 'UTC'; set local datestyle to 'ISO'; set local intervalstyle to 'postgres'; set local bytea_output to 'hex'; set local extra_float_digits to 1";

/** Tables of the records, each after those that it points at. */
export async function backupTables(client: ClientBase): Promise<BackupTable[]> {
  const found = await client.query<{ name: string; columns: string[]; key: string[]; needs: string[] }>(
    `select c.relname as name,
       array(select a.attname::text from pg_attribute a where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
         and a.attgenerated = '' order by a.attnum) as columns,
       array(select a.attname::text from pg_index i, unnest(i.indkey) with ordinality as k (n, place)
         join pg_attribute a on a.attnum = k.n where i.indrelid = c.oid and i.indisprimary and a.attrelid = c.oid
         order by k.place) as key,
       array(select distinct f.relname::text from pg_constraint r join pg_class f on f.oid = r.confrelid
         where r.conrelid = c.oid and r.contype = 'f' and f.oid <> c.oid and not f.relispartition) as needs
     from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p') and not c.relispartition
     order by c.relname`,
  );
  const waiting = found.rows.filter((table) => !leftOut.includes(table.name));
  const ready: BackupTable[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex((t) => t.needs.every((need) => ready.some((done) => done.name === need)));
    if (next < 0) throw new Error(`tables point at each other in a ring: ${waiting.map((t) => t.name).join(', ')}`);
    const [{ name, columns, key }] = waiting.splice(next, 1) as [(typeof waiting)[number]];
    ready.push({ name, columns, key });
  }
  return ready;
}

/** Writes out the rows; "only": those columns, for a table that has more by now. */
export function copyOut(table: BackupTable): string {
  const order = table.key.length > 0 ? table.key.map(quoted).join(', ') : 't::text';
  return `copy (select ${table.columns.map(quoted).join(', ')} from ${quoted(table.name)} t order by ${order}) to stdout`;
}

export const copyIn = (table: Pick<BackupTable, 'name' | 'columns'>): string =>
  `copy ${quoted(table.name)} (${table.columns.map(quoted).join(', ')}) from stdin`;
