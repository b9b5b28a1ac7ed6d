// The rows of passkeys and of the questions that they answer.
import { randomUUID } from 'node:crypto';
import type { Db } from './schema.ts';

export interface Passkey {
  readonly id: string;
  readonly personId: string;
  readonly publicKey: Buffer;
  readonly counter: number;
  readonly transports: readonly string[];
  readonly name: string;
  readonly at: Date;
  readonly usedAt: Date | null;
}

const rows = (db: Db) =>
  db
    .selectFrom('passkey')
    .select([
      'id',
      'person_id as personId',
      'public_key as publicKey',
      'counter',
      'transports',
      'name',
      'at',
      'used_at as usedAt',
    ])
    .where('removed_at', 'is', null);

const read = (row: { counter: string; transports: string } & Omit<Passkey, 'counter' | 'transports'>): Passkey => ({
  ...row,
  counter: Number(row.counter),
  transports: row.transports === '' ? [] : row.transports.split(' '),
});

export async function passkeysOf(db: Db, personId: string): Promise<Passkey[]> {
  return (await rows(db).where('person_id', '=', personId).orderBy('at').execute()).map(read);
}

export async function passkeyById(db: Db, id: string): Promise<Passkey | undefined> {
  const row = await rows(db).where('id', '=', id).executeTakeFirst();
  return row === undefined ? undefined : read(row);
}

export async function insertPasskey(tx: Db, passkey: Omit<Passkey, 'usedAt'>): Promise<void> {
  await tx
    .insertInto('passkey')
    .values({
      id: passkey.id,
      person_id: passkey.personId,
      public_key: passkey.publicKey,
      counter: passkey.counter,
      transports: passkey.transports.join(' '),
      name: passkey.name,
      at: passkey.at,
    })
    .execute();
}

export async function markPasskeyUsed(db: Db, id: string, counter: number, at: Date): Promise<void> {
  await db.updateTable('passkey').set({ counter, used_at: at }).where('id', '=', id).execute();
}

export async function removePasskey(tx: Db, personId: string, id: string, at: Date): Promise<boolean> {
  const gone = await tx
    .updateTable('passkey')
    .set({ removed_at: at })
    .where('id', '=', id)
    .where('person_id', '=', personId)
    .where('removed_at', 'is', null)
    .returning('id')
    .executeTakeFirst();
  return gone !== undefined;
}

export async function insertChallenge(
  db: Db,
  challenge: string,
  personId: string | null,
  expiresAt: Date,
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('passkey_challenge')
    .values({ id, challenge, person_id: personId, expires_at: expiresAt })
    .execute();
  return id;
}

/** Takes a question, so that it is answered once; older ones that nobody answered go with it. */
export async function takeChallenge(
  db: Db,
  id: string,
  at: Date,
): Promise<{ readonly challenge: string; readonly personId: string | null } | undefined> {
  const row = await db
    .deleteFrom('passkey_challenge')
    .where('id', '=', id)
    .returning(['challenge', 'person_id as personId', 'expires_at as expiresAt'])
    .executeTakeFirst();
  await db.deleteFrom('passkey_challenge').where('expires_at', '<', at).execute();
  return row === undefined || row.expiresAt <= at ? undefined : row;
}
