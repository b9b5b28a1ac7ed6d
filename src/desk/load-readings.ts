// Readings of live sources from files, as many as there are: which rows are wrong, and how many were new? All or nothing,
// unless the wrong ones are to be left out. Leaves out opening files (cli/load-command.ts) and writing (records/bulk-readings.ts).
import type pg from 'pg';
import type { Quantity } from '../proving/reading-log.ts';
import { type BulkReading, takeBulkReadings } from '../records/bulk-readings.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { quantityLimits } from './live-feed.ts';

export interface ReadingsFile {
  readonly name: string;
  readonly chunks: AsyncIterable<Uint8Array>;
}

export interface Loaded {
  readonly files: number;
  readonly rows: number;
  readonly written: number;
  /** Already there at that moment; the row that is kept stays. */
  readonly known: number;
  readonly leftOut: number;
  /** The first wrong rows, when they were left out. */
  readonly faults: readonly Fault[];
}

export const loadHeading = 'source,time,value';
/** So many wrong rows are named; the rest is counted. */
const mostNamed = 100;
const longestRow = 200;
const oldestMs = Date.UTC(2000, 0, 1);
const aheadMs = 120_000;
const timeForm = /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d(\.\d{1,6})?)?(Z|[+-]\d\d:\d\d)$/;
const numberForm = /^[+-]?\d{1,12}(\.\d{1,12})?$/;

/** Faults: "BULK_HEADING", "BULK_ROW", "BULK_SOURCE", "BULK_TIME", "BULK_VALUE", each with file and line. */
export async function loadReadings(
  pool: pg.Pool,
  files: AsyncIterable<ReadingsFile>,
  now: Date,
  leaveOutWrong = false,
): Promise<Result<Loaded>> {
  const sources = await knownSources(pool);
  const faults: Fault[] = [];
  let count = 0;
  let rows = 0;
  let wrong = 0;
  const tell = (fault: Fault): void => {
    wrong++;
    if (faults.length < mostNamed) faults.push(fault);
  };
  async function* readings(): AsyncIterable<BulkReading> {
    for await (const file of files) {
      count++;
      let line = 0;
      for await (const text of linesOf(file.chunks)) {
        line++;
        if (line === 1 && text !== loadHeading) {
          tell(bulkFault('BULK_HEADING', `${file.name}:1`, text));
          break;
        }
        if (line === 1 || text === '') continue;
        rows++;
        const read = rowFrom(text, sources, now.getTime());
        if ('code' in read) tell(bulkFault(read.code, `${file.name}:${line}`, read.got));
        else yield read;
      }
      if (line === 0) tell(bulkFault('BULK_HEADING', `${file.name}:1`, 'an empty file'));
    }
  }
  const taken = await takeBulkReadings(pool, readings(), now, () => wrong === 0 || leaveOutWrong);
  if (!taken.kept) return bad(wrong > faults.length ? [...faults, moreFaults(wrong - faults.length)] : faults);
  const { read, written } = taken;
  return good({ files: count, rows, written, known: read - written, leftOut: wrong, faults });
}

async function knownSources(pool: pg.Pool): Promise<ReadonlyMap<string, readonly [number, number]>> {
  const found = await pool.query<{ id: string; quantity: Quantity }>('select id, quantity from live_source');
  return new Map(found.rows.map(({ id, quantity }) => [id, quantityLimits[quantity]]));
}

type BulkCode = 'BULK_HEADING' | 'BULK_ROW' | 'BULK_SOURCE' | 'BULK_TIME' | 'BULK_VALUE';

function rowFrom(
  text: string,
  sources: ReadonlyMap<string, readonly [number, number]>,
  nowMs: number,
): BulkReading | { readonly code: BulkCode; readonly got: string } {
  const [sourceId = '', time = '', said = '', ...more] = text.split(',');
  if (said === '' || more.length > 0) return { code: 'BULK_ROW', got: text };
  const limits = sources.get(sourceId);
  if (limits === undefined) return { code: 'BULK_SOURCE', got: sourceId };
  const ms = timeForm.test(time) ? Date.parse(time) : Number.NaN;
  if (!(ms >= oldestMs && ms <= nowMs + aheadMs)) return { code: 'BULK_TIME', got: time };
  const value = numberForm.test(said) ? Number(said) : Number.NaN;
  if (!(value >= limits[0] && value <= limits[1])) return { code: 'BULK_VALUE', got: said };
  return { sourceId, measuredAt: new Date(ms), value };
}

/** Lines without their ends; one that is longer than any row is cut, and told as wrong by whoever reads it. */
async function* linesOf(chunks: AsyncIterable<Uint8Array>): AsyncIterable<string> {
  const decoder = new TextDecoder();
  let rest = '';
  for await (const chunk of chunks) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = (lines.pop() ?? '').slice(0, longestRow);
    for (const line of lines) yield plain(line);
  }
  rest += decoder.decode();
  if (rest !== '') yield plain(rest);
}

const plain = (line: string): string => {
  const cut = line.slice(0, longestRow);
  return cut.endsWith('\r') ? cut.slice(0, -1) : cut;
};

const words: Readonly<Record<BulkCode, { readonly allowed: string; readonly say: string; readonly fix: string }>> = {
  BULK_HEADING: {
    allowed: loadHeading,
    say: 'The first line of the file is not the heading of readings.',
    fix: 'Begin the file with the line "source,time,value".',
  },
  BULK_ROW: {
    allowed: 'three cells with commas between',
    say: 'This row has not three cells.',
    fix: 'Write source, time and value, with a point in the number and nothing behind it.',
  },
  BULK_SOURCE: {
    allowed: 'the id of a live source',
    say: 'There is no live source of this id.',
    fix: 'Take the id from the home’s live sources (GET /api/enquiries/ID/live-sources).',
  },
  BULK_TIME: {
    allowed: 'a time with its zone, from 2000 to now, e.g. 2026-01-15T09:00:00Z',
    say: 'This is no time that a reading can have.',
    fix: 'Write date, time and zone, and look at the clock of the logger.',
  },
  BULK_VALUE: {
    allowed: '°C from -30 to 110, % from 0 to 100.5, W from 0 to 5000',
    say: 'A sensor of this kind cannot read that.',
    fix: 'Look at unit and sensor; leave out what the logger wrote while it was not connected.',
  },
};

const bulkFault = (code: BulkCode, field: string, got: string): Fault => ({
  code,
  field,
  got: got.slice(0, 60),
  ...words[code],
});

const moreFaults = (count: number): Fault => ({
  code: 'BULK_ROW',
  field: '',
  got: `${count} more wrong rows`,
  allowed: 'none',
  say: 'There are further wrong rows.',
  fix: 'Mend those that are named first, then load again.',
});
