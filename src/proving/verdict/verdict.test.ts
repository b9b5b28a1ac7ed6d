// When is a home proven? Each way of not being proven is named with its reason and its next step.
import { describe, expect, it } from 'vitest';
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Diagnosis } from '../diagnosis/cause.ts';
import type { LogQuestion } from '../files/understood.ts';
import { mergeLogs } from '../merge-logs.ts';
import type { ReadingLog } from '../reading-log.ts';
import { madeLog } from '../testing/made-log.ts';
import { coverageOf } from './coverage.ts';
import { decide } from './decide.ts';
import type { ForecastNeed } from './forecast-needs.ts';
import { readNeeds } from './read-needs.ts';
import { defaultRule } from './rule.ts';

const range = (low: number, high: number) => ({ low, high, source: 'TEST', at: '', read: 'memory' as const });
const climate: ClimateNeeds = {
  speciesId: 'corn',
  stage: 'adult',
  baskingSurfaceC: range(29, 33),
  warmAirC: range(26, 29),
  coolAirC: range(20, 25),
  nightMinC: range(20, 24),
  rhPct: range(40, 60),
  reachableMaxC: { target: 35, alarm: 38, cutOut: 40, source: 'TEST' },
  climbs: false,
};
const day = { startH: 8, endH: 20 };
const good = [
  { place: 'room', dayC: 19, nightC: 18 },
  { place: 'basking-surface', dayC: 31, nightC: 26 },
  { place: 'warm-hide', dayC: 27, nightC: 23 },
  { place: 'cool-air', dayC: 22.5, nightC: 20 },
] as const;
const holding: ForecastNeed = {
  id: 'coldest-night-warmth',
  moment: 'coldest-night',
  place: 'warm-hide',
  verdict: 'holds',
  shareHolding: 1,
  foundC: { low: 21, median: 22, high: 23 },
  low: 20,
  high: null,
  roomC: 15,
  flatOutShare: 0,
};

interface Over {
  readonly log?: ReadingLog;
  readonly checked?: boolean;
  readonly forecast?: readonly ForecastNeed[];
  readonly diagnosis?: Diagnosis;
  readonly questions?: readonly LogQuestion[];
}

function judged(over: Over = {}) {
  const log = over.log ?? madeLog(good);
  const checked = over.checked ?? false;
  return decide({
    log,
    rule: defaultRule,
    coverage: coverageOf(log, day, defaultRule),
    needs: readNeeds(log, climate, day, 1, () => ({ error: checked ? 0.5 : 1, checked })),
    forecastNeeds: over.forecast ?? [holding],
    diagnosis: over.diagnosis ?? { suspects: [], healthy: true },
    questions: over.questions ?? [],
    dial: null,
    nextReadings: [],
  });
}
const changed = (place: string, dayC: number, nightC: number) =>
  madeLog(good.map((p) => (p.place === place ? { ...p, dayC, nightC } : p)));

describe('decide', () => {
  it('proven', () => expect(judged()).toMatchObject({ verdict: 'proven', next: { id: 'release' } }));
  it('inside by less than the instrument error is not proven, and a check may settle it', () => {
    const log = changed('basking-surface', 29.7, 26);
    expect(judged({ log })).toMatchObject({ verdict: 'not-proven', next: { id: 'check-instrument' } });
    expect(judged({ log }).reason).toContain('inside by 0.7 K');
    expect(judged({ log, checked: true }).verdict).toBe('proven');
  });
  it('outside by more than the instrument error fails', () => {
    expect(judged({ log: changed('warm-hide', 27, 18.5) })).toMatchObject({
      verdict: 'failed',
      next: { id: 'stronger-heater' },
    });
    expect(judged({ log: changed('basking-surface', 39.5, 28) })).toMatchObject({
      verdict: 'failed',
      next: { id: 'turn-dial' },
    });
  });
  it('outside by less is not proven', () =>
    expect(judged({ log: changed('warm-hide', 27, 19.6) }).verdict).toBe('not-proven'));
  it('two nights are too few', () => {
    const found = judged({ log: madeLog(good, 46) });
    expect([found.verdict, found.next.id, found.reason]).toEqual([
      'not-proven',
      'keep-reading',
      '2 of 3 nights are covered.',
    ]);
  });
  it('a hole is named', () => {
    const found = judged({ log: madeLog(good, 75, 600, (h) => h > 30 && h < 32.5) });
    expect([found.verdict, found.next.id]).toEqual(['not-proven', 'fill-gap']);
    expect(found.reason).toContain('2.5 h');
  });
  it('hourly readings are too sparse', () =>
    expect(judged({ log: madeLog(good, 75, 3600) }).next.id).toBe('read-closer'));
  it('an open question keeps the door shut', () => {
    const question: LogQuestion = {
      id: 'swapped',
      channelId: null,
      say: 'Were the sensors exchanged?',
      choices: ['yes', 'no'],
      assumed: null,
    };
    expect(judged({ questions: [question] })).toMatchObject({ verdict: 'not-proven', next: { id: 'answer-question' } });
  });
  it('a suspected mistake keeps it shut', () => {
    const diagnosis: Diagnosis = { healthy: false, suspects: [{ cause: 'sun-on-glass', weight: 5, evidence: [] }] };
    expect(judged({ diagnosis })).toMatchObject({ verdict: 'not-proven', next: { id: 'mend-fault' } });
  });
  it('a place that nobody read', () => expect(judged({ log: madeLog(good.slice(0, 3)) }).next.id).toBe('read-place'));
  it('a forecast in doubt is not proven, a failing one fails', () => {
    expect(judged({ forecast: [{ ...holding, verdict: 'not-known', shareHolding: 0.6 }] }).verdict).toBe('not-proven');
    expect(judged({ forecast: [{ ...holding, verdict: 'fails', shareHolding: 0.02, flatOutShare: 1 }] })).toMatchObject(
      { verdict: 'failed', next: { id: 'stronger-heater' } },
    );
  });
});

