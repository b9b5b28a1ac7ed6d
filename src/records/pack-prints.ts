// The rows of how packs were written for their keepers: language and units. Leaves out what stood in them.
import { randomUUID } from 'node:crypto';
import type { Rows } from './animals.ts';

export interface PackPrintChoice {
  readonly language: string;
  readonly temperature: 'C' | 'F';
  readonly length: 'cm' | 'in';
  readonly mass: 'g' | 'oz';
}

export interface PackPrint extends PackPrintChoice {
  readonly at: Date;
  readonly by: string;
}

export async function lastPackPrint(db: Rows, placementId: string): Promise<PackPrint | undefined> {
  return await db
    .selectFrom('pack_print')
    .select(['language', 'temperature', 'length', 'mass', 'at', 'by'])
    .where('placement_id', '=', placementId)
    .orderBy('seq', 'desc')
    .executeTakeFirst();
}

export async function addPackPrint(db: Rows, placementId: string, print: PackPrint): Promise<void> {
  await db
    .insertInto('pack_print')
    .values({ id: randomUUID(), placement_id: placementId, ...print })
    .execute();
}
