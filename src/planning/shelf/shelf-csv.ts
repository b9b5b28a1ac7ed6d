// A shelf as a table for a spreadsheet, out and in again without loss. The first line names the shelf, its currency and
// whether its prices are invented; a table without it takes them from elsewhere. Points and commas: the separator is found,
// decimal commas are read where the separator is none. Leaves out: files.

import { nearestKey } from '../../physics/nearest-key.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, type Result } from '../../shared/result.ts';
import type { Shelf, ShelfItem, ShelfKind } from './shelf.ts';
import { fieldsOf, shelfColumns, shelfKinds } from './shelf-fields.ts';
import { shelfFault, shelfFrom, shelfMaterialFaults } from './validate-shelf.ts';

const mark = 'warmstead-shelf';
const priceWords = { invented: 'invented', charged: 'charged' } as const;

/** A line about the shelf, a head line, one line an item; columns that do not belong to a kind stay empty. */
export function shelfToCsv(shelf: Shelf): string {
  const lines = shelf.items.map((item) => {
    const row = item as unknown as Readonly<Record<string, unknown>>;
    return shelfColumns.map((column) => cell(row[column])).join(',');
  });
  const prices = shelf.invented ? priceWords.invented : priceWords.charged;
  const about = [mark, shelf.version, shelf.name, shelf.currency, prices].map(cell).join(',');
  return `${[about, shelfColumns.join(','), ...lines].join('\r\n')}\r\n`;
}

