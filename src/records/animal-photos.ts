// The rows of photographs, and of look-overs that are half done.
import { createHash, randomUUID } from 'node:crypto';
import type { Rows, Writer } from './animals.ts';
import type { Db } from './schema.ts';

export async function insertPhoto(
  tx: Rows,
  animalId: string,
  photo: { readonly mediaType: string; readonly bytes: Buffer },
  writer: Writer,
): Promise<string> {
  const id = randomUUID();
  const sha256 = createHash('sha256').update(photo.bytes).digest('hex');
  await tx
    .insertInto('animal_photo')
    .values({
      id,
      animal_id: animalId,
      media_type: photo.mediaType,
      bytes: photo.bytes,
      sha256,
      at: writer.at,
      by: writer.by,
    })
    .execute();
  return id;
}

export async function photoById(
  db: Db,
  animalId: string,
  id: string,
): Promise<{ readonly mediaType: string; readonly bytes: Buffer } | undefined> {
  return await db
    .selectFrom('animal_photo')
    .select(['media_type as mediaType', 'bytes'])
    .where('animal_id', '=', animalId)
    .where('id', '=', id)
    .executeTakeFirst();
}

export interface DraftRow {
  readonly document: Record<string, unknown>;
  readonly updatedAt: Date;
  readonly by: string;
}

export async function draftOf(db: Rows, animalId: string): Promise<DraftRow | undefined> {
  return await db
    .selectFrom('examination_draft')
    .select(['document', 'updated_at as updatedAt', 'by'])
    .where('animal_id', '=', animalId)
    .executeTakeFirst();
}

export async function putDraft(db: Rows, animalId: string, document: object, writer: Writer): Promise<void> {
  const row = { document: JSON.stringify(document), updated_at: writer.at, by: writer.by };
  await db
    .insertInto('examination_draft')
    .values({ animal_id: animalId, ...row })
    .onConflict((clash) => clash.column('animal_id').doUpdateSet(row))
    .execute();
}

export async function dropDraft(db: Rows, animalId: string): Promise<void> {
  await db.deleteFrom('examination_draft').where('animal_id', '=', animalId).execute();
}
