// Three numbers and a time, typed by a keeper: to a log. What cannot be a reading is a fault, all of them at once.
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Channel, LogPlace, ReadingLog } from './reading-log.ts';

/** The three fields of the keeper's page. */
export const handPlaces = ['basking-surface', 'cool-air', 'room'] as const satisfies readonly LogPlace[];
export type HandPlace = (typeof handPlaces)[number];

export interface HandReading {
  /** Wall-clock seconds of the home. */
  readonly atS: number;
  readonly valuesC: Readonly<Partial<Record<HandPlace, number>>>;
}

/** Limits of a typed temperature [degC]; 86 is a reading in °F typed as °C. */
export const handLimitsC = { low: -10, high: 60 } as const;

/** Faults: "HAND_NONE", "HAND_RANGE". */
export function handReadingFaults(reading: HandReading): Fault[] {
  const faults: Fault[] = [];
  const given = handPlaces.filter((p) => reading.valuesC[p] !== undefined);
  if (given.length === 0)
    faults.push({
      code: 'HAND_NONE',
      field: 'valuesC',
      got: 'no number',
      allowed: 'at least one temperature',
      say: 'There is no reading to send.',
      fix: 'Type what the thermometer shows.',
    });
  for (const place of given) {
    const v = reading.valuesC[place]!;
    if (Number.isFinite(v) && v >= handLimitsC.low && v <= handLimitsC.high) continue;
    faults.push({
      code: 'HAND_RANGE',
      field: `valuesC.${place}`,
      got: String(v),
      allowed: `${handLimitsC.low} to ${handLimitsC.high} °C`,
      say: 'No place in a home for a snake has this temperature.',
      fix: v > 60 && v < 130 ? 'This looks like °F: change the unit or type it in °C.' : 'Read the thermometer again.',
    });
  }
  return faults;
}

/** Log of typed readings. @param instruments instrument of each place, when known */
export function handLog(
  readings: readonly HandReading[],
  instruments: Readonly<Partial<Record<HandPlace, string>>> = {},
): Result<ReadingLog> {
  const faults = readings.flatMap((r, i) => handReadingFaults(r).map((f) => ({ ...f, field: `[${i}].${f.field}` })));
  if (faults.length > 0) return bad(faults);
  const ordered = [...readings].sort((a, b) => a.atS - b.atS);
  const channels = handPlaces.flatMap((place): Channel[] => {
    const values = ordered.map((r) => r.valuesC[place] ?? null);
    if (values.every((v) => v === null)) return [];
    return [{ id: place, label: place, quantity: 'tempC', place, instrumentId: instruments[place] ?? null, values }];
  });
  return good({ kind: 'hand', timesS: ordered.map((r) => r.atS), channels });
}
