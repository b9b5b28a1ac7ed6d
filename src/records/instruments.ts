// The rows of instruments and their checks.
import { randomUUID } from 'node:crypto';
import type { Instrument, InstrumentCheck } from '../proving/instrument.ts';
import type { Db } from './schema.ts';
import { wallSecondsOf } from './wall-clock.ts';

export interface InstrumentWriter {
  readonly at: Date;
  readonly by: string;
}

export async function insertInstrument(
  db: Db,
  branchId: string,
  name: string,
  writer: InstrumentWriter,
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('instrument')
    .values({ id, branch_id: branchId, name, ...writer })
    .execute();
  return id;
}

export async function insertInstrumentCheck(
  db: Db,
  instrumentId: string,
  check: Omit<InstrumentCheck, 'atS'>,
  writer: InstrumentWriter,
): Promise<void> {
  await db
    .insertInto('instrument_check')
    .values({ id: randomUUID(), instrument_id: instrumentId, ...check, ...writer })
    .execute();
}

/** Instruments of a branch with every check, oldest first. */
export async function instrumentsOf(db: Db, branchId: string): Promise<Instrument[]> {
  const rows = await db
    .selectFrom('instrument')
    .select(['id', 'name'])
    .where('branch_id', '=', branchId)
    .orderBy('at')
    .execute();
  if (rows.length === 0) return [];
  const checks = await db
    .selectFrom('instrument_check')
    .select(['instrument_id', 'quantity', 'how', 'truth', 'shown', 'at'])
    .where(
      'instrument_id',
      'in',
      rows.map((r) => r.id),
    )
    .orderBy('at')
    .execute();
  return rows.map((r) => ({
    ...r,
    checks: checks
      .filter((c) => c.instrument_id === r.id)
      .map((c) => ({
        quantity: c.quantity as InstrumentCheck['quantity'],
        how: c.how as InstrumentCheck['how'],
        truth: c.truth,
        shown: c.shown,
        atS: wallSecondsOf(c.at),
      })),
  }));
}
