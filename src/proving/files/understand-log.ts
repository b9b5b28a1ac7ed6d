// From the cells of a logger file to a log: the door of this folder. Nothing is dropped silently: every row that gives
// no reading is counted with its reason, every doubt becomes a question. Leaves out cutting the text into cells.

import { coded, type Saying, told } from '../../husbandry/coded.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { type LogPlace, type ReadingLog, usualIntervalS } from '../reading-log.ts';
import { draftsOf } from './channels.ts';
import { dateOrderOf } from './date-order.ts';
import type { Delimiter } from './delimiter.ts';
import { logFindings } from './findings.ts';
import { placeOf, subjectOf } from './headings.ts';
import { hasTime, type Layout, layoutOf, type Rows } from './layout.ts';
import { numberFrom } from './numbers.ts';
import { orderTimes, type TimedRow } from './order-times.ts';
import { type DateOrder, stampFrom, wallFromNumber, zoneInHeading } from './stamp.ts';
import type { EncodingLabel } from './text-encoding.ts';
import type { DraftChannel, LogFinding, LogHints, LogQuestion, RejectedRow, UnderstoodLog } from './understood.ts';

/** Rejected rows kept word for word; the rest are counted. */
const shownRejects = 50;

/** Understand rows of cells.
 *  Faults: "LOG_EMPTY", "LOG_NO_TIMES", "LOG_NO_NUMBERS", "LOG_ONE_ROW". */
export function understandLog(
  rows: Rows,
  from: { readonly encoding: EncodingLabel; readonly delimiter: Delimiter },
  hints: LogHints = {},
): Result<UnderstoodLog> {
  if (rows.every((r) => r.every((c) => c.trim() === ''))) return bad([logFaults.empty]);
  const layout = layoutOf(rows);
  if (layout === null) return bad([logFaults.noTimes]);
  if (layout.valueColumns.length === 0) return bad([logFaults.noNumbers]);
  const headings = layout.headingRow === null ? [] : rows[layout.headingRow]!;
  const order = orderOf(rows, layout, hints);
  const zone = zoneOf(rows, layout, headings, hints);
  const sorted = sortRows(rows, layout, order.order, zone.shiftMin);
  if (sorted.timed.length < 2) return bad([logFaults.oneRow]);
  const ordered = orderTimes(sorted.timed);
  const rejected = [...sorted.rejected, ...ordered.rejected.map((r) => rejectedRow(rows, r.row, 'clock-reset'))];
  const { timesS, drafts } = draftsOf(rows, layout, headings, ordered.rows, hints.tempUnit);
  const channels = drafts.map((d) => finished(d, hints));
  const log: ReadingLog = { kind: 'logger', timesS, channels };
  const odd = [
    ...ordered.findings,
    ...missingRows(rows, layout, ordered.rows),
    ...summaries(rejected),
    ...logFindings(log, drafts),
  ];
  const byReason: Partial<Record<RejectedRow['reason'], number>> = {};
  for (const r of rejected) byReason[r.reason] = (byReason[r.reason] ?? 0) + 1;
  return good({
    log,
    ...from,
    decimal: layout.decimal,
    dateOrder: layout.numericTime === null ? order.order : 'numbers',
    clock: zone.clock,
    headingRow: layout.headingRow === null ? null : layout.headingRow + 1,
    preambleRows: layout.headingRow ?? layout.firstRow,
    columns: columnsOf(layout, headings, drafts),
    rowsInFile: rows.length,
    rowsRead: ordered.rows.length,
    rejected: rejected.filter((r) => r.reason !== 'empty').slice(0, shownRejects),
    rejectedByReason: byReason,
    intervalS: usualIntervalS(timesS),
    findings: odd,
    questions: [...order.questions, ...zone.questions, ...questionsOf(drafts, log, odd, hints)],
  });
}

function finished(d: DraftChannel, hints: LogHints): ReadingLog['channels'][number] {
  const place: LogPlace | null =
    hints.places?.[d.id] ?? hints.places?.[d.label] ?? (d.quantity === 'powerW' ? 'basking-surface' : placeOf(d.label));
  const instrumentId = hints.instruments?.[d.id] ?? hints.instruments?.[d.label] ?? null;
  return { id: d.id, label: d.label, quantity: d.quantity, place, instrumentId, values: d.values };
}

