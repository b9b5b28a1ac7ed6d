// From the bytes of a logger file to cells: encoding, delimiter, a streaming reader with fixed limits, and the hash by
// which the raw file is known again. All understanding is in src/proving/files; nothing here knows what a reading is.
import { createHash } from 'node:crypto';
import Papa from 'papaparse';
import { type Delimiter, delimiterOf } from '../proving/files/delimiter.ts';
import { type EncodingLabel, encodingOf, looksLikeText } from '../proving/files/text-encoding.ts';
import { understandLog } from '../proving/files/understand-log.ts';
import type { LogHints, UnderstoodLog } from '../proving/files/understood.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';

/** A week at five minutes is 100 kB, a year 5 MB; our choice of limits. Reading stops at the first one passed. */
export const logLimits = { bytes: 20_000_000, rows: 200_000, columns: 60, cellChars: 200 } as const;

export interface LoggerFile {
  readonly understood: UnderstoodLog;
  readonly sha256: string;
  readonly bytes: number;
  /** The file as it came, to be kept. */
  readonly raw: Uint8Array;
}

/** Read and understand a file. Memory stays below the limits however long the stream is.
 *  Faults: "LOG_TOO_LARGE", "LOG_TOO_MANY_ROWS", "LOG_NOT_TEXT", and those of understandLog. */
export async function readLoggerFile(
  chunks: AsyncIterable<Uint8Array>,
  hints: LogHints = {},
): Promise<Result<LoggerFile>> {
  const kept: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of chunks) {
    bytes += chunk.length;
    if (bytes > logLimits.bytes) return bad([tooLarge]);
    kept.push(chunk);
  }
  const raw = Buffer.concat(kept);
  const start = raw.subarray(0, 65_536);
  if (!looksLikeText(start)) return bad([notText]);
  const encoding = encodingOf(start);
  const text = textOf(raw, encoding);
  const delimiter = delimiterOf(text.slice(0, 65_536));
  const rows = rowsOf(text, delimiter);
  if (!rows.ok) return rows;
  const understood = understandLog(rows.value, { encoding, delimiter }, hints);
  if (!understood.ok) return understood;
  return good({ understood: understood.value, sha256: createHash('sha256').update(raw).digest('hex'), bytes, raw });
}

function textOf(raw: Uint8Array, encoding: EncodingLabel): string {
  if (encoding === 'utf-16be') {
    const turned = Buffer.from(raw.subarray(0, raw.length - (raw.length % 2))).swap16();
    return new TextDecoder('utf-16le').decode(turned).replace(/^\uFEFF/, '');
  }
  return new TextDecoder(encoding).decode(raw).replace(/^\uFEFF/, '');
}

function rowsOf(text: string, delimiter: Delimiter): Result<string[][]> {
  const rows: string[][] = [];
  let many = false;
  Papa.parse<string[]>(text, {
    delimiter,
    skipEmptyLines: false,
    step: ({ data }, parser) => {
      if (rows.length >= logLimits.rows) {
        many = true;
        parser.abort();
        return;
      }
      rows.push(data.slice(0, logLimits.columns).map((cell) => cell.slice(0, logLimits.cellChars)));
    },
  });
  return many ? bad([tooManyRows]) : good(rows);
}

const tooLarge: Fault = {
  code: 'LOG_TOO_LARGE',
  field: 'file',
  got: `more than ${logLimits.bytes / 1e6} MB`,
  allowed: `at most ${logLimits.bytes / 1e6} MB`,
  say: 'This file is far larger than the readings of any home.',
  fix: 'Export only the days of the proof; a week at five minutes is about 0.1 MB.',
};

const tooManyRows: Fault = {
  code: 'LOG_TOO_MANY_ROWS',
  field: 'file',
  got: `more than ${logLimits.rows} rows`,
  allowed: `at most ${logLimits.rows} rows`,
  say: 'This file holds more readings than a proof can use.',
  fix: 'Export only the days of the proof, one reading every five minutes.',
};

const notText: Fault = {
  code: 'LOG_NOT_TEXT',
  field: 'file',
  got: 'bytes that are no text',
  allowed: 'a text file: CSV, TSV or TXT',
  say: 'This file is not a text file.',
  fix: "Export the readings as CSV from the logger's own program or spreadsheet.",
};
