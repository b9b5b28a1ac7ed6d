// From rows in order of time to channels: wide files have a column for each, long files name it in every row.
// Readings of one time are averaged; temperatures become °C. Leaves out the places (a person's or a heading's word).
import { type ColumnSubject, quantityOf, subjectOf } from './headings.ts';
import type { Layout, Rows } from './layout.ts';
import { isNoReading, numberFrom } from './numbers.ts';
import type { TimedRow } from './order-times.ts';
import type { DraftChannel } from './understood.ts';

interface Column {
  readonly id: string;
  readonly label: string;
  readonly subject: ColumnSubject;
  readonly cell: (row: readonly string[]) => string | null;
}

/** Channels of ordered rows. @param forcedUnit what a person said about the temperatures */
export function draftsOf(
  rows: Rows,
  layout: Layout,
  headings: readonly string[],
  ordered: readonly TimedRow[],
  forcedUnit?: 'C' | 'F',
): { timesS: number[]; drafts: DraftChannel[] } {
  const timesS: number[] = [];
  for (const r of ordered) if (timesS.at(-1) !== r.wallS) timesS.push(r.wallS);
  const columns = layout.long
    ? longColumns(rows, layout.long, headings, ordered)
    : wideColumns(rows, layout, headings, ordered);
  const drafts = columns.flatMap((column): DraftChannel[] => {
    const quantity = quantityOf(column.subject);
    if (quantity === null) return [];
    const unit =
      quantity === 'rhPct'
        ? '%'
        : quantity === 'powerW'
          ? 'W'
          : (forcedUnit ?? (column.subject === 'tempF' ? 'F' : column.subject === 'tempC' ? 'C' : 'unknown'));
    const values = valuesAt(rows, layout, ordered, timesS, column.cell);
    const asC = unit === 'F' ? values.map((v) => (v === null ? null : ((v - 32) * 5) / 9)) : values;
    return [{ id: column.id, label: column.label, quantity, unit, values: asC }];
  });
  return { timesS, drafts };
}

function valuesAt(
  rows: Rows,
  layout: Layout,
  ordered: readonly TimedRow[],
  timesS: readonly number[],
  cell: Column['cell'],
): (number | null)[] {
  const sums = new Float64Array(timesS.length);
  const counts = new Uint32Array(timesS.length);
  let at = 0;
  for (const r of ordered) {
    while (timesS[at] !== r.wallS) at++;
    const text = cell(rows[r.row]!);
    const value = text === null || isNoReading(text) ? null : numberFrom(text, layout.decimal);
    if (value === null) continue;
    sums[at] = sums[at]! + value;
    counts[at] = counts[at]! + 1;
  }
  return timesS.map((_, i) => (counts[i]! > 0 ? sums[i]! / counts[i]! : null));
}

function wideColumns(rows: Rows, layout: Layout, headings: readonly string[], ordered: readonly TimedRow[]): Column[] {
  const seen = { tempC: 0, rhPct: 0 };
  const columns = layout.valueColumns.map((c) => {
    const heading = (headings[c] ?? '').trim();
    return { c, heading, subject: subjectOf(heading) };
  });
  // Without a known heading a column is guessed from its size, the first one as temperature.
  const known = columns.some((x) => quantityOf(x.subject) !== null);
  return columns.flatMap(({ c, heading, subject }) => {
    const guess = subject ?? (known && heading !== '' ? null : guessed(rows, layout, ordered, c, seen.tempC));
    const quantity = quantityOf(guess);
    if (quantity === null) return [];
    if (quantity !== 'powerW') seen[quantity]++;
    const label =
      heading === ''
        ? `${quantity === 'rhPct' ? 'humidity' : 'temperature'} ${quantity === 'powerW' ? 1 : seen[quantity]}`
        : heading;
    return [{ id: `c${c + 1}`, label, subject: guess, cell: (r: readonly string[]) => r[c] ?? null }];
  });
}

/** Temperature or humidity by the size of the numbers; a second column of larger ones is humidity. */
function guessed(
  rows: Rows,
  layout: Layout,
  ordered: readonly TimedRow[],
  column: number,
  temps: number,
): ColumnSubject {
  const values = ordered.slice(0, 300).flatMap((r) => numberFrom(rows[r.row]![column] ?? '', layout.decimal) ?? []);
  if (values.length === 0) return null;
  const middle = [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  if (middle < -40 || middle > 130) return 'other';
  if (temps > 0 && middle > 30 && middle <= 100) return 'rhPct';
  return 'temp';
}

function longColumns(
  rows: Rows,
  long: NonNullable<Layout['long']>,
  headings: readonly string[],
  ordered: readonly TimedRow[],
): Column[] {
  const keys = new Map<string, { sensor: string; quantity: string }>();
  for (const r of ordered) {
    const sensor = long.sensor === null ? '' : (rows[r.row]![long.sensor] ?? '').trim();
    const quantity = long.quantity === null ? '' : (rows[r.row]![long.quantity] ?? '').trim();
    const key = `${sensor}\u0000${quantity}`;
    if (!keys.has(key)) {
      keys.set(key, { sensor, quantity });
      if (keys.size > 24) break;
    }
  }
  return [...keys.values()].map(({ sensor, quantity }, i) => {
    const label = [sensor, quantity].filter((x) => x !== '').join(' ');
    const subject = subjectOf(quantity) ?? subjectOf(sensor) ?? subjectOf(headings[long.value] ?? '') ?? 'temp';
    return {
      id: `s${i + 1}`,
      label,
      subject: subject === 'time' || subject === 'counter' ? 'temp' : subject,
      cell: (r: readonly string[]) =>
        (long.sensor === null || (r[long.sensor] ?? '').trim() === sensor) &&
        (long.quantity === null || (r[long.quantity] ?? '').trim() === quantity)
          ? (r[long.value] ?? null)
          : null,
    };
  });
}
