// Are the records still what was written? Recomputes every hash of the chain from the rows as they stand, here and not
// in the database, and names what does not fit, first things first.
import { createHash } from 'node:crypto';
import type { ClientBase } from 'pg';
import { type RowTable, rowContents, tablesOfChain, unlinkedRows, wrongFiles } from './chain-rows.ts';
import { chainedTables } from './chain-tables.ts';

export type BreakKind =
  | 'row-changed'
  | 'row-deleted'
  | 'row-without-link'
  | 'row-linked-twice'
  | 'link-changed'
  | 'link-missing'
  | 'cut-off'
  | 'not-this-chain'
  | 'file-changed'
  | 'guard-off'
  | 'version-differs';

export interface ChainBreak {
  readonly kind: BreakKind;
  readonly branchId: string;
  /** Place in the branch's chain; null when there is none. */
  readonly number: number | null;
  readonly table: string;
  readonly row: string;
  /** When and by whom the row says it was written. */
  readonly at: string;
  readonly by: string;
}

/** The end of a branch's chain: written down elsewhere, it shows later that nothing before it was cut off or redone. */
export interface ChainHead {
  readonly branchId: string;
  readonly number: number;
  readonly sha256: string;
}

export interface ChainReport {
  readonly links: number;
  readonly rows: Readonly<Record<string, number>>;
  readonly erased: readonly ChainBreakless[];
  readonly heads: readonly ChainHead[];
  /** At most `mostBreaks`, in order of branch and place in the chain. */
  readonly breaks: readonly ChainBreak[];
}

type ChainBreakless = Omit<ChainBreak, 'kind'>;

interface Link {
  readonly branch_id: string;
  readonly number: string;
  readonly table_name: string;
  readonly row_key: string;
  readonly what: string;
  readonly columns: string[];
  readonly row_sha256: string;
  readonly at: string;
  readonly by: string;
  readonly previous: string;
  readonly sha256: string;
}

const linksAtOnce = 2000;
const mostBreaks = 100;
const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Walks every chain inside one snapshot.
 *  @param known  heads that were written down earlier; each must still be there */
export async function verifyChain(client: ClientBase, known: readonly ChainHead[] = []): Promise<ChainReport> {
  await client.query('begin isolation level repeatable read read only');
  try {
    await client.query("set local timezone to 'UTC'; set local extra_float_digits to 1");
    return await walk(client, known);
  } finally {
    await client.query('rollback');
  }
}

async function walk(client: ClientBase, known: readonly ChainHead[]): Promise<ChainReport> {
  const tables = await tablesOfChain(client);
  const breaks: ChainBreak[] = [];
  const erased: ChainBreakless[] = [];
  const rows: Record<string, number> = {};
  const heads: ChainHead[] = [];
  let links = 0;
  for (const table of chainedTables) {
    const found = tables.get(table);
    if (found === undefined || !found.guarded) breaks.push(ofTable('guard-off', table));
  }
  for (const branchId of await branches(client)) {
    let last = { number: 0, sha256: '' };
    for (;;) {
      const page = await linksAfter(client, branchId, last.number);
      if (page.length === 0) break;
      breaks.push(...brokenLinks(page, last), ...(await brokenRows(client, tables, page)));
      for (const link of page) if (link.what === 'erased') erased.push(placeOf(link));
      for (const link of page) if (link.what === 'added') rows[link.table_name] = (rows[link.table_name] ?? 0) + 1;
      links += page.length;
      const end = page.at(-1)!;
      last = { number: Number(end.number), sha256: end.sha256 };
    }
    heads.push({ branchId, ...last });
  }
  breaks.sort((a, b) => a.branchId.localeCompare(b.branchId) || (a.number ?? 0) - (b.number ?? 0));
  for (const table of tables.values()) {
    breaks.push(...(await unlinkedRows(client, table)).map((row) => ({ kind: 'row-without-link' as const, ...row })));
    breaks.push(...(await wrongFiles(client, table)).map((row) => ({ kind: 'file-changed' as const, ...row })));
  }
  breaks.push(...(await twiceLinked(client)), ...(await differentEnquiries(client)));
  for (const head of known) breaks.push(...(await missingHead(client, head)));
  return { links, rows, erased, heads, breaks: breaks.slice(0, mostBreaks) };
}

