// A backup file is gzip over plain text that PostgreSQL itself reads: for each table a "copy … from stdin" with its rows
// and a line that says how many and their hash; a head and an end as comments. Written and read as a stream.
import type { Readable } from 'node:stream';

export interface BackupHead {
  readonly format: 'warmstead-backup';
  readonly version: 1;
  readonly program: string;
  readonly madeAt: string;
  /** Version of the database it was taken from. */
  readonly engine: string;
  /** The steps that the tables were made by. */
  readonly steps: readonly { readonly name: string; readonly sha256: string }[];
  /** Months that live readings lie in, as "2026-01". */
  readonly months: readonly string[];
  readonly sequences: readonly { readonly name: string; readonly last: string }[];
}

export interface TableEnd {
  readonly table: string;
  readonly rows: number;
  readonly sha256: string;
}

export interface BackupEnd {
  readonly end: true;
  readonly tables: number;
  readonly rows: number;
}

export type BackupPart =
  | { readonly kind: 'head'; readonly head: BackupHead }
  | { readonly kind: 'table'; readonly name: string; readonly columns: readonly string[] }
  | { readonly kind: 'rows'; readonly bytes: Buffer }
  | { readonly kind: 'table-end'; readonly end: TableEnd }
  | { readonly kind: 'end'; readonly end: BackupEnd };

export const commentLine = (value: object): string => `-- ${JSON.stringify(value)}\n`;
export const endOfRows = '\\.\n';

/** The file is not one of ours, or not whole. The message says where. */
export class NotABackup extends Error {}

const rowsEnd = Buffer.from('\n\\.\n');
const longestLineBytes = 1_000_000;

/** Takes an unpacked backup apart; rows come in pieces as they are in the file. */
export async function* backupParts(source: Readable): AsyncIterable<BackupPart> {
  let held: Buffer = Buffer.alloc(0);
  let inRows = false;
  let atStart = false;
  for await (const chunk of source) {
    held = held.length === 0 ? (chunk as Buffer) : Buffer.concat([held, chunk as Buffer]);
    for (;;) {
      if (inRows) {
        if (atStart && held.length < rowsEnd.length) break;
        if (atStart && held.subarray(0, rowsEnd.length - 1).equals(rowsEnd.subarray(1))) {
          held = held.subarray(rowsEnd.length - 1);
          inRows = false;
          continue;
        }
        const at = held.indexOf(rowsEnd);
        const bytes = held.subarray(0, at >= 0 ? at + 1 : held.length - rowsEnd.length + 1);
        if (bytes.length > 0) yield { kind: 'rows', bytes };
        held = held.subarray(at >= 0 ? at + rowsEnd.length : bytes.length);
        atStart &&= bytes.length === 0;
        if (at < 0) break;
        inRows = false;
        continue;
      }
      const lineEnd = held.indexOf(10);
      if (lineEnd < 0) {
        if (held.length > longestLineBytes) throw new NotABackup('a line without end');
        break;
      }
      const line = held.subarray(0, lineEnd).toString('utf8');
      held = held.subarray(lineEnd + 1);
      if (line === '') continue;
      const part = partOfLine(line);
      if (part.kind === 'table') {
        inRows = true;
        atStart = true;
      }
      yield part;
    }
  }
  if (inRows || held.length > 0) throw new NotABackup('it ends in the middle');
}

function partOfLine(line: string): BackupPart {
  const copy = /^copy "([a-z_]+)" \((.+)\) from stdin;$/.exec(line);
  if (copy !== null) {
    const columns = (copy[2] ?? '').split(', ').map((name) => name.slice(1, -1));
    return { kind: 'table', name: copy[1] ?? '', columns };
  }
  const body = line.startsWith('-- {') ? jsonOf(line.slice(3)) : null;
  if (body?.format === 'warmstead-backup') return { kind: 'head', head: body as unknown as BackupHead };
  if (typeof body?.table === 'string') return { kind: 'table-end', end: body as unknown as TableEnd };
  if (body?.end === true) return { kind: 'end', end: body as unknown as BackupEnd };
  throw new NotABackup(`a line that is not known: ${line.slice(0, 40)}`);
}

function jsonOf(text: string): Record<string, unknown> | null {
  try {
    return JSON.parse(text) as Record<string, unknown>;
  } catch {
    return null;
  }
}