function cell(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = String(value);
  return /[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

type Head = Pick<Shelf, 'name' | 'currency' | 'invented'>;

/** @param head for a table whose first line does not say it   @param materials to hold materials against, when given
 *  Faults: SHELF_CSV for the head line, and those of shelfFrom and of materials with line numbers, all at once. */
export function shelfFromCsv(text: string, head: Head, materials?: Readonly<Record<string, unknown>>): Result<Shelf> {
  const { rows: table, openFrom } = tableOf(text);
  const about = table[0]?.[0]?.trim() === mark ? table[0] : null;
  const lines = about ? table.slice(1) : table;
  const first = about ? 2 : 1;
  const columns = lines[0]?.map((c) => c.trim()) ?? [];
  const torn = [...(openFrom === null ? [] : [openQuote(openFrom)]), ...headFaults(columns, first)];
  if (torn.length > 0) return bad(torn);
  const semicolon = separatorOf(text) !== ',';
  const rows = lines
    .slice(1)
    .flatMap((row, i) => (row.some((c) => c.trim() !== '') ? [{ row, line: first + 1 + i }] : []));
  const items = rows.map(({ row }) => itemOf(columns, row, semicolon));
  const raw = {
    format: mark,
    version: about ? numberOf((about[1] ?? '').trim(), semicolon) : 1,
    ...(about ? headOf(about) : head),
    items,
  };
  const read = shelfFrom(raw);
  const strange = materials ? shelfMaterialFaults(raw as unknown as Shelf, materials) : [];
  const long = rows.flatMap(({ row, line }) =>
    row.slice(columns.length).some((c) => c.trim() !== '') ? [tooLong(row, columns, line)] : [],
  );
  const faults = [...long, ...(read.ok ? [] : read.faults), ...strange];
  if (read.ok && faults.length === 0) return read;
  return bad(faults.map((fault) => atLine(fault, rows)));
}

const openQuote = (line: number): Fault =>
  shelfFault(
    'SHELF_CSV',
    `line ${line}`,
    '"',
    'a quotation mark at the beginning and one at the end',
    `Line ${line}: a cell begins with a quotation mark that is never closed.`,
    'Close it, or write it twice where it belongs to the text.',
  );

const tooLong = (row: readonly string[], columns: readonly string[], line: number): Fault =>
  shelfFault(
    'SHELF_CSV',
    `line ${line}`,
    row.slice(columns.length).join(' | '),
    `${columns.length} cells, as in the head line`,
    `Line ${line} has ${row.length} cells, the head line ${columns.length}.`,
    'Put quotation marks round a text or a number that holds the separator.',
  );

/** Columns that are lacking, not known or there twice. */
function headFaults(columns: readonly string[], line: number): Fault[] {
  const at = (column: string, say: string, fix: string, code = 'SHELF_CSV') =>
    shelfFault(code, `line ${line}`, column, shelfColumns.join(', '), say, fix);
  const named = columns.filter((c) => c !== '');
  const missing = ['id', 'kind', 'name', 'price', 'inStock'].filter((c) => !named.includes(c));
  const twice = [...new Set(named.filter((c, i) => named.indexOf(c) !== i))];
  const strange = named.filter((c) => !shelfColumns.includes(c));
  return [
    ...(missing.length > 0
      ? [
          at(
            columns.join(',').slice(0, 60),
            `The head line lacks ${missing.join(', ')}.`,
            'Write a shelf out first and keep its head line.',
          ),
        ]
      : []),
    ...twice.map((c) => at(c, `The head line has the column "${c}" twice.`, 'Take one of them out.')),
    ...(missing.length > 0 ? [] : strange).map((c) => {
      const near = nearestKey(c, shelfColumns);
      return at(
        c,
        `No column is called "${c}".`,
        near === null ? 'Take it out.' : `Did you mean "${near}"?`,
        'SHELF_UNKNOWN_KEY',
      );
    }),
  ];
}

/** What the line about the shelf says; a word for the prices that is not known stays, for the check to tell. */
function headOf(about: readonly string[]): Record<keyof Head, unknown> {
  const [, , name, currency, prices] = about.map((c) => c.trim());
  const invented = prices === priceWords.invented ? true : prices === priceWords.charged ? false : prices;
  return { name, currency, invented };
}

/** "items[3].price" as the line of the table in which it stands. */
function atLine(fault: Fault, rows: readonly { readonly line: number }[]): Fault {
  const index = /^items\[(\d+)\]\.?(.*)$/.exec(fault.field);
  if (!index) return fault;
  const at = `line ${rows[Number(index[1])]?.line}`;
  return { ...fault, field: `${at}, ${index[2]}`, say: fault.say.replace(/items\[\d+\]\.?/, `${at} `) };
}

function itemOf(columns: readonly string[], row: readonly string[], decimalComma: boolean): Partial<ShelfItem> {
  const raw = Object.fromEntries(columns.map((column, i) => [column, (row[i] ?? '').trim()]));
  const kind = shelfKinds.find((k): k is ShelfKind => k === raw.kind);
  if (!kind) return raw as Partial<ShelfItem>;
  const own = new Map(fieldsOf(kind).map((field) => [field.key, field]));
  const entries = Object.entries(raw).flatMap(([key, value]): [string, unknown][] => {
    const field = own.get(key);
    if (!field) return value === '' ? [] : [[key, value]];
    if (value === '' && field.nullable) return [[key, null]];
    if (field.type === 'number') return [[key, numberOf(value, decimalComma)]];
    if (field.type === 'flag') return [[key, flagOf(value)]];
    return [[key, value]];
  });
  return Object.fromEntries(entries) as Partial<ShelfItem>;
}

function numberOf(value: string, decimalComma: boolean): number | string {
  const plain = decimalComma ? value.replace(',', '.') : value;
  return /^-?\d+(\.\d+)?(e-?\d+)?$/i.test(plain) ? Number(plain) : value;
}

const flagOf = (value: string): boolean | string =>
  ['yes', 'true', '1'].includes(value.toLowerCase())
    ? true
    : ['no', 'false', '0'].includes(value.toLowerCase())
      ? false
      : value;

/** The separator that the first line holds most of, outside of quotation marks. */
function separatorOf(text: string): ',' | ';' | '\t' {
  const line = text.replace(/"(?:[^"]|"")*"/g, '').split(/\r\n?|\n/, 1)[0] ?? '';
  const count = (c: string) => line.split(c).length;
  return count(';') > count(',') ? ';' : count('\t') > count(',') ? '\t' : ',';
}

/** @returns openFrom the line on which a cell begins with a quotation mark that is never closed */
function tableOf(text: string): { readonly rows: string[][]; readonly openFrom: number | null } {
  const separator = separatorOf(text);
  const rows: string[][] = [[]];
  let value = '';
  let quoted = false;
  const endCell = () => {
    rows.at(-1)?.push(value);
    value = '';
  };
  let openFrom = 0;
  const body = text.replace(/^\uFEFF/, '');
  for (let i = 0; i < body.length; i++) {
    const c = body[i]!;
    if (quoted) {
      if (c !== '"') value += c;
      else if (body[i + 1] === '"') {
        value += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && value === '') {
      quoted = true;
      openFrom = rows.length;
    } else if (c === separator) endCell();
    else if (c === '\n' || (c === '\r' && body[i + 1] !== '\n')) {
      endCell();
      rows.push([]);
    } else if (c !== '\r') value += c;
  }
  endCell();
  return { rows, openFrom: quoted ? openFrom : null };
}
