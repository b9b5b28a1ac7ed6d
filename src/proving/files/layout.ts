// Where in a file do the readings stand? The time column or columns, the heading row, the columns of numbers, and
// whether every row names its sensor. Decided from what the cells look like, not from knowing the logger.

import { subjectOf } from './headings.ts';
import { type DecimalSign, decimalSignOf, isNoReading, numberFrom } from './numbers.ts';
import { numberStampKind, stampFrom } from './stamp.ts';

export interface Layout {
  /** Column of the whole stamp or of the date, and of the time of day when it stands apart. */
  readonly timeColumn: number;
  readonly clockColumn: number | null;
  readonly numericTime: 'seconds' | 'milliseconds' | 'sheet-days' | null;
  /** Index of the heading row, null when there is none. */
  readonly headingRow: number | null;
  readonly firstRow: number;
  readonly decimal: DecimalSign;
  /** Columns that hold numbers, times and counters left out. */
  readonly valueColumns: readonly number[];
  /** Set when each row names what it measures: columns of the name, the quantity and the value. */
  readonly long: { readonly sensor: number | null; readonly quantity: number | null; readonly value: number } | null;
  readonly counterColumn: number | null;
}

export type Rows = readonly (readonly string[])[];

/** Layout of rows; null when no column reads as times beside a column of numbers. */
export function layoutOf(rows: Rows): Layout | null {
  const sample = sampled(rows);
  const width = Math.min(60, Math.max(0, ...sample.map((r) => r.length)));
  const timed = findTime(sample, width);
  if (timed === null) return null;
  const isTimed = (r: readonly string[]) => hasTime(r, timed);
  const firstRow = rows.findIndex(isTimed);
  if (firstRow < 0) return null;
  const data = sample.filter(isTimed);
  const decimal = decimalSignOf(data.flatMap((r) => [...r]));
  const headingRow = headingAbove(rows, firstRow, decimal);
  const headings = headingRow === null ? [] : rows[headingRow]!;
  const free = Array.from({ length: width }, (_, c) => c).filter(
    (c) => c !== timed.timeColumn && c !== timed.clockColumn,
  );
  const share = (c: number, test: (cell: string) => boolean) =>
    data.filter((r) => test(r[c] ?? '')).length / Math.max(1, data.length);
  const numeric = free.filter(
    (c) =>
      share(c, (v) => numberFrom(v, decimal) !== null) > 0 &&
      share(c, (v) => v.trim() === '' || isNoReading(v) || numberFrom(v, decimal) !== null) > 0.8,
  );
  const counterColumn = numeric.find((c) => isCounter(data, c, headings[c] ?? '')) ?? null;
  const valueColumns = numeric.filter(
    (c) => c !== counterColumn && share(c, (v) => numberFrom(v, decimal) !== null) > 0.02,
  );
  return {
    ...timed,
    headingRow,
    firstRow,
    decimal,
    valueColumns,
    long: longForm(data, free, valueColumns, headings, decimal),
    counterColumn,
  };
}

/** At most 600 rows: the start, and then every so many. */
function sampled(rows: Rows): Rows {
  if (rows.length <= 600) return rows;
  const step = Math.floor((rows.length - 200) / 400);
  return [...rows.slice(0, 200), ...rows.slice(200).filter((_, i) => i % step === 0)];
}

type TimeColumns = Pick<Layout, 'timeColumn' | 'clockColumn' | 'numericTime'>;

const looks = (cell: string) => stampFrom(cell, 'dmy') ?? stampFrom(cell, 'mdy') ?? stampFrom(cell, 'ymd');

function findTime(sample: Rows, width: number): TimeColumns | null {
  let best: TimeColumns | null = null;
  let most = 1;
  for (let c = 0; c < width; c++) {
    const kinds = sample.map((r) => looks(r[c] ?? '')?.has ?? null);
    const both = kinds.filter((k) => k === 'both').length;
    if (both > most) {
      most = both;
      best = { timeColumn: c, clockColumn: null, numericTime: null };
    }
    const dates = kinds.filter((k) => k === 'date').length;
    if (dates > most) {
      const clockColumn = clockBeside(sample, width, c);
      if (clockColumn !== null) {
        most = dates;
        best = { timeColumn: c, clockColumn, numericTime: null };
      }
    }
  }
  return best ?? findNumericTime(sample, width);
}