function orderOf(rows: Rows, layout: Layout, hints: LogHints): { order: DateOrder; questions: LogQuestion[] } {
  if (layout.numericTime !== null) return { order: 'ymd', questions: [] };
  if (hints.dateOrder !== undefined) return { order: hints.dateOrder, questions: [] };
  const cells = rows.slice(layout.firstRow).flatMap((r) => (hasTime(r, layout) ? [stampCell(r, layout)] : []));
  const found = dateOrderOf(cells, hints.latestS ?? null);
  if (found.certain) return { order: found.order, questions: [] };
  const say = `The date ${cells[0]} can be read in more than one order. Which is meant?`;
  return {
    order: found.order,
    questions: [
      { id: 'date-order', channelId: null, say, choices: [found.order, ...found.also], assumed: found.order },
    ],
  };
}

const stampCell = (r: readonly string[], layout: Layout): string =>
  layout.clockColumn === null
    ? r[layout.timeColumn]!
    : `${r[layout.timeColumn]!.trim()} ${r[layout.clockColumn]!.trim()}`;

interface Zone {
  readonly shiftMin: number;
  readonly clock: UnderstoodLog['clock'];
  readonly questions: readonly LogQuestion[];
}

const say = coded('logFile', {
  ownClock: "the file's own clock",
  fileClock: (zone: string) => `${zone} in the file`,
  shownAs: (zone: string, home: string) => `${zone} in the file, shown as ${home}`,
  summaries: (count: string) =>
    `${count} rows are summaries (highest, lowest, mean), not readings; they were set aside.`,
  missing: (count: string) => `The file's own counter skips: ${count} rows are missing.`,
});

const spoken = (words: Saying) => ({ say: words.en, told: told(words) });

/** How the file's clock stands to the home's: its own wall clock, or UTC to be moved by the home's offset. */
function zoneOf(rows: Rows, layout: Layout, headings: readonly string[], hints: LogHints): Zone {
  const heading = zoneInHeading(headings[layout.timeColumn] ?? '');
  const first = rows.slice(layout.firstRow).find((r) => hasTime(r, layout))!;
  const stamp =
    layout.numericTime === null
      ? (stampFrom(stampCell(first, layout), 'dmy') ?? stampFrom(stampCell(first, layout), 'mdy'))
      : null;
  const counted = layout.numericTime === 'seconds' || layout.numericTime === 'milliseconds';
  const utc = counted || stamp?.offsetMin === 0 || heading === 0;
  const fixed = stamp?.offsetMin ?? heading;
  if (!utc && fixed === null) {
    return { shiftMin: 0, clock: { kind: 'wall', offsetMin: null, ...spoken(say.ownClock) }, questions: [] };
  }
  const own = utc ? 0 : fixed!;
  const home = hints.homeOffsetMin;
  const shiftMin = (home ?? own) - own;
  const inFile = utc ? 'UTC' : `UTC${sign(own)}`;
  const words = home === undefined ? say.fileClock(inFile) : say.shownAs(inFile, `UTC${sign(home)}`);
  const ask = utc && home === undefined;
  const question: LogQuestion = {
    id: 'zone',
    channelId: null,
    say: 'This file keeps universal time. How many hours ahead of it is the clock at the home?',
    choices: ['-8', '-5', '0', '+1', '+2', '+10'],
    assumed: '0',
  };
  return {
    shiftMin,
    clock: { kind: utc ? 'utc' : 'wall', offsetMin: own, ...spoken(words) },
    questions: ask ? [question] : [],
  };
}

const sign = (min: number): string =>
  `${min < 0 ? '-' : '+'}${String(Math.floor(Math.abs(min) / 60)).padStart(2, '0')}:${String(Math.abs(min) % 60).padStart(2, '0')}`;

function sortRows(
  rows: Rows,
  layout: Layout,
  order: DateOrder,
  shiftMin: number,
): { timed: TimedRow[]; rejected: RejectedRow[] } {
  const timed: TimedRow[] = [];
  const rejected: RejectedRow[] = [];
  for (let i = layout.firstRow; i < rows.length; i++) {
    const r = rows[i]!;
    if (r.every((c) => c.trim() === '')) rejected.push(rejectedRow(rows, i, 'empty'));
    else if (!hasTime(r, layout)) rejected.push(rejectedRow(rows, i, isSummary(r) ? 'summary' : 'no-time'));
    else {
      const wallS = timeOf(r, layout, order);
      if (wallS === null) rejected.push(rejectedRow(rows, i, 'no-time'));
      else if (layout.valueColumns.every((c) => (r[c] ?? '').trim() === ''))
        rejected.push(rejectedRow(rows, i, 'no-number'));
      else timed.push({ row: i, wallS: wallS + shiftMin * 60 });
    }
  }
  return { timed, rejected };
}

