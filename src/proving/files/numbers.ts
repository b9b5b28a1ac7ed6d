// Reading numbers as loggers and spreadsheets of many countries write them, with or without a unit behind.

export type DecimalSign = '.' | ',';

const shape = {
  '.': /^[+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?$|^[+-]?\.\d+$/i,
  ',': /^[+-]?\d+(?:,\d+)?$|^[+-]?,\d+$/,
} as const;
const unitBehind = /\s*(?:°\s*[CF]|[CF]|K|%(?:\s*r\.?h\.?)?|r\.?h\.?|W)$/i;

/** Number in a cell; null when it is none. A unit behind it is taken off. */
export function numberFrom(cell: string, decimal: DecimalSign): number | null {
  const bare = cell.length > 24 ? '' : cell.trim().replace(/^['’]/, '').replace(/−/g, '-').replace(unitBehind, '');
  if (!shape[decimal].test(bare)) return null;
  const value = Number(decimal === ',' ? bare.replace(',', '.') : bare);
  return Number.isFinite(value) ? value : null;
}

/** Point or comma: whichever the numbers of the cells use. */
export function decimalSignOf(cells: readonly string[]): DecimalSign {
  let points = 0;
  let commas = 0;
  for (const cell of cells) {
    const bare = cell.trim().replace(unitBehind, '');
    if (/^[+-]?\d+\.\d+$/.test(bare)) points++;
    if (/^[+-]?\d+,\d+$/.test(bare)) commas++;
  }
  return commas > points ? ',' : '.';
}

/** Words and codes that loggers write for "no reading". */
export const isNoReading = (cell: string): boolean =>
  /^(?:-+|n\/?a|nan|null|none|err(?:or)?|---|\?+|lo|hi|open|fehler|unavailable|unknown)$/i.test(cell.trim());
