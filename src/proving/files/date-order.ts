// Is 03/04/25 the third of April or the fourth of March? What the whole file allows, and what it makes likely; when both
// remain, the person is asked.
import { type DateOrder, stampFrom } from './stamp.ts';

export interface OrderAnswer {
  readonly order: DateOrder;
  /** False when another order reads the file just as well: then ask. */
  readonly certain: boolean;
  readonly also: readonly DateOrder[];
}

/** A logger whose battery failed starts in the years before 2010; no proof is that old [wall-clock s]. */
export const clockBirthS = 1_262_304_000;

interface Judged {
  readonly order: DateOrder;
  readonly unread: number;
  readonly badSteps: number;
  readonly spanS: number;
}

/** Order of the dates of a column. @param cells date or stamp of each row, in file order
 *  @param latestS no reading can be later than this [wall-clock s]; null when unknown */
export function dateOrderOf(cells: readonly string[], latestS: number | null): OrderAnswer {
  const tries = (['dmy', 'mdy', 'ymd'] as const).map((order) => judge(cells, order, latestS));
  const least = Math.min(...tries.map((t) => t.unread));
  const able = tries.filter((t) => t.unread <= least + cells.length * 0.002);
  able.sort((a, b) => a.badSteps - b.badSteps || a.spanS - b.spanS);
  const best = able[0]!;
  const alike = able
    .slice(1)
    .filter(
      (t) => t.badSteps <= best.badSteps && t.spanS <= best.spanS * 1.5 + 86400 && differs(cells, best.order, t.order),
    );
  return { order: best.order, certain: alike.length === 0, also: alike.map((t) => t.order) };
}

/** Whether two orders read some cell differently; a file of ISO dates reads alike under all. */
const differs = (cells: readonly string[], a: DateOrder, b: DateOrder): boolean =>
  cells.some((c) => stampFrom(c, a)?.wallS !== stampFrom(c, b)?.wallS);

function judge(cells: readonly string[], order: DateOrder, latestS: number | null): Judged {
  let unread = 0;
  let back = 0;
  let forth = 0;
  let jumps = 0;
  let last: number | null = null;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const cell of cells) {
    const at = stampFrom(cell, order)?.wallS;
    if (at === undefined || at < clockBirthS || (latestS !== null && at > latestS + 86400)) {
      unread++;
      continue;
    }
    if (last !== null) {
      if (at < last - 3700) back++;
      if (at > last + 3700) forth++;
      if (Math.abs(at - last) > 3 * 86400) jumps++;
    }
    last = at;
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return { order, unread, badSteps: Math.min(back, forth) + jumps, spanS: Math.max(0, high - low) };
}