function timeOf(r: readonly string[], layout: Layout, order: DateOrder): number | null {
  if (layout.numericTime !== null) {
    const v = numberFrom(r[layout.timeColumn]!, '.') ?? numberFrom(r[layout.timeColumn]!, ',');
    return v === null ? null : wallFromNumber(v, layout.numericTime);
  }
  return stampFrom(stampCell(r, layout), order)?.wallS ?? null;
}

const isSummary = (r: readonly string[]): boolean =>
  /^(?:max|min|avg|average|mean|mittel|durchschnitt|summe|total|count|std)/i.test(
    (r.find((c) => c.trim() !== '') ?? '').trim(),
  );

function rejectedRow(rows: Rows, row: number, reason: RejectedRow['reason']): RejectedRow {
  return { row: row + 1, reason, text: rows[row]!.join(' | ').slice(0, 120) };
}

function summaries(rejected: readonly RejectedRow[]): LogFinding[] {
  const count = rejected.filter((r) => r.reason === 'summary').length;
  if (count === 0) return [];
  return [
    {
      id: 'summary-rows',
      ...spoken(say.summaries(String(count))),
      channelId: null,
      fromS: null,
      toS: null,
      count,
    },
  ];
}

/** A counter that skips says how many rows are missing. */
function missingRows(rows: Rows, layout: Layout, kept: readonly TimedRow[]): LogFinding[] {
  const column = layout.counterColumn;
  if (column === null) return [];
  const numbers = kept.map((k) => Number(rows[k.row]![column])).filter(Number.isInteger);
  const skipped = numbers.slice(1).reduce((s, n, i) => s + Math.max(0, n - numbers[i]! - 1), 0);
  if (skipped === 0) return [];
  return [
    {
      id: 'missing-rows',
      ...spoken(say.missing(String(skipped))),
      channelId: null,
      fromS: null,
      toS: null,
      count: skipped,
    },
  ];
}

function columnsOf(
  layout: Layout,
  headings: readonly string[],
  drafts: readonly DraftChannel[],
): UnderstoodLog['columns'] {
  const width = Math.max(headings.length, layout.timeColumn + 1, ...layout.valueColumns.map((c) => c + 1));
  return Array.from({ length: width }, (_, c) => {
    const heading = headings[c] ?? '';
    if (c === layout.timeColumn || c === layout.clockColumn) return { heading, subject: 'time', channelId: null };
    const draft = drafts.find((d) => d.id === `c${c + 1}`);
    return { heading, subject: draft?.quantity ?? subjectOf(heading) ?? 'not used', channelId: draft?.id ?? null };
  });
}

function questionsOf(
  drafts: readonly DraftChannel[],
  log: ReadingLog,
  odd: readonly LogFinding[],
  hints: LogHints,
): LogQuestion[] {
  const out: LogQuestion[] = [];
  for (const d of drafts) {
    const doubt = odd.some((f) => f.id === 'looks-fahrenheit' && f.channelId === d.id);
    if (doubt && hints.tempUnit === undefined)
      out.push({
        id: 'unit',
        channelId: d.id,
        say: `Are the temperatures of "${d.label}" in °C or °F?`,
        choices: ['C', 'F'],
        assumed: d.unit === 'F' ? 'F' : 'C',
      });
  }
  for (const c of log.channels)
    if (c.place === null)
      out.push({ id: 'place', channelId: c.id, say: `Where did "${c.label}" lie?`, choices: [], assumed: null });
  if (odd.some((f) => f.id === 'channels-swapped'))
    out.push({
      id: 'swapped',
      channelId: null,
      say: 'The cool end reads warmer than the warm end. Were the two sensors exchanged?',
      choices: ['yes', 'no'],
      assumed: null,
    });
  return out;
}

function logFault(code: string, got: string, allowed: string, say: string, fix: string): Fault {
  return { code, field: '', got, allowed, say, fix };
}

const logFaults = {
  empty: logFault(
    'LOG_EMPTY',
    'no text',
    'at least two readings',
    'The file is empty.',
    'Export the readings again and check the file before sending it.',
  ),
  noTimes: logFault(
    'LOG_NO_TIMES',
    'no column of times',
    'a date and time in each row',
    'No column of this file reads as times beside readings.',
    'Export as CSV with date and time, or type three readings by hand.',
  ),
  noNumbers: logFault(
    'LOG_NO_NUMBERS',
    'times without readings',
    'a column of temperatures or humidities',
    'The rows of this file hold times but no readings.',
    'Choose the export with temperature columns.',
  ),
  oneRow: logFault(
    'LOG_ONE_ROW',
    'fewer than two rows with a time',
    'at least two readings',
    'There are too few readings in this file.',
    'Let the logger run, or type readings by hand.',
  ),
} as const;
