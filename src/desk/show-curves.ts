// What was read in a home as curves for a picture: each channel as means over equal steps, at most a few hundred points.
// Corrected by the instruments' checks, as the proof takes them.
import { correctedLog } from '../proving/calibration/calibrate.ts';
import type { LogPlace, Quantity } from '../proving/reading-log.ts';
import { instrumentsOf } from '../records/instruments.ts';
import { good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { readingFaults } from './reading-faults.ts';
import { readingsOfHome } from './readings-of-home.ts';

export interface Curve {
  readonly id: string;
  readonly label: string;
  readonly place: LogPlace | null;
  readonly quantity: Quantity;
  /** Wall-clock seconds and value; null where the step has no reading. */
  readonly points: readonly (readonly [number, number | null])[];
}

export interface Curves {
  readonly kind: 'logger' | 'hand';
  readonly fromS: number;
  readonly toS: number;
  readonly curves: readonly Curve[];
}

/** Points of one curve on a sheet; more cannot be seen. */
const mostPoints = 480;

/** A home in which nobody has read anything has no curves; that is an answer, not a fault. */
const noCurves: Curves = { kind: 'hand', fromS: 0, toS: 0, curves: [] };

/** Faults: "ENQUIRY_UNKNOWN", those of the files. */
export async function showCurves(desk: DeskContext, enquiryId: string): Promise<Result<Curves>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const read = await readingsOfHome(desk, enquiryId);
  if (!read.ok) return read.faults.every((f) => f.code === readingFaults.nothingRead.code) ? good(noCurves) : read;
  const log = correctedLog(read.value.log, await instrumentsOf(desk.db, desk.actor.branchId));
  const fromS = log.timesS[0] ?? 0;
  const toS = log.timesS.at(-1) ?? fromS;
  const stepS = Math.max(60, Math.ceil((toS - fromS) / mostPoints / 60) * 60);
  const curves = log.channels.map((c): Curve => {
    const slots = new Map<number, { sum: number; n: number }>();
    log.timesS.forEach((t, i) => {
      const v = c.values[i];
      if (v === null || v === undefined) return;
      const slot = Math.floor((t - fromS) / stepS);
      const s = slots.get(slot) ?? { sum: 0, n: 0 };
      s.sum += v;
      s.n++;
      slots.set(slot, s);
    });
    const points =
      log.kind === 'hand'
        ? [...slots]
        : Array.from({ length: Math.floor((toS - fromS) / stepS) + 1 }, (_, k) => [k, slots.get(k)] as const);
    return {
      id: c.id,
      label: c.label,
      place: c.place,
      quantity: c.quantity,
      points: points.map(([k, s]) => [
        fromS + k * stepS,
        s === undefined ? null : Math.round((100 * s.sum) / s.n) / 100,
      ]),
    };
  });
  return good({ kind: log.kind, fromS, toS, curves });
}
