// Writes a table as CSV: comma between cells, point in numbers, a head with units. Leaves out: what is in it.

export type CsvCell = string | number | boolean | null;

/** RFC 4180: a cell with comma, quote or line break is quoted. A number keeps at most six significant digits. */
export function csvLines(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string[] {
  return [head, ...rows].map((row) => row.map(cellText).join(','));
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  const text = typeof cell === 'number' ? numberText(cell) : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const numberText = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(6))) : '');
