// Which known word did the writer of an unknown one probably mean? Leaves out: anything about enclosures.

const longestKey = 40;

/** The known key nearest to an unknown one, or null when none is near.
 *  Near means: the same start ("length" for "lengthM"), or at most a third of its letters changed. */
export function nearestKey(unknown: string, known: Iterable<string>): string | null {
  if (unknown.length === 0 || unknown.length > longestKey) return null;
  const wanted = unknown.toLowerCase();
  let best: string | null = null;
  let bestCost = Math.max(1, Math.floor(unknown.length / 3)) + 1;
  for (const key of known) {
    const lower = key.toLowerCase();
    const sameStart = wanted.length >= 3 && (lower.startsWith(wanted) || wanted.startsWith(lower));
    const cost = sameStart ? 0.5 + Math.abs(lower.length - wanted.length) / 100 : editDistance(wanted, lower);
    if (cost < bestCost) {
      best = key;
      bestCost = cost;
    }
  }
  return best;
}

/** Fewest single-letter insertions, deletions, changes and swaps of neighbours that turn a into b. */
export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (rows[i - 1]?.[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let cost = Math.min(change, (rows[i - 1]?.[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (rows[i - 2]?.[j - 2] ?? 0) + 1);
      }
      row.push(cost);
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] ?? 0;
}