async function branches(client: ClientBase): Promise<string[]> {
  const found = await client.query<{ branch_id: string }>('select distinct branch_id from chain_link order by 1');
  return found.rows.map((row) => row.branch_id);
}

async function linksAfter(client: ClientBase, branchId: string, number: number): Promise<Link[]> {
  const found = await client.query<Link>(
    'select * from chain_link where branch_id = $1 and number > $2 order by number limit $3',
    [branchId, number, linksAtOnce],
  );
  return found.rows;
}

const placeOf = (link: Link): ChainBreakless => ({
  branchId: link.branch_id,
  number: Number(link.number),
  table: link.table_name,
  row: link.row_key,
  at: link.at,
  by: link.by,
});

const ofTable = (kind: BreakKind, table: string): ChainBreak => ({
  kind,
  branchId: '',
  number: null,
  table,
  row: '',
  at: '',
  by: '',
});

function brokenLinks(page: readonly Link[], before: { number: number; sha256: string }): ChainBreak[] {
  const found: ChainBreak[] = [];
  let last = before;
  for (const link of page) {
    const number = Number(link.number);
    const own = linkHash(link);
    if (number !== last.number + 1) found.push({ kind: 'link-missing', ...placeOf(link), number: last.number + 1 });
    else if (link.previous !== last.sha256 || link.sha256 !== own)
      found.push({ kind: 'link-changed', ...placeOf(link) });
    last = { number, sha256: link.sha256 };
  }
  return found;
}

const linkHash = (link: Link): string =>
  sha256(
    [
      ...[link.previous, link.branch_id, link.number, link.table_name, link.row_key, link.what],
      ...[link.columns.join(','), link.row_sha256, link.at, link.by],
    ].join('\n'),
  );

/** Rows whose content is not what their link says; a row with a later link is judged by that one. */
async function brokenRows(
  client: ClientBase,
  tables: ReadonlyMap<string, RowTable>,
  page: readonly Link[],
): Promise<ChainBreak[]> {
  const found: ChainBreak[] = [];
  for (const name of new Set(page.map((link) => link.table_name))) {
    const links = page.filter((link) => link.table_name === name);
    const table = tables.get(name);
    const contents = table === undefined ? new Map() : await rowContents(client, table, links);
    for (const link of links) {
      const row = contents.get(link.number);
      if (row?.later === true) continue;
      if (row === undefined) found.push({ kind: 'row-deleted', ...placeOf(link) });
      else if (row.text === null || sha256(row.text) !== link.row_sha256)
        found.push({ kind: 'row-changed', ...placeOf(link) });
    }
  }
  return found;
}

/** A second link is right only where personal data were taken out. */
async function twiceLinked(client: ClientBase): Promise<ChainBreak[]> {
  const found = await client.query<Link>(
    `select l.* from chain_link l join (select table_name, row_key from chain_link where what = 'added'
       group by 1, 2 having count(*) > 1) twice using (table_name, row_key) order by number limit ${mostBreaks}`,
  );
  return found.rows.map((link) => ({ kind: 'row-linked-twice', ...placeOf(link) }));
}

/** An enquiry as it stands must be its newest version. */
async function differentEnquiries(client: ClientBase): Promise<ChainBreak[]> {
  const found = await client.query<ChainBreakless>(
    `select e.branch_id as "branchId", null as number, 'enquiry' as table, e.id::text as row, e.updated_at::text as at,
        e.created_by as by
     from enquiry e left join enquiry_version v on v.enquiry_id = e.id and v.version = e.version
     where v.document is distinct from e.document
        or exists (select 1 from enquiry_version n where n.enquiry_id = e.id and n.version > e.version)
     order by e.updated_at limit ${mostBreaks}`,
  );
  return found.rows.map((row) => ({ kind: 'version-differs', ...row }));
}

async function missingHead(client: ClientBase, head: ChainHead): Promise<ChainBreak[]> {
  const found = await client.query<Link>('select * from chain_link where branch_id = $1 and number = $2', [
    head.branchId,
    head.number,
  ]);
  const link = found.rows[0];
  const place = { branchId: head.branchId, number: head.number, table: '', row: '', at: '', by: '' };
  if (link === undefined) return [{ kind: 'cut-off', ...place }];
  return link.sha256 === head.sha256 ? [] : [{ kind: 'not-this-chain', ...placeOf(link) }];
}
