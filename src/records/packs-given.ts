// The rows of packs as they were given: the file itself, with its hash, who made it, when, and how it was written.
import { createHash, randomUUID } from 'node:crypto';
import type { Rows } from './animals.ts';
import type { PackPrint } from './pack-prints.ts';

/** One part of a pack with what stands in it, line by line. */
export interface SaidPart {
  readonly title: string;
  readonly lines: readonly string[];
}

export interface PackGiven extends PackPrint {
  readonly id: string;
  /** State of the placement when it was made; "open" makes it a draft. */
  readonly state: string;
  readonly sha256: string;
  readonly sizeBytes: number;
}

export interface NewPack extends PackPrint {
  readonly placementId: string;
  readonly state: string;
  readonly said: readonly SaidPart[];
  readonly bytes: Buffer;
}

const described = ['id', 'state', 'language', 'temperature', 'length', 'mass', 'sha256', 'at', 'by'] as const;

/** Newest first. */
export async function packsGivenOf(db: Rows, placementId: string): Promise<PackGiven[]> {
  return await db
    .selectFrom('pack_given')
    .select(described)
    .select((eb) => eb.fn<number>('octet_length', ['bytes']).as('sizeBytes'))
    .where('placement_id', '=', placementId)
    .orderBy('seq', 'desc')
    .execute();
}

export async function packGiven(db: Rows, placementId: string, id: string) {
  return await db
    .selectFrom('pack_given')
    .select(described)
    .select(['bytes', 'said'])
    .where('placement_id', '=', placementId)
    .where('id', '=', id)
    .executeTakeFirst();
}

/** The same paper is kept once. */
export async function keepPackGiven(db: Rows, pack: NewPack): Promise<void> {
  const { placementId, said, bytes, ...rest } = pack;
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const there = await db
    .selectFrom('pack_given')
    .select('id')
    .where('placement_id', '=', placementId)
    .where('sha256', '=', sha256)
    .executeTakeFirst();
  if (there !== undefined) return;
  const row = { id: randomUUID(), placement_id: placementId, said: JSON.stringify(said), bytes, sha256, ...rest };
  await db.insertInto('pack_given').values(row).execute();
}
