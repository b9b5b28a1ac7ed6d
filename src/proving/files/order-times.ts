// Bringing rows into order of time: files that run backwards, hours that come twice when the clocks go back, clocks that
// fell back to their birthday. What cannot be placed is rejected with its reason; what was mended is said.
import { coded, type Saying, told } from '../../husbandry/coded.ts';
import { usualIntervalS } from '../reading-log.ts';
import { clockBirthS } from './date-order.ts';
import type { LogFinding } from './understood.ts';

export interface TimedRow {
  readonly row: number;
  readonly wallS: number;
}

export interface OrderedRows {
  readonly rows: readonly TimedRow[];
  readonly rejected: readonly TimedRow[];
  readonly findings: readonly LogFinding[];
}

const say = coded('logTimes', {
  reset: (count: string) => `The logger's clock was reset: ${count} rows carry a date before 2010 and were set aside.`,
  reversed: 'The file runs from the newest reading to the oldest; it was turned round.',
  hourTwice: 'One hour comes twice: the clocks went back. Both passes are kept; readings of one time are averaged.',
  timesTwice: 'Some times come twice or out of order; they were put in order.',
  clockBack: (hours: string, count: string) =>
    `The clock goes back by ${hours} h in the file; ${count} rows on the shorter side were set aside.`,
});

/** Put rows in order. @param rows in file order */
export function orderTimes(rows: readonly TimedRow[]): OrderedRows {
  const findings: LogFinding[] = [];
  const note = (
    id: LogFinding['id'],
    words: Saying,
    count: number,
    fromS: number | null = null,
    toS: number | null = null,
  ) => findings.push({ id, say: words.en, told: told(words), channelId: null, fromS, toS, count });
  let kept = rows.filter((r) => r.wallS >= clockBirthS);
  const rejected = rows.filter((r) => r.wallS < clockBirthS);
  if (rejected.length > 0) note('clock-reset', say.reset(String(rejected.length)), rejected.length);
  if (isReversed(kept)) {
    kept = [...kept].reverse();
    note('reversed', say.reversed, kept.length);
  }
  const stretches = stretchesOf(kept);
  const interval = usualIntervalS(kept.map((r) => r.wallS).filter((_, i) => i < 2000));
  let out = stretches[0] ?? [];
  for (const next of stretches.slice(1)) {
    const back = out.at(-1)!.wallS - next[0]!.wallS;
    if (back <= 3600 + 2 * Math.max(60, interval)) {
      const words = back >= 3000 ? say.hourTwice : say.timesTwice;
      note(back >= 3000 ? 'doubled-hour' : 'doubled-times', words, 1, next[0]!.wallS, out.at(-1)!.wallS);
      out = [...out, ...next];
    } else {
      // the clock went back by hours or days: only the longer side can be placed
      const drop = next.length > out.length ? out : next;
      note(
        'clock-back',
        say.clockBack((back / 3600).toFixed(1), String(drop.length)),
        drop.length,
        next[0]!.wallS,
        out.at(-1)!.wallS,
      );
      rejected.push(...drop);
      out = next.length > out.length ? next : out;
    }
  }
  return { rows: [...out].sort((a, b) => a.wallS - b.wallS || a.row - b.row), rejected, findings };
}

function isReversed(rows: readonly TimedRow[]): boolean {
  const steps = rows.slice(1).map((r, i) => r.wallS - rows[i]!.wallS);
  const back = steps.filter((s) => s < 0).length;
  const forth = steps.filter((s) => s > 0).length;
  return back > 4 * forth && back > 0;
}

/** Stretches in which time never goes back. */
function stretchesOf(rows: readonly TimedRow[]): TimedRow[][] {
  const out: TimedRow[][] = [];
  for (const r of rows) {
    const last = out.at(-1);
    if (last === undefined || r.wallS < last.at(-1)!.wallS) out.push([r]);
    else last.push(r);
  }
  return out;
}
