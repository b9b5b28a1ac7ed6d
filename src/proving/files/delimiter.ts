// What separates the cells of a logger file? The sign that cuts the most lines into the same number of cells.

export const delimiters = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof delimiters)[number];

/** Delimiter of a text.
 *  @param sample its first lines, up to 64 kB */
export function delimiterOf(sample: string): Delimiter {
  const lines = sample
    .split(/\r\n|\r|\n/)
    .filter((l) => l.trim() !== '')
    .slice(0, 400);
  let best: Delimiter = ',';
  let most = 0;
  for (const d of delimiters) {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const cells = cellsIn(line, d);
      if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1);
    }
    let score = 0;
    for (const [cells, n] of counts) score = Math.max(score, n + Math.min(cells, 20) / 1000);
    // a comma that only ever stands between two digits is a decimal comma
    if (
      d === ',' &&
      lines.length > 0 &&
      lines.filter((l) => /\d,\d/.test(l) && !/,\s*[^\d\s]|,\s*\d{1,2}[/.:-]/.test(l)).length > 0.9 * lines.length &&
      lines.some((l) => /[;\t|]/.test(l))
    )
      score *= 0.5;
    if (score > most + 1e-9) {
      most = score;
      best = d;
    }
  }
  return best;
}

function cellsIn(line: string, d: string): number {
  let cells = 1;
  let quoted = false;
  for (const c of line) {
    if (c === '"') quoted = !quoted;
    else if (c === d && !quoted) cells++;
  }
  return cells;
}
