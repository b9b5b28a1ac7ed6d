// A shelf as a table for a spreadsheet, out and in again without loss. Points and commas: the separator is found, decimal
// commas are read where the separator is a semicolon. Leaves out: files.
import type { Fault } from '../../shared/fault.ts';
import { bad, type Result } from '../../shared/result.ts';
import type { Shelf, ShelfItem, ShelfKind } from './shelf.ts';
import { fieldsOf, shelfColumns, shelfKinds } from './shelf-fields.ts';
import { shelfFault, shelfFrom } from './validate-shelf.ts';

/** One head line, one line an item; columns that do not belong to a kind stay empty. */
export function shelfToCsv(shelf: Shelf): string {
  const lines = shelf.items.map((item) => {
    const row = item as unknown as Readonly<Record<string, unknown>>;
    return shelfColumns.map((column) => cell(row[column])).join(',');
  });
  return `${[shelfColumns.join(','), ...lines].join('\r\n')}\r\n`;
}

function cell(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = String(value);
  return /[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** @param head what a table does not carry: name, currency, invented
 *  Faults: SHELF_CSV for the head line, and those of shelfFrom with line numbers. */
export function shelfFromCsv(text: string, head: Pick<Shelf, 'name' | 'currency' | 'invented'>): Result<Shelf> {
  const lines = tableOf(text);
  const columns = lines[0]?.map((c) => c.trim()) ?? [];
  const missing = ['id', 'kind', 'name', 'price', 'inStock'].filter((c) => !columns.includes(c));
  if (missing.length > 0)
    return bad([
      shelfFault(
        'SHELF_CSV',
        'line 1',
        columns.join(',').slice(0, 60),
        shelfColumns.join(', '),
        `The head line lacks ${missing.join(', ')}.`,
        'Write a shelf out first and keep its head line.',
      ),
    ]);
  const semicolon = separatorOf(text) === ';';
  const items = lines
    .slice(1)
    .filter((row) => row.some((c) => c.trim() !== ''))
    .map((row) => itemOf(columns, row, semicolon));
  const read = shelfFrom({ format: 'warmstead-shelf', version: 1, ...head, items });
  if (read.ok) return read;
  return bad(read.faults.map(atLine));
}

/** "items[3].price" stands in line 5 of the table. */
function atLine(fault: Fault): Fault {
  const index = /^items\[(\d+)\]\.?(.*)$/.exec(fault.field);
  return index ? { ...fault, field: `line ${Number(index[1]) + 2}, ${index[2]}` } : fault;
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
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : value;
}

const flagOf = (value: string): boolean | string =>
  ['yes', 'true', '1'].includes(value.toLowerCase())
    ? true
    : ['no', 'false', '0'].includes(value.toLowerCase())
      ? false
      : value;

/** The separator that the head line holds most of. */
function separatorOf(text: string): ',' | ';' | '\t' {
  const line = text.split(/\r?\n/, 1)[0] ?? '';
  const count = (c: string) => line.split(c).length;
  return count(';') > count(',') ? ';' : count('\t') > count(',') ? '\t' : ',';
}

function tableOf(text: string): string[][] {
  const separator = separatorOf(text);
  const rows: string[][] = [[]];
  let value = '';
  let quoted = false;
  const endCell = () => {
    rows.at(-1)?.push(value);
    value = '';
  };
  const body = text.replace(/^\uFEFF/, '');
  for (let i = 0; i < body.length; i++) {
    const c = body[i]!;
    if (quoted) {
      if (c !== '"') value += c;
      else if (body[i + 1] === '"') {
        value += '"';
        i++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === separator) endCell();
    else if (c === '\n') {
      endCell();
      rows.push([]);
    } else if (c !== '\r') value += c;
  }
  endCell();
  return rows;
}
