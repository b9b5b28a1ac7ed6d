// The rows of keepers' links: made, withdrawn, found again by the hash of their secret.
import { randomUUID } from 'node:crypto';
import type { InstrumentWriter } from './instruments.ts';
import type { Db } from './schema.ts';

export interface KeeperLink {
  readonly id: string;
  readonly enquiryId: string;
  readonly expiresAt: Date;
  readonly at: Date;
  readonly by: string;
  readonly withdrawnAt: Date | null;
}

export async function insertKeeperLink(
  db: Db,
  enquiryId: string,
  secretSha256: string,
  expiresAt: Date,
  writer: InstrumentWriter,
): Promise<string> {
  const id = randomUUID();
  await db
    .insertInto('keeper_link')
    .values({ id, enquiry_id: enquiryId, secret_sha256: secretSha256, expires_at: expiresAt, ...writer })
    .execute();
  return id;
}

const withWithdrawal = (db: Db) =>
  db
    .selectFrom('keeper_link as l')
    .leftJoin('keeper_link_withdrawal as w', 'w.link_id', 'l.id')
    .select(['l.id', 'l.enquiry_id as enquiryId', 'l.expires_at as expiresAt', 'l.at', 'l.by', 'w.at as withdrawnAt']);

/** The link with this secret, whether it still works or not. */
export async function keeperLinkBySecret(db: Db, secretSha256: string): Promise<KeeperLink | undefined> {
  return await withWithdrawal(db).where('l.secret_sha256', '=', secretSha256).executeTakeFirst();
}

export async function keeperLinksOf(db: Db, enquiryId: string): Promise<KeeperLink[]> {
  return await withWithdrawal(db).where('l.enquiry_id', '=', enquiryId).orderBy('l.at', 'desc').execute();
}

export async function withdrawKeeperLink(db: Db, linkId: string, writer: InstrumentWriter): Promise<void> {
  await db
    .insertInto('keeper_link_withdrawal')
    .values({ link_id: linkId, ...writer })
    .onConflict((clash) => clash.column('link_id').doNothing())
    .execute();
}