function clockBeside(sample: Rows, width: number, dateColumn: number): number | null {
  let found: number | null = null;
  let most = 1;
  for (let c = 0; c < width; c++) {
    if (c === dateColumn) continue;
    const clocks = sample.filter(
      (r) => looks(r[c] ?? '')?.has === 'time' && looks(r[dateColumn] ?? '')?.has === 'date',
    ).length;
    if (clocks > most) {
      most = clocks;
      found = c;
    }
  }
  return found;
}

/** A column of numbers that are times since 1970 or spreadsheet days, and that mostly grow. */
function findNumericTime(sample: Rows, width: number): TimeColumns | null {
  for (let c = 0; c < width; c++) {
    const values = sample.flatMap((r) => {
      const v = numberFrom(r[c] ?? '', '.') ?? numberFrom(r[c] ?? '', ',');
      return v === null ? [] : [v];
    });
    if (values.length < 2 || values.length < sample.length * 0.5) continue;
    const numericTime = numberStampKind(values[Math.floor(values.length / 2)]!);
    if (numericTime === null) continue;
    const rising = values.slice(1).filter((v, i) => v > values[i]!).length;
    if (rising > 0.8 * (values.length - 1) || rising < 0.2 * (values.length - 1))
      return { timeColumn: c, clockColumn: null, numericTime };
  }
  return null;
}

export function hasTime(row: readonly string[], t: TimeColumns): boolean {
  const cell = row[t.timeColumn] ?? '';
  if (t.numericTime !== null) {
    const v = numberFrom(cell, '.') ?? numberFrom(cell, ',');
    return v !== null && numberStampKind(v) === t.numericTime;
  }
  const has = looks(cell)?.has;
  if (t.clockColumn === null) return has === 'both';
  return has === 'date' && looks(row[t.clockColumn] ?? '')?.has === 'time';
}

/** The nearest row above the data that holds at least two words and no number alone. */
function headingAbove(rows: Rows, firstRow: number, decimal: DecimalSign): number | null {
  for (let i = firstRow - 1; i >= Math.max(0, firstRow - 6); i--) {
    const cells = rows[i]!.filter((c) => c.trim() !== '');
    if (cells.length < 2) continue;
    const words = cells.filter((c) => numberFrom(c, decimal) === null && /\p{L}|#|°|%/u.test(c));
    if (words.length < 2 || words.length < cells.length * 0.7) continue;
    if (cells.some((c) => subjectOf(c) !== null)) return i;
  }
  return null;
}

function isCounter(data: Rows, column: number, heading: string): boolean {
  const values = data.map((r) => Number(r[column] ?? ''));
  if (values.some((v) => !Number.isInteger(v))) return false;
  const steps = values.slice(1).map((v, i) => v - values[i]!);
  const ones = steps.filter((s) => s >= 1).length;
  if (subjectOf(heading) === 'counter') return ones > 0.7 * steps.length;
  return steps.length > 5 && steps.filter((s) => s === 1).length > 0.9 * steps.length;
}

/** Long form: one column of numbers and a column of a few words that repeat. */
function longForm(
  data: Rows,
  free: readonly number[],
  valueColumns: readonly number[],
  headings: readonly string[],
  decimal: DecimalSign,
): Layout['long'] {
  const value =
    valueColumns.length === 1
      ? valueColumns[0]!
      : valueColumns.find((c) => /value|wert|reading|state/i.test(headings[c] ?? ''));
  if (value === undefined) return null;
  const wordy = free.filter((c) => {
    if (c === value) return false;
    const words = new Set(data.map((r) => (r[c] ?? '').trim()));
    const named = /sensor|name|quantity|measure|entity|channel|gr[öo]ße|kanal|unit/i.test(headings[c] ?? '');
    return (
      named &&
      words.size >= 1 &&
      words.size <= 24 &&
      data.every((r) => (r[c] ?? '').trim() !== '' && numberFrom(r[c]!, decimal) === null)
    );
  });
  const quantity =
    wordy.find(
      (c) =>
        data.some((r) => ['rhPct', 'tempC', 'tempF', 'temp'].includes(subjectOf(r[c] ?? '') ?? '')) &&
        /quant|measure|gr[öo]ße|type|unit|art/i.test(headings[c] ?? ''),
    ) ?? null;
  const sensor =
    wordy.find((c) => c !== quantity && new Set(data.map((r) => r[c])).size > 1) ??
    wordy.find((c) => c !== quantity) ??
    null;
  if (sensor === null && quantity === null) return null;
  const distinct = new Set(
    data.map((r) => `${sensor === null ? '' : r[sensor]}|${quantity === null ? '' : r[quantity]}`),
  );
  return distinct.size > 1 ? { sensor, quantity, value } : null;
}