describe('what the sentences are about', () => {
  it('stands beside each of them, so that any language can say it', () => {
    const hot = judged({ log: changed('basking-surface', 36, 26) });
    expect(hot.ground).toEqual({ about: 'need', id: 'basking-surface' });
    expect(hot.next.how).toEqual({ by: 'no-dial' });
    expect(hot.grounds).toHaveLength(hot.reasons.length);
    const proven = judged();
    expect([proven.ground, proven.next.how]).toEqual([{ about: 'proven' }, { by: 'ready' }]);
    expect(proven.grounds).toHaveLength(proven.reasons.length);
  });
});

describe('hand readings beside a logger', () => {
  const logger = madeLog(good);
  const firstS = Math.ceil(logger.timesS[0]! / 86400) * 86400;
  const hand = (place: 'cool-air' | 'cool-floor', value: number, days = 3): ReadingLog => {
    const timesS = Array.from({ length: days }, (_, d) =>
      [9, 15, 19.5].map((h) => firstS + d * 86400 + h * 3600),
    ).flat();
    const values = timesS.map(() => value);
    return {
      kind: 'hand',
      timesS,
      channels: [{ id: place, label: place, quantity: 'tempC', place, instrumentId: null, values }],
    };
  };
  const needs = (log: ReadingLog) =>
    readNeeds(log, climate, day, 1, (i) =>
      log.channels[i]!.byHand ? { error: 1, checked: false } : { error: 0.5, checked: true },
    );
  const coolEnd = (log: ReadingLog) => needs(log).find((n) => n.id === 'cool-end')!;

  it('do not thin the cover of the logger at places that it reads', () => {
    const both = mergeLogs([logger, hand('cool-air', 22.5)]);
    expect(coverageOf(both, day, defaultRule)).toMatchObject(coverageOf(logger, day, defaultRule));
  });
  it('a rough one does not weaken a good one, but contradicts it by more than its error', () => {
    expect(coolEnd(mergeLogs([logger, hand('cool-air', 24.6)]))).toMatchObject({ state: 'held', error: 0.5 });
    expect(coolEnd(mergeLogs([logger, hand('cool-air', 27)]))).toMatchObject({ state: 'failed', error: 1, worst: 27 });
  });
  it('cover a place that no logger reads, by the days of the rule for hands', () => {
    const open = madeLog(good.slice(0, 3));
    const cover = (days: number) => coverageOf(mergeLogs([open, hand('cool-floor', 22.5, days)]), day, defaultRule);
    expect(coolEnd(mergeLogs([open, hand('cool-floor', 22.5)])).state).toBe('held');
    expect(cover(3)).toMatchObject({ nights: 3, handDays: 3, enough: true });
    expect(cover(2)).toMatchObject({ nights: 2, handDays: 2, enough: false });
  });
});

describe('coverage by hand', () => {
  it('needs morning, afternoon and evening on each day', () => {
    const at = (days: number, hours: readonly number[]): ReadingLog => ({
      kind: 'hand',
      channels: [],
      timesS: Array.from({ length: days }, (_, d) => hours.map((h) => (20_400 + d) * 86400 + h * 3600)).flat(),
    });
    expect(coverageOf(at(3, [7, 15, 21]), day, defaultRule)).toMatchObject({ nights: 3, enough: true });
    expect(coverageOf(at(3, [12, 15, 21]), day, defaultRule).enough).toBe(false);
    expect(coverageOf(at(2, [7, 15, 21]), day, defaultRule).enough).toBe(false);
    const twice = { ...defaultRule, handReadingsPerDay: 2 };
    expect(coverageOf(at(3, [7, 21]), day, twice).enough).toBe(true);
    expect(coverageOf(at(3, [7, 21]), day, defaultRule).enough).toBe(false);
  });
});
