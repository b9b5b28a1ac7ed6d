// Which plain thermometer would have told, and how soon? An alarm set a little outside the wanted band, our choice of 1 K.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { summerAllowanceK } from '../climate-verdicts.ts';
import type { AlarmFinding, Crossing } from './fault-answer.ts';
import type { FaultRow } from './fault-run.ts';

const beyondK = 1;
const beyondPct = 5;

interface Watch {
  readonly instrument: AlarmFinding['instrument'];
  readonly unit: AlarmFinding['unit'];
  readonly read: (row: FaultRow) => number;
  readonly low: number;
  readonly high: number;
}

const watches = (climate: ClimateNeeds): readonly Watch[] => [
  {
    instrument: 'cool-end thermometer',
    unit: '°C',
    read: (r) => r.coolAirC,
    low: Number.NEGATIVE_INFINITY,
    high: climate.coolAirC.high + summerAllowanceK + beyondK,
  },
  {
    instrument: 'basking thermometer',
    unit: '°C',
    read: (r) => r.baskingC,
    low: climate.nightMinC.low - beyondK,
    high: climate.baskingSurfaceC.high + beyondK,
  },
  {
    instrument: 'warm-end thermometer',
    unit: '°C',
    read: (r) => r.warmAirC,
    low: climate.nightMinC.low,
    high: climate.warmAirC.high + beyondK,
  },
  {
    instrument: 'hygrometer',
    unit: '%',
    read: (r) => r.rhPct,
    low: climate.rhPct.low - beyondPct,
    high: climate.rhPct.high + beyondPct,
  },
];

/** The first instrument to leave its band, if one does; those outside it from the start tell nothing new. */
export function alarmOf(rows: readonly FaultRow[], climate: ClimateNeeds, first: Crossing | null): AlarmFinding | null {
  if (!first) return null;
  const found = watches(climate).flatMap((w): AlarmFinding[] => {
    const outside = (row: FaultRow) => w.read(row) < w.low || w.read(row) > w.high;
    if (!rows[0] || outside(rows[0])) return [];
    const row = rows.find(outside);
    if (!row) return [];
    const atReading = w.read(row) > w.high ? w.high : w.low;
    return [{ instrument: w.instrument, unit: w.unit, atReading, afterH: row.hour }];
  });
  return found.sort((a, b) => a.afterH - b.afterH)[0] ?? null;
}
