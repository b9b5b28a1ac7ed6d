// The shop's instruments: add one, check it at a known point, see when the next check is due.

import { type Instrument, trustIn } from '../proving/instrument.ts';
import { type CheckKind, type CheckOutcome, finishCheck, type Salt } from '../proving/instrument-check.ts';
import { insertInstrument, insertInstrumentCheck, instrumentsOf } from '../records/instruments.ts';
import { wallSecondsOf } from '../records/wall-clock.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { readingFaults } from './reading-faults.ts';
import { writerOf } from './take-reading-file.ts';

/** Faults: "INSTRUMENT_NAME". */
export async function addInstrument(desk: DeskContext, name: string): Promise<Result<{ readonly id: string }>> {
  const plain = name.trim();
  if (plain.length < 1 || plain.length > 80) return bad([readingFaults.instrumentName(plain.slice(0, 90))]);
  return good({ id: await insertInstrument(desk.db, desk.actor.branchId, plain, writerOf(desk)) });
}

export interface CheckInput {
  readonly kind: CheckKind;
  readonly shown: readonly number[];
  readonly salt?: Salt;
  readonly tempC?: number;
}

/** Faults: "INSTRUMENT_UNKNOWN", those of finishCheck. */
export async function checkInstrument(desk: DeskContext, id: string, input: CheckInput): Promise<Result<CheckOutcome>> {
  const known = await instrumentsOf(desk.db, desk.actor.branchId);
  if (!known.some((i) => i.id === id)) return bad([readingFaults.instrumentUnknown(id)]);
  const writer = writerOf(desk);
  const { salt, tempC } = input;
  const done = finishCheck(input.kind, input.shown, {
    atS: wallSecondsOf(writer.at),
    ...(salt ? { salt } : {}),
    ...(tempC === undefined ? {} : { tempC }),
  });
  if (!done.ok) return done;
  const { atS: _, ...check } = done.value.check;
  await insertInstrumentCheck(desk.db, id, check, writer);
  return done;
}

export interface ShownInstrument extends Instrument {
  readonly temp: ReturnType<typeof trustIn>;
  readonly humidity: ReturnType<typeof trustIn>;
}

export async function listInstruments(desk: DeskContext): Promise<ShownInstrument[]> {
  const now = wallSecondsOf(desk.clock.now());
  const all = await instrumentsOf(desk.db, desk.actor.branchId);
  return all.map((i) => ({ ...i, temp: trustIn(i, 'tempC', now), humidity: trustIn(i, 'rhPct', now) }));
}
