// One-time codes: each lets its holder choose a password once. One without a person is the code of the first start.
import type { AccountWriter } from './people.ts';
import type { Db } from './schema.ts';

export interface PersonCode {
  readonly personId: string | null;
}

export async function insertCode(
  db: Db,
  code: { readonly sha256: string; readonly personId: string | null; readonly expiresAt: Date },
  writer: AccountWriter,
): Promise<void> {
  await db
    .insertInto('person_code')
    .values({ sha256: code.sha256, person_id: code.personId, expires_at: code.expiresAt, ...writer })
    .execute();
}

/** Takes a code that still works, so that nobody else can: undefined when it does not. */
export async function useCode(
  tx: Db,
  sha256: string,
  wanted: 'first-start' | 'person',
  at: Date,
): Promise<PersonCode | undefined> {
  return await tx
    .updateTable('person_code')
    .set({ used_at: at })
    .where('sha256', '=', sha256)
    .where('person_id', wanted === 'person' ? 'is not' : 'is', null)
    .where('used_at', 'is', null)
    .where('withdrawn_at', 'is', null)
    .where('expires_at', '>', at)
    .returning('person_id as personId')
    .executeTakeFirst();
}

/** Codes of a person that still work stop working; null: those of the first start. */
export async function withdrawCodes(tx: Db, personId: string | null, at: Date): Promise<void> {
  const query = tx.updateTable('person_code').set({ withdrawn_at: at });
  const own = personId === null ? query.where('person_id', 'is', null) : query.where('person_id', '=', personId);
  await own.where('used_at', 'is', null).where('withdrawn_at', 'is', null).execute();
}
