// What is odd in a log: gaps, values that cannot be, a sensor that stands still, two ends exchanged, °F called °C.
// Impossible values are emptied in place (the raw file keeps them) and counted.
import { coded, type Saying, told } from '../../husbandry/coded.ts';
import { type Channel, type ReadingLog, usualIntervalS } from '../reading-log.ts';
import type { DraftChannel, LogFinding } from './understood.ts';

/** Outside these no sensor in or beside a vivarium can be right; our choice. */
const possible = {
  tempC: { low: -25, high: 105 },
  rhPct: { low: 0.1, high: 100.5 },
  powerW: { low: 0, high: 5000 },
} as const;
/** What a widely sold digital sensor gives when it has just started or lost its wire. */
const errorCodes = new Set([85, -127]);
/** A gap is named from this on [s]: a proof allows no hour without a reading (our choice). */
export const namedGapS = 3600;
/** A temperature that does not move for this long is frozen [s]; our choice. */
const frozenS = 6 * 3600;

const say = coded('log', {
  impossible: (label: string, count: string, low: string, high: string, unit: string) =>
    `"${label}": ${count} values cannot be (outside ${low} to ${high} ${unit}, or an error code); they count as no reading.`,
  gap: (hours: string) => `No reading for ${hours} h.`,
  still: (label: string) => `"${label}" never changes: a sensor in a heated home always moves a little.`,
  frozen: (label: string, value: string, hours: string) =>
    `"${label}" stands still at ${value} for ${hours} h while another sensor moves.`,
  none: (label: string, count: string, of: string) => `"${label}" has no reading at ${count} of ${of} times.`,
  fahrenheit: (label: string, value: string) => `"${label}" stands at ${value}: that looks like °F.`,
  notCelsius: (label: string, value: string) =>
    `"${label}" stands at ${value}: that looks like °F, though the file says °C.`,
  swapped: (percent: string) => `The cool end reads warmer than the warm end in ${percent} % of the readings.`,
});

export function logFindings(log: ReadingLog, drafts: readonly DraftChannel[]): LogFinding[] {
  return [
    ...drafts.flatMap((d) => impossible(d)),
    ...gaps(log),
    ...log.channels.flatMap((c) => [...frozen(log, c), ...silent(log, c)]),
    ...drafts.flatMap((d) => fahrenheit(d)),
    ...swapped(log),
  ];
}

function impossible(d: DraftChannel): LogFinding[] {
  const { low, high } = possible[d.quantity];
  let count = 0;
  const spikes = d.values.filter((v) => v !== null && errorCodes.has(v)).length;
  d.values.forEach((v, i) => {
    const code = d.quantity === 'tempC' && v !== null && errorCodes.has(v) && spikes < d.values.length / 10;
    if (v === null || (v >= low && v <= high && !code)) return;
    d.values[i] = null;
    count++;
  });
  if (count === 0) return [];
  const unit = d.quantity === 'tempC' ? '°C' : d.quantity === 'rhPct' ? '%' : 'W';
  return [of('impossible', say.impossible(d.label, String(count), String(low), String(high), unit), d.id, count)];
}

function gaps(log: ReadingLog): LogFinding[] {
  const interval = usualIntervalS(log.timesS);
  return log.timesS.slice(1).flatMap((t, i) => {
    const from = log.timesS[i]!;
    if (t - from <= Math.max(namedGapS, 3 * interval)) return [];
    return [{ ...of('gap', say.gap(((t - from) / 3600).toFixed(1)), null, 1), fromS: from, toS: t }];
  });
}

function frozen(log: ReadingLog, c: Channel): LogFinding[] {
  if (c.quantity === 'powerW') return [];
  const there = c.values.filter((v): v is number => v !== null);
  if (there.length > 20 && Math.max(...spans(there)) === 0)
    return [of('no-variance', say.still(c.label), c.id, there.length)];
  // humidity at its upper end has a meaning of its own (a wet sensor), so only temperatures freeze
  if (c.quantity !== 'tempC') return [];
  let from = 0;
  for (let i = 1; i <= c.values.length; i++) {
    if (i < c.values.length && c.values[i] === c.values[from] && c.values[from] !== null) continue;
    const fromS = log.timesS[from]!;
    const toS = log.timesS[i - 1]!;
    if (toS - fromS >= frozenS && i - from >= 24 && othersMove(log, c, from, i))
      return [
        {
          ...of(
            'frozen',
            say.frozen(c.label, c.values[from]!.toFixed(1), ((toS - fromS) / 3600).toFixed(1)),
            c.id,
            i - from,
          ),
          fromS,
          toS,
        },
      ];
    from = i;
  }
  return [];
}

function othersMove(log: ReadingLog, c: Channel, from: number, to: number): boolean {
  const others = log.channels.filter((o) => o !== c && o.quantity === 'tempC');
  if (others.length === 0) return true;
  return others.some((o) => {
    const there = o.values.slice(from, to).filter((v): v is number => v !== null);
    return there.length > 2 && Math.max(...spans(there)) >= 0.5;
  });
}

/** Highest less lowest, in a list so that an empty one is harmless. */
function spans(values: readonly number[]): number[] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const v of values) {
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  return [Math.max(0, high - low)];
}

function silent(log: ReadingLog, c: Channel): LogFinding[] {
  const none = c.values.filter((v) => v === null).length;
  if (none === 0 || none < log.timesS.length * 0.02 || new Set(log.channels.map((x) => x.quantity)).size > 3) return [];
  return [of('no-reading', say.none(c.label, String(none), String(log.timesS.length)), c.id, none)];
}

/** A heated home stands between 15 and 45 °C; 59 and 113 are the same in °F. */
function fahrenheit(d: DraftChannel): LogFinding[] {
  if (d.quantity !== 'tempC' || d.unit === 'F') return [];
  const there = d.values.filter((v): v is number => v !== null).sort((a, b) => a - b);
  const middle = there[Math.floor(there.length / 2)];
  if (middle === undefined || middle < 55) return [];
  return [
    of(
      'looks-fahrenheit',
      (d.unit === 'C' ? say.notCelsius : say.fahrenheit)(d.label, middle.toFixed(1)),
      d.id,
      there.length,
    ),
  ];
}

function swapped(log: ReadingLog): LogFinding[] {
  const of2 = (...places: string[]) =>
    log.channels.find((c) => c.quantity === 'tempC' && c.place !== null && places.includes(c.place));
  const warm = of2('basking-surface', 'warm-hide', 'warm-air');
  const cool = of2('cool-air', 'cool-hide', 'cool-floor');
  if (!warm || !cool) return [];
  let both = 0;
  let wrong = 0;
  warm.values.forEach((w, i) => {
    const c = cool.values[i];
    if (w === null || c === null || c === undefined) return;
    both++;
    if (c > w + 0.5) wrong++;
  });
  if (both < 10 || wrong < 0.8 * both) return [];
  return [of('channels-swapped', say.swapped(String(Math.round((100 * wrong) / both))), cool.id, wrong)];
}

function of(id: LogFinding['id'], words: Saying, channelId: string | null, count: number): LogFinding {
  return { id, say: words.en, told: told(words), channelId, fromS: null, toS: null, count };
}
